// node pack.mjs JOB.json: packs the calculators and the part of the standard library that they need.
// JOB: { pyodide, pyscript, sources: {path in the archive: file}, margin: [module], stdlib, calculators, kept }
import fs from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { putFile, putSources, runJob, startPython } from "./pyodide_in_node.mjs";

const here = path.dirname(fileURLToPath(import.meta.url));

await runJob(async (job) => {
  const packing = await startPython(job.pyodide);
  putSources(packing, job.sources);
  putFile(packing, "/packing/packing.py", fs.readFileSync(path.join(here, "pack.py")));
  putFile(packing, "/stock.zip", fs.readFileSync(path.join(job.pyodide, "python_stdlib.zip")));
  packing.FS.mkdirTree("/pyscript");
  packing.mountNodeFS("/pyscript", job.pyscript);
  packing.runPython("sys.path.append('/packing')");
  const packer = packing.pyimport("packing");
  const wanted = [...packer.modules_wanted("/ours", "/pyscript").toJs(), ...job.margin];

  // A second, clean interpreter imports what is wanted, so that what the packer itself uses is not counted.
  const counting = await startPython(job.pyodide);
  putSources(counting, job.sources);
  counting.globals.set("wanted", counting.toPy(wanted));
  const kept = counting
    .runPython(`
import importlib, sys
for name in wanted:
    importlib.import_module(name)
root = f"/lib/python3{sys.version_info.minor}.zip/"
specs = [getattr(module, "__spec__", None) for module in list(sys.modules.values())]
origins = [spec.origin for spec in specs if spec and spec.origin]
sorted({origin.removeprefix(root) for origin in origins if origin.startswith(root)})`)
    .toJs();

  fs.writeFileSync(job.stdlib, packer.packed_library("/stock.zip", packing.toPy(kept)).toJs());
  fs.writeFileSync(job.calculators, packer.packed_calculators("/ours").toJs());
  fs.writeFileSync(job.kept, JSON.stringify(kept, null, 1) + "\n");
});
