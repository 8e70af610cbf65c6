// node bundle.mjs JOB.json: bundles one script for the browser.
// JOB: { entry, out, define: {NAME: value}, external: [pattern], classic }
// classic: for a page opened from a disk, which loads no modules; the script then finds its own address by itself.
import esbuild from "esbuild";
import { runJob } from "./pyodide_in_node.mjs";

await runJob((job) =>
  esbuild.build({
    entryPoints: [job.entry],
    outfile: job.out,
    bundle: true,
    format: job.classic ? "iife" : "esm",
    target: "es2022",
    minify: true,
    legalComments: "none",
    charset: "utf8",
    loader: { ".py": "text" },
    external: job.external ?? [],
    define: {
      ...Object.fromEntries(Object.entries(job.define ?? {}).map(([name, value]) => [name, JSON.stringify(value)])),
      ...(job.classic ? { "import.meta.url": "bendbookAddress" } : {}),
    },
    banner: { js: job.classic ? "const bendbookAddress = document.currentScript.src;" : "" },
    logLevel: "error",
  }),
);
