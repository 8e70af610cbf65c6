// Throws written down one by one, as they are thrown: each tap adds a row to the sheet in the form. The sheet so
// far stays on this device for half a day, so that a locked phone loses nothing; a new sheet forgets it.
//
//   <details data-throws>
//     radio buttons named throws-pitch; fields with data-column="heading", those with data-stays kept from throw to throw
//     buttons data-throw="strike", "ball" or "", data-throw-undo, data-throw-again
//     <p data-throw-state role="status">
//   The rows go into the textarea named "sheet"; the day to read, a field named "day", is emptied.
import { civilToday } from "./dates.js";
import { changed, put } from "./fields.js";
import { forget, recallForTonight, rememberForTonight } from "./storage.js";
import { word } from "./words.js";
import { giveWayToASheet } from "./worked_example.js";

const KEY = "bendbook-throws";
const COLUMNS = [
  ...["date", "throw", "pitch", "grip", "cue", "block", "strike", "speed mph", "spin rpm", "clock", "active percent"],
  ...["up in", "glove side in", "rating", "guess speed mph", "guess clock"],
];
const HEADS = COLUMNS.join(",");

export function serveThrows(form) {
  const place = form.closest("[data-desk]")?.querySelector("[data-throws]");
  const sheet = form.elements.sheet;
  if (!place || !sheet) return () => {};
  const stop = new AbortController();
  let rows = kept();
  place.addEventListener("click", tapped, { signal: stop.signal });
  show();
  // After the calculator has begun to listen.
  if (rows.length) setTimeout(fillIn);

  function tapped({ target }) {
    const button = target.closest("button");
    if (!button) return;
    if (!takeSheet()) return void say(word("throws_other_sheet"));
    if ("throw" in button.dataset) {
      rows.push(row(button.dataset.throw));
      for (const field of place.querySelectorAll("[data-column]:not([data-stays])")) field.value = "";
    } else if ("throwUndo" in button.dataset) rows.pop();
    else if (!confirm(word("throws_again"))) return;
    else rows = [];
    if (rows.length) rememberForTonight(KEY, { rows });
    else forget("localStorage", KEY);
    show();
    fillIn();
  }

  // A row that was mended in the sheet stays mended. The worked example gives way; another sheet does not.
  function takeSheet() {
    const [heads, ...lines] = sheet.value.trim().split(/\r?\n/);
    if (heads === HEADS) rows = lines.filter(Boolean).map((line) => line.split(","));
    return heads === HEADS || heads === "" || sheet.value === sheet.defaultValue;
  }

  function row(called) {
    const pitch = place.querySelector("[name=throws-pitch]:checked").value;
    const known = { date: civilToday(), throw: rows.length + 1, pitch, strike: called };
    return COLUMNS.map((column) => known[column] ?? typed(column));
  }

  function typed(column) {
    const text = place.querySelector(`[data-column="${column}"]`).value;
    return text.trim().replaceAll(/[",\n]/g, ".");
  }

  function written() {
    return rows.length ? `${[HEADS, ...rows.map((cells) => cells.join(","))].join("\n")}\n` : "";
  }

  function fillIn() {
    // What was answered about pain, and worked out, was for the worked example or another day.
    if (sheet.value === sheet.defaultValue) giveWayToASheet(form);
    sheet.value = written();
    put(form, "day", "");
    changed(form);
  }

  function show() {
    for (const button of place.querySelectorAll("[data-throw-undo], [data-throw-again]")) button.disabled = !rows.length;
    if (rows.length) place.open = true;
    const last = rows.at(-1);
    say(last ? word("throws_last", { count: rows.length, what: last.slice(2).filter(Boolean).join(", ") }) : "");
  }

  function say(words) {
    place.querySelector("[data-throw-state]").textContent = words;
  }

  return () => stop.abort();
}

function kept() {
  const { rows } = recallForTonight(KEY);
  return Array.isArray(rows) ? rows.filter((cells) => cells?.length === COLUMNS.length).map((cells) => cells.map(String)) : [];
}
