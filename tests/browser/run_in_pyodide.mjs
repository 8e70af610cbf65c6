// node run_in_pyodide.mjs PROJECT SITE_PACKAGES SHELF.json [pytest arguments]
// node run_in_pyodide.mjs PROJECT SITE_PACKAGES SHELF.json --program FILE.py
// Runs tests of the calculators, or a program, in the Python that a reader's browser runs; with the whole
// standard library, because pytest needs more of it than the calculators do. Prints what they print and ends
// with their exit code.
import fs from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";

const [project, sitePackages, shelf, ...args] = process.argv.slice(2);
const pyodide = path.join(project, "node_modules", "pyodide");
const { loadPyodide } = await import(pathToFileURL(path.join(pyodide, "pyodide.mjs")));
const env = { HOME: "/", PYTHONDONTWRITEBYTECODE: "1", PYTEST_DISABLE_PLUGIN_AUTOLOAD: "1" };
const python = await loadPyodide({ indexURL: pyodide + path.sep, env });
for (const [name, folder] of [["project", project], ["packages", sitePackages]]) {
  python.FS.mkdirTree(`/${name}`);
  python.mountNodeFS(`/${name}`, folder);
}
python.FS.writeFile("/shelf.json", fs.readFileSync(shelf));
python.globals.set("args", python.toPy(args));

const code = python.runPython(`
import os, runpy, sys
sys.path[:0] = ["/project", "/packages"]
os.chdir("/project")
runpy.run_path("tests/browser/shelf_stand_ins.py")
if args[0] == "--program":
    runpy.run_path(args[1], run_name="__main__")
    code = 0
else:
    import pytest
    code = int(pytest.main(["-p", "no:cacheprovider", "-p", "no:faulthandler", *args]))
code`);
process.exit(code);
