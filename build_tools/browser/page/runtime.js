// The calculators behind one small interface:
//   start(language) -> Promise<{ answer(name, fieldsJSON) -> Promise<JSON string>, stop() }>
// Fails with an Error whose message begins with its kind: "download: ...", "damaged: ..." or "start: ...".
// A page does not know which route it has: PyScript's worker, or, opened from a disk, Pyodide alone.
/* global FROM_DISK -- put in by the build: true in the copy that is opened from a disk */
import { startFromDisk } from "./disk_route.js";
import { startPyScript } from "./pyscript_route.js";

const ANSWER_MS = 30_000;
const listeners = new Set();
let started = null;
let failures = 0;

// Calls back with {stage, done, total} while the runtime starts; returns the function that stops it.
export function onProgress(listener) {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export function isSupported() {
  return typeof WebAssembly === "object" && typeof Worker === "function" && typeof Promise.allSettled === "function";
}

export function start(language) {
  started ??= startOnThisPage({ language, fresh: failures > 0, report }).then(guarded, (error) => {
    started = null;
    failures += 1;
    throw error;
  });
  return started;
}

function startOnThisPage(wishes) {
  return FROM_DISK ? startFromDisk(wishes) : startPyScript(wishes);
}

function report(progress) {
  for (const listener of listeners) listener(progress);
}

// A worker that no longer answers is given up, so that trying again starts a new one.
function guarded(runtime) {
  return {
    async answer(name, fields) {
      let timer;
      const late = new Promise((_, reject) => {
        timer = setTimeout(() => reject(new Error("start: no answer in time")), ANSWER_MS);
      });
      try {
        return await Promise.race([runtime.answer(name, fields), late]);
      } catch (error) {
        runtime.stop();
        started = null;
        throw error;
      } finally {
        clearTimeout(timer);
      }
    },
  };
}
