// PyScript opens databases for packages and folders that we do not have. A reader who refuses storage would
// then get errors in place of a calculator, and everyone else an empty database: so it meets one that keeps
// nothing. Returns the function that gives the real ones back.
export function withoutDatabases() {
  const own = Object.getOwnPropertyDescriptor(self, "indexedDB");
  Object.defineProperty(self, "indexedDB", { value: { open: () => succeed(database) }, configurable: true });
  return () => (own ? Object.defineProperty(self, "indexedDB", own) : delete self.indexedDB);
}

const succeed = (result) => {
  const request = { result };
  setTimeout(() => request.onsuccess?.({ target: request }));
  return request;
};
const nothing = () => succeed(undefined);
const store = {
  getAllKeys: () => succeed([]),
  count: () => succeed(0),
  get: nothing,
  getKey: nothing,
  put: nothing,
  clear: nothing,
  delete: nothing,
};
const database = { close() {}, transaction: () => ({ objectStore: () => store }) };
