// Pyodide under node, with our modules laid out as the reader's browser will see them.
import fs from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";

const ENVIRONMENT = {
  HOME: "/",
  PYTHONDONTWRITEBYTECODE: "1",
  // The order of a set may otherwise differ from one build to the next.
  PYTHONHASHSEED: "0",
  // Leaves the columns out of compiled code: a sixth smaller, and an error still names its line.
  PYTHONNODEBUGRANGES: "1",
};

export async function startPython(pyodideFolder, options = {}) {
  const { loadPyodide } = await import(pathToFileURL(path.join(pyodideFolder, "pyodide.mjs")));
  return loadPyodide({ indexURL: pyodideFolder + path.sep, env: ENVIRONMENT, ...options });
}

export function putFile(python, target, content) {
  python.FS.mkdirTree(path.posix.dirname(target));
  python.FS.writeFile(target, content);
}

export function putSources(python, sources) {
  for (const [name, file] of Object.entries(sources)) putFile(python, `/ours/${name}`, fs.readFileSync(file));
  python.runPython("import sys; sys.path.insert(0, '/ours')");
}

// Runs a job described by the JSON file named on the command line; a failure prints its message alone,
// because node would print a whole line of the minified interpreter first.
export async function runJob(work) {
  try {
    await work(JSON.parse(fs.readFileSync(process.argv[2], "utf8")));
    process.exit(0);
  } catch (error) {
    console.error(error.message ?? error);
    process.exit(1);
  }
}
