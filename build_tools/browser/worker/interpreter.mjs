// The "interpreter" that PyScript loads inside its worker: Pyodide, started our way. It fetches what
// Pyodide needs itself, so that progress is known, a bad file is an error and not an endless wait, and
// the calculators are there once the interpreter is.
//
// Address: interpreter.mjs?channel=NAME&language=en&fresh=0. Reports go out on the BroadcastChannel NAME:
//   {stage: "download", done, total} in bytes, then {stage: "start"}, then {stage: "ready"},
//   or {failed: "KIND: detail"}, where KIND is download, damaged or start.
/* global EDITION_FILES, PYODIDE_VERSION -- put in by the build: name -> {size, mark} */
import { within } from "../within.js";
import { withoutDatabases } from "./no_databases.mjs";
import { noPackages } from "./no_packages.mjs";
import unpack from "./unpack.py";

export const version = PYODIDE_VERSION;

const STALLED_MS = 30_000;
const START_MS = 60_000;
const folder = new URL("./", import.meta.url).href;
const asked = new URL(import.meta.url).searchParams;
const language = asked.get("language") ?? "en";
const report = reporter(asked.get("channel"));

// The mark is part of the address, so a browser's own cache can never mix two editions.
const address = (name) => `${folder}${name}?${EDITION_FILES[name].mark}`;

// The kind stands in the message, because that is all of an error that PyScript passes on to the page.
class RuntimeFailure extends Error {
  constructor(kind, detail) {
    super(`${kind}: ${detail}`);
  }
}

withoutDatabases();

export async function loadPyodide(options) {
  try {
    return await start(options);
  } catch (error) {
    const failure = error instanceof RuntimeFailure ? error : new RuntimeFailure("start", error.message ?? error);
    report({ failed: failure.message });
    throw failure;
  }
}

async function start(options) {
  const fetched = ["pyodide.asm.wasm", "python_stdlib.zip", ...CONTENT];
  const total = fetched.reduce((sum, name) => sum + EDITION_FILES[name].size, 0);
  let done = 0;
  const count = (bytes) => report({ stage: "download", done: (done += bytes), total });
  const [pyodide, asm, wasm, stdlib, ...content] = await Promise.all([
    take(() => import(address("pyodide.mjs"))),
    take(() => import(address("pyodide.asm.mjs"))),
    ...fetched.map((name) => download(name, count)),
  ]);
  report({ stage: "start" });

  const given = {
    "pyodide.asm.wasm": new Response(wasm, { headers: { "Content-Type": "application/wasm" } }),
    "python_stdlib.zip": new Response(stdlib),
  };
  const python = await withGivenFiles(given, () =>
    within(
      START_MS,
      pyodide.loadPyodide({
        ...options,
        indexURL: folder,
        packageBaseUrl: folder,
        createPyodideModule: asm.default,
        lockFileContents: noPackages(version),
      }),
      () => new RuntimeFailure("start", "the interpreter did not start in time"),
    ),
  );
  python.FS.mkdirTree("/bendbook");
  for (const [index, name] of CONTENT.entries()) {
    python.FS.writeFile(`/bendbook/${name}`, new Uint8Array(await content[index].arrayBuffer()));
  }
  python.globals.set("language", language);
  python.runPython(unpack);
  python.runPython(OPEN_THE_COUNTER);
  report({ stage: "ready" });
  return python;
}

const OPEN_THE_COUNTER = `
import desk_worker
desk_worker.counter_in(language)
del language`;

const CONTENT = Object.keys(EDITION_FILES).filter((name) => !name.match(/^py(odide|thon)/));

// Fetches a file to the last byte. A server may be silent for a while, but not for ever.
async function download(name, count) {
  const response = await take(() => fetch(address(name), { cache: asked.get("fresh") === "1" ? "reload" : "default" }));
  if (!response.ok) throw new RuntimeFailure("download", `${name}: the server answered ${response.status}`);
  const reader = response.body.getReader();
  const parts = [];
  let size = 0;
  for (;;) {
    const silent = () => new RuntimeFailure("download", `${name}: nothing came for ${STALLED_MS / 1000} s`);
    const { done, value } = await take(() => within(STALLED_MS, reader.read(), silent));
    if (done) break;
    parts.push(value);
    size += value.length;
    count(value.length);
  }
  const expected = EDITION_FILES[name].size;
  if (size !== expected) throw new RuntimeFailure("damaged", `${name}: ${size} bytes came, not ${expected}`);
  return new Blob(parts);
}

async function take(fetching) {
  try {
    return await fetching();
  } catch (error) {
    throw error instanceof RuntimeFailure ? error : new RuntimeFailure("download", String(error.message ?? error));
  }
}

// Pyodide fetches these two by itself and does not notice when that fails; it gets what we have checked.
async function withGivenFiles(given, work) {
  const ownFetch = self.fetch;
  self.fetch = (resource, init) => {
    const name = String(resource.url ?? resource).split("/").pop();
    return given[name] ? Promise.resolve(given[name]) : ownFetch(resource, init);
  };
  try {
    return await work();
  } finally {
    self.fetch = ownFetch;
  }
}

function reporter(name) {
  try {
    const channel = new BroadcastChannel(name);
    return (message) => channel.postMessage(message);
  } catch {
    return () => {};
  }
}
