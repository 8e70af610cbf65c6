// The route for pages that come from a server: PyScript's worker, with our own interpreter module.
/* global RUNTIME_MARK -- put in by the build: changes with any file of the runtime */
import program from "../worker/main.py";
import { withoutDatabases } from "../worker/no_databases.mjs";
import { root } from "./root.js";

const SILENT_MS = 75_000;
let attempts = 0;

export async function startPyScript({ language, fresh, report }) {
  const name = `bendbook-${Date.now().toString(36)}-${Math.random().toString(36).slice(2)}`;
  const channel = new BroadcastChannel(name);
  let timer;
  const failed = new Promise((_, reject) => {
    const giveUpLater = () => {
      clearTimeout(timer);
      timer = setTimeout(() => reject(new Error("start: nothing was heard from the worker")), SILENT_MS);
    };
    channel.onmessage = ({ data }) => {
      giveUpLater();
      if (data.failed) reject(new Error(data.failed));
      else report(data);
    };
    giveUpLater();
  });
  try {
    report({ stage: "download", done: 0, total: 0 });
    const worker = await Promise.race([startWorker(name, language, fresh), failed]);
    return {
      answer: (calculator, fields) => worker.sync.answer(calculator, fields, language),
      stop: () => worker.terminate(),
    };
  } finally {
    clearTimeout(timer);
    channel.close();
  }
}

async function startWorker(channel, language, fresh) {
  const { PyWorker, hooks } = await loadPyScript();
  // PyScript hands its worker's hooks over as text to be evaluated, which the page's policy forbids; none of
  // them is needed here.
  for (const name of Object.getOwnPropertyNames(hooks.worker)) hooks.worker[name].clear?.();
  const interpreter = new URL(`${root}assets/bendbook/runtime/interpreter.mjs`);
  interpreter.search = new URLSearchParams({ edition: RUNTIME_MARK, channel, language, fresh: fresh ? "1" : "0" });
  // From a blob and not from the server, because PyScript waits for ever for a program it cannot fetch.
  const address = URL.createObjectURL(new Blob([program], { type: "text/x-python" }));
  try {
    return await PyWorker(address, { config: {}, version: interpreter.href });
  } finally {
    URL.revokeObjectURL(address);
  }
}

async function loadPyScript() {
  // A browser remembers a module that failed to load, so another attempt needs another address.
  const again = attempts++ ? `&attempt=${attempts}` : "";
  const withDatabases = withoutDatabases();
  try {
    return await import(`${root}assets/bendbook/pyscript/core.js?${RUNTIME_MARK}${again}`);
  } catch (error) {
    throw new Error(`download: ${error.message}`);
  } finally {
    withDatabases();
  }
}
