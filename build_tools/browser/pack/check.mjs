// node check.mjs JOB.json: starts the trimmed runtime as a reader's browser would, imports every module
// of ours and asks each question.
// JOB: { pyodide, stdlib, content: [file], modules: [name], questions: {calculator: fields as JSON} }
import fs from "node:fs";
import path from "node:path";
import { putFile, runJob, startPython } from "./pyodide_in_node.mjs";

await runJob(async (job) => {
  const python = await startPython(job.pyodide, { stdLibURL: job.stdlib });
  for (const file of job.content) putFile(python, `/bendbook/${path.basename(file)}`, fs.readFileSync(file));
  python.runPython(fs.readFileSync(new URL("../worker/unpack.py", import.meta.url), "utf8"));
  for (const name of job.modules) python.pyimport(name);
  const desk = python.pyimport("desk_worker");
  for (const [name, fields] of Object.entries(job.questions)) {
    const answer = JSON.parse(desk.answer(name, fields, "en"));
    if (!answer.html) throw new Error(`The calculator ${name} does not answer its example: ${JSON.stringify(answer)}`);
  }
});
