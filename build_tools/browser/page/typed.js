// What a reader typed survives the one reload that a new edition needs. It stays in this tab and is
// forgotten as soon as it is back in its fields.
import { namedValues } from "./fields.js";
import { forget, recall, remember } from "./storage.js";

const PREFIX = "bendbook-typed ";
const MOST_AGE_MS = 60_000;

export function keepTyped() {
  const forms = {};
  for (const form of document.querySelectorAll("form[data-calculator]")) {
    forms[form.dataset.calculator] = namedValues(form);
  }
  if (Object.keys(forms).length) {
    remember("sessionStorage", PREFIX + location.pathname, JSON.stringify({ at: Date.now(), forms }));
  }
}

// Returns calculator name -> [name, text] pairs.
export function takeTyped() {
  const kept = JSON.parse(recall("sessionStorage", PREFIX + location.pathname) ?? "null");
  forget("sessionStorage", PREFIX + location.pathname);
  return kept && Date.now() - kept.at < MOST_AGE_MS ? kept.forms : {};
}
