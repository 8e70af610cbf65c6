// A reader may refuse storage, and then even asking for it can throw. Nothing here depends on it.
export function remember(store, key, value) {
  try {
    self[store].setItem(key, value);
  } catch {
    // Refused or full: the page works without.
  }
}

export function recall(store, key) {
  try {
    return self[store].getItem(key);
  } catch {
    return null;
  }
}

export function forget(store, key) {
  try {
    self[store].removeItem(key);
  } catch {
    // Refused: there is nothing to forget.
  }
}
