// What runs in the worker of a page opened from a disk. It is handed over as text, so it may use nothing that
// stands outside it.
//
// First message: {id, files: {name: bytes}, modules: {name: address}, noPackages, unpack, language}; then
// {id, ask: [calculator, fields, language]}. Each is answered by {id, result} or {id, failed}.
export function diskWorker() {
  let python;
  let desk;

  async function start({ files, modules, noPackages, unpack, language }) {
    const ownFetch = self.fetch;
    // Pyodide fetches two files by itself; it gets those that came with the page.
    self.fetch = (resource, init) => {
      const name = String(resource.url ?? resource).split("/").pop();
      if (!(name in files)) return ownFetch(resource, init);
      const type = name.endsWith(".wasm") ? "application/wasm" : "application/octet-stream";
      return Promise.resolve(new Response(files[name], { headers: { "Content-Type": type } }));
    };
    const [pyodide, asm] = await Promise.all([
      import(modules["pyodide.mjs"]),
      import(modules["pyodide.asm.mjs"]),
    ]);
    python = await pyodide.loadPyodide({
      indexURL: "https://runtime.invalid/",
      createPyodideModule: asm.default,
      lockFileContents: noPackages,
    });
    python.FS.mkdirTree("/bendbook");
    for (const [name, bytes] of Object.entries(files)) {
      if (!name.startsWith("py")) python.FS.writeFile(`/bendbook/${name}`, bytes);
    }
    python.runPython(unpack);
    desk = python.pyimport("desk_worker");
    desk.counter_in(language);
  }

  self.onmessage = async ({ data }) => {
    try {
      if (data.ask) self.postMessage({ id: data.id, result: desk.answer(...data.ask) });
      else self.postMessage({ id: data.id, result: await start(data) });
    } catch (error) {
      self.postMessage({ id: data.id, failed: String(error.message ?? error) });
    }
  };
}
