// The route for pages opened from a disk, where a browser fetches nothing: everything lies in one script,
// packed as text, and the worker is handed what it would have fetched. Bare Pyodide, without PyScript.
/* global PYODIDE_VERSION -- put in by the build */
import { within } from "../within.js";
import { noPackages } from "../worker/no_packages.mjs";
import unpack from "../worker/unpack.py";
import { diskWorker } from "../worker/disk_worker.js";
import { root } from "./root.js";

const START_MS = 120_000;

export async function startFromDisk({ language, report }) {
  report({ stage: "start" });
  const given = await unpacked(await packedRuntime());
  const worker = new self.bendbookWorker(await asAddress(`(${diskWorker})()`), { type: "module" });
  const answers = new Map();
  const call = (message, transfer = []) =>
    new Promise((resolve, reject) => {
      answers.set(message.id, { resolve, reject });
      worker.postMessage(message, transfer);
    });
  worker.onmessage = ({ data: { id, result, failed } }) => {
    const waiting = answers.get(id);
    answers.delete(id);
    if (failed) waiting?.reject(new Error(`start: ${failed}`));
    else waiting?.resolve(result);
  };
  worker.onerror = (event) => {
    for (const { reject } of answers.values()) reject(new Error(`start: ${event.message}`));
  };
  let number = 0;
  const buffers = Object.values(given.files).map((bytes) => bytes.buffer);
  try {
    const late = () => new Error("start: the interpreter did not start in time");
    const first = { id: "start", ...given, noPackages: noPackages(PYODIDE_VERSION), unpack, language };
    await within(START_MS, call(first, buffers), late);
  } catch (error) {
    worker.terminate();
    throw error;
  }
  report({ stage: "ready" });
  return {
    answer: (calculator, fields) => call({ id: (number += 1), ask: [calculator, fields, language] }),
    stop: () => worker.terminate(),
  };
}

// A classic script, because a page from a disk may load no other.
function packedRuntime() {
  if (self.bendbookRuntime) return self.bendbookRuntime;
  return new Promise((resolve, reject) => {
    const script = document.createElement("script");
    script.src = `${root}assets/bendbook/runtime_packed.js`;
    script.onload = () => resolve(self.bendbookRuntime);
    script.onerror = () => reject(new Error("download: a part of this copy is missing"));
    document.head.append(script);
  });
}

async function unpacked(packed) {
  const files = {};
  const modules = {};
  await Promise.all(
    Object.entries(packed).map(async ([name, text]) => {
      const bytes = await inflate(text, name);
      if (name.endsWith(".mjs")) modules[name] = await asAddress(bytes);
      else files[name] = bytes;
    }),
  );
  return { files, modules };
}

async function inflate(text, name) {
  try {
    const letters = atob(text);
    const bytes = new Uint8Array(letters.length);
    for (let at = 0; at < letters.length; at += 1) bytes[at] = letters.charCodeAt(at);
    const plain = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
    return new Uint8Array(await new Response(plain).arrayBuffer());
  } catch (error) {
    throw new Error(`damaged: ${name}: ${error.message}`);
  }
}

// As a data: address, the one kind that every browser lets a module worker of such a page import.
function asAddress(code) {
  return new Promise((resolve) => {
    const reader = new FileReader();
    reader.onload = () => resolve(reader.result);
    reader.readAsDataURL(new Blob([code], { type: "text/javascript" }));
  });
}
