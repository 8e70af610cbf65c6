// A worked example gives way to somebody's own pitcher: what was filled in for the example must not pass for
// what was said of them, "no pain" first of all. What the reader has typed stays.
import { put } from "./fields.js";

// What only the reader can say, once a sheet of their own is in the form.
const ASKED_ANEW = ["pain", "role", "shape"];

export function giveWayToASheet(form) {
  clear(form, ASKED_ANEW);
  takeAnswerAway(form);
}

// Empties those of the named fields that still hold the example, and puts in what is known of them.
export function clear(form, names, known = {}) {
  for (const name of names) {
    const fields = [...form.elements].filter((field) => field.name === name);
    if (fields.length && (fields.every(untouched) || fields.every(blank))) put(form, name, known[name] ?? "");
  }
}

export function takeAnswerAway(form) {
  const note = form.closest("[data-desk]").querySelector("[data-example-note]");
  if (note) note.hidden = true;
  form.dispatchEvent(new CustomEvent("bendbook:empty"));
}

export function untouched(field) {
  if (field.type === "radio") return field.checked === field.defaultChecked;
  if (field.type !== "select-one") return field.value === field.defaultValue;
  const chosen = [...field.options].findIndex((option) => option.defaultSelected);
  return field.selectedIndex === Math.max(0, chosen);
}

function blank(field) {
  return field.type === "radio" ? !field.checked : field.value === "";
}

// Pasted, picked or typed: the first change of the example's sheet.
export function watchSheet(form, signal) {
  const sheet = form.elements.sheet;
  if (!sheet?.defaultValue) return;
  let example = true;
  const look = () => {
    const now = untouched(sheet);
    if (example && !now) giveWayToASheet(form);
    example = now;
  };
  form.addEventListener("input", look, { signal, capture: true });
}
