// Three ways to the same first answer, timed in one page: start[way](question) -> milliseconds to the answer.
import { start } from "../build_tools/browser/page/runtime.js";
import unpack from "../build_tools/browser/worker/unpack.py";

const bare = (module, library, lockFile) => `
  import { loadPyodide } from "${module}";
  const options = ${library ? `{ stdLibURL: "${library}", lockFileContents: ${JSON.stringify(lockFile)} }` : "{}"};
  let python;
  onmessage = async ({ data: { content, name, fields } }) => {
    if (!python) {
      python = await loadPyodide(options);
      python.FS.mkdirTree("/bendbook");
      for (const address of content) {
        const bytes = new Uint8Array(await (await fetch(address)).arrayBuffer());
        python.FS.writeFile("/bendbook/" + address.split("/").pop(), bytes);
      }
      python.runPython(${JSON.stringify(unpack)});
    }
    const answer = python.pyimport("desk_worker").answer(name, fields, "en");
    postMessage({ answer, memory: python._module.HEAPU8.length });
  };`;

const NO_PACKAGES = JSON.stringify({
  info: { abi_version: "2026_0", arch: "wasm32", platform: "emscripten", python: "3.14.2", version: "314.0.7" },
  packages: {},
});

const at = (path) => new URL(path, location).href;
const content = ["calculators.bin", "shelf.json"].map((name) => at(`assets/bendbook/runtime/${name}`));

const workerOf = (source) =>
  new Worker(URL.createObjectURL(new Blob([source], { type: "text/javascript" })), { type: "module" });

function asked(worker, question) {
  const began = performance.now();
  return new Promise((resolve, reject) => {
    worker.onmessage = ({ data }) => resolve({ ...data, milliseconds: performance.now() - began });
    worker.onerror = (event) => reject(new Error(event.message));
    worker.postMessage({ ...question, content });
  });
}

async function firstAnswer(source, question) {
  const began = performance.now();
  await asked(workerOf(source), question);
  return performance.now() - began;
}

const ownLibrary = () =>
  bare(at("assets/bendbook/runtime/pyodide.mjs"), at("assets/bendbook/runtime/python_stdlib.zip"), NO_PACKAGES);

window.start = {
  stock: (question) => firstAnswer(bare(at("stock/pyodide.mjs")), question),
  bare: (question) => firstAnswer(ownLibrary(), question),
  ours: async ({ name, fields }) => {
    const began = performance.now();
    await (await start("en")).answer(name, fields);
    return performance.now() - began;
  },
};
// The time of one answer by a worker that has started, and the memory it holds afterwards, in bytes.
window.heavyAnswer = async (small, heavy) => {
  const worker = workerOf(ownLibrary());
  await asked(worker, small);
  const found = await asked(worker, heavy);
  worker.terminate();
  return found;
};
// Many answers in one go, because a slowed browser runs in slices that are longer than one answer.
window.answerTimes = async (questions, rounds) => {
  const runtime = await start("en");
  const spent = {};
  for (const [name, fields] of Object.entries(questions)) {
    await runtime.answer(name, fields);
    const began = performance.now();
    for (let round = 0; round < rounds; round++) await runtime.answer(name, fields);
    spent[name] = (performance.now() - began) / rounds;
  }
  return spent;
};
