// Three ways to the same first answer, timed in one page: start[way](question) -> milliseconds to the answer.
import { start } from "../build_tools/browser/page/runtime.js";
import unpack from "../build_tools/browser/worker/unpack.py";

const bare = (module, library, lockFile) => `
  import { loadPyodide } from "${module}";
  const options = ${library ? `{ stdLibURL: "${library}", lockFileContents: ${JSON.stringify(lockFile)} }` : "{}"};
  onmessage = async ({ data: { content, name, fields } }) => {
    const python = await loadPyodide(options);
    python.FS.mkdirTree("/bendbook");
    for (const address of content) {
      const bytes = new Uint8Array(await (await fetch(address)).arrayBuffer());
      python.FS.writeFile("/bendbook/" + address.split("/").pop(), bytes);
    }
    python.runPython(${JSON.stringify(unpack)});
    postMessage(python.pyimport("desk_worker").answer(name, fields, "en"));
  };`;

const NO_PACKAGES = JSON.stringify({
  info: { abi_version: "2026_0", arch: "wasm32", platform: "emscripten", python: "3.14.2", version: "314.0.7" },
  packages: {},
});

function timedWorker(source, question) {
  const content = ["calculators.bin", "shelf.json"].map((name) => new URL(`assets/bendbook/runtime/${name}`, location).href);
  const began = performance.now();
  const worker = new Worker(URL.createObjectURL(new Blob([source], { type: "text/javascript" })), { type: "module" });
  return new Promise((resolve, reject) => {
    worker.onmessage = () => resolve(performance.now() - began);
    worker.onerror = (event) => reject(new Error(event.message));
    worker.postMessage({ ...question, content });
  });
}

const at = (path) => new URL(path, location).href;
window.start = {
  stock: (question) => timedWorker(bare(at("stock/pyodide.mjs")), question),
  bare: (question) =>
    timedWorker(
      bare(at("assets/bendbook/runtime/pyodide.mjs"), at("assets/bendbook/runtime/python_stdlib.zip"), NO_PACKAGES),
      question,
    ),
  ours: async ({ name, fields }) => {
    const began = performance.now();
    await (await start("en")).answer(name, fields);
    return performance.now() - began;
  },
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
