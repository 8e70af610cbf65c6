// What Pyodide is told of further packages: that there are none.
export const noPackages = (version) =>
  JSON.stringify({
    info: { abi_version: "2026_0", arch: "wasm32", platform: "emscripten", python: "3.14.2", version },
    packages: {},
  });
