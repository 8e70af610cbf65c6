const FORGOTTEN_AFTER_MS = 12 * 3_600_000;

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

// What is under way survives a reload and a locked phone, but not the night.
export function rememberForTonight(key, parts) {
  remember("localStorage", key, JSON.stringify({ at: Date.now(), ...parts }));
}

// Returns the parts, or an empty object where nothing is kept, or it is old, or not by us.
export function recallForTonight(key) {
  try {
    const kept = JSON.parse(recall("localStorage", key));
    if (Date.now() - kept.at < FORGOTTEN_AFTER_MS) return kept;
  } catch {
    // Nothing kept, or not by us.
  }
  forget("localStorage", key);
  return {};
}

export function forget(store, key) {
  try {
    self[store].removeItem(key);
  } catch {
    // Refused: there is nothing to forget.
  }
}
