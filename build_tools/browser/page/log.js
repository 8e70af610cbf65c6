// The log of games on this device: what stands in the form, kept by nickname, saved as a file, loaded, deleted.
// It is kept only when the reader says so. The file is JSON, described on the page of the calculator:
//   {"bendbook": "arm log", "version": 1, "pitchers": [{"nickname": "Lefty", "fields": {...}}]}
//
//   <section data-log data-not-kept="pain today">    names of the fields that are asked anew each time
//     <p data-log-state role="status">, <div data-log-pitchers>     filled here
//     buttons data-log-keep, data-log-save, data-log-delete, data-log-delete-all; input type="file" data-log-load
//   <button data-empty>                              anywhere in the desk: empties the form
import { fillFrom } from "./address.js";
import { saveFile } from "./downloads.js";
import { changed, put, typedIn } from "./fields.js";
import { setRowCount } from "./rows.js";
import { forget, recall, remember } from "./storage.js";
import { word } from "./words.js";
import { takeAnswerAway } from "./worked_example.js";

const KEY = "bendbook-arm-log";
const KIND = "arm log";
const VERSION = 1;

export function serveLog(form) {
  const desk = form.closest("[data-desk]");
  const place = desk?.querySelector("[data-log]");
  if (!place) return () => {};
  const notKept = new Set([...place.dataset.notKept.split(" "), "nickname"]);
  const stop = new AbortController();
  const on = (target, type, listener) => target.addEventListener(type, listener, { signal: stop.signal });
  let pitchers = read();
  // Who was opened or kept here; only their log follows the form. A name that is merely typed changes nothing.
  let current = "";

  on(desk, "click", (event) => {
    if (event.target.closest("[data-empty]")) empty(form);
  });
  on(place, "click", (event) => {
    const button = event.target.closest("button");
    if (!button) return;
    if ("pitcher" in button.dataset) open(button.dataset.pitcher);
    else if ("logKeep" in button.dataset) keep();
    else if ("logSave" in button.dataset) saveFile({ name: "arm-log.json", type: "application/json", text: written() });
    else if ("logDelete" in button.dataset) deleteOne();
    else if ("logDeleteAll" in button.dataset) deleteAll();
  });
  on(place.querySelector("[data-log-load]"), "change", load);
  on(form, "bendbook:answer", () => {
    const name = nickname();
    if (!pitchers.has(name)) return;
    if (name === current) keep();
    else say(word("log_here", { nickname: name }));
  });
  show();

  function nickname() {
    return typedIn(form).nickname.trim();
  }

  function keep() {
    const name = nickname();
    if (!name) return say(word("log_no_nickname"));
    const other = pitchers.has(name) && name !== current;
    if (other && !confirm(word("log_overwrite", { nickname: name }))) return undefined;
    current = name;
    const fields = Object.entries(typedIn(form)).filter(([field]) => !notKept.has(field));
    pitchers.set(name, Object.fromEntries(fields));
    return write() && show(word("log_kept", { nickname: name }));
  }

  function open(name) {
    empty(form, { quietly: true });
    current = name;
    put(form, "nickname", name);
    form.dispatchEvent(new CustomEvent("bendbook:opened"));
    fillFrom(form, flattened(pitchers.get(name)));
    changed(form);
    form.querySelector("input, select")?.focus();
    say(word("log_opened", { nickname: name }));
  }

  function deleteOne() {
    const name = nickname();
    if (!pitchers.has(name)) return say(word("log_not_kept"));
    if (!confirm(word("log_delete_one", { nickname: name }))) return undefined;
    pitchers.delete(name);
    write();
    forgotten([name]);
    empty(form);
    return show(word("log_deleted"));
  }

  function deleteAll() {
    if (!confirm(word("log_delete_everything"))) return;
    forgotten([...pitchers.keys()]);
    pitchers = new Map();
    forget("localStorage", KEY);
    empty(form);
    show(word("log_deleted"));
  }

  function forgotten(names) {
    current = "";
    form.dispatchEvent(new CustomEvent("bendbook:forgotten", { detail: names }));
  }

  async function load({ target }) {
    const [file] = target.files;
    if (!file) return;
    const found = parsed(await file.text());
    target.value = "";
    if (!found) return void say(word("log_bad_file"));
    const twice = [...found.keys()].filter((name) => pitchers.has(name));
    const replace = !twice.length || confirm(word("log_replace", { nicknames: twice.join(", ") }));
    for (const [name, fields] of found) if (replace || !pitchers.has(name)) pitchers.set(name, fields);
    if (write()) show(word("log_loaded"));
    else show(word("log_refused"));
  }

  function written() {
    const list = [...pitchers].map(([name, fields]) => ({ nickname: name, fields }));
    return JSON.stringify({ bendbook: KIND, version: VERSION, pitchers: list }, null, 1);
  }

  // A browser may refuse to keep anything. Then the log lives in this page only, and says so.
  function write() {
    remember("localStorage", KEY, written());
    if (recall("localStorage", KEY) === written()) return true;
    show(word("log_refused"));
    return false;
  }

  function show(words = "") {
    place.querySelector("[data-log-pitchers]").replaceChildren(
      ...[...pitchers.keys()].map((name) => {
        const button = document.createElement("button");
        button.type = "button";
        button.className = "button quiet";
        button.dataset.pitcher = name;
        button.textContent = name;
        return button;
      }),
    );
    for (const button of place.querySelectorAll("[data-log-save], [data-log-delete], [data-log-delete-all]")) {
      button.disabled = !pitchers.size;
    }
    say(words);
  }

  function say(words) {
    place.querySelector("[data-log-state]").textContent = words;
  }

  return () => stop.abort();
}

// The worked example must not pass for somebody's own games.
export function emptyIfUntouched(form) {
  const note = form.closest("[data-desk]").querySelector("[data-example-note]");
  if (note && !note.hidden) empty(form, { quietly: true });
}

function empty(form, { quietly = false } = {}) {
  for (const field of form.elements) {
    if (field.type === "radio") field.checked = false;
    else if (field.type === "select-one" && field.querySelector('option[value=""]')) field.value = "";
    else if (field.type === "text" || (field.type === "date" && field.name !== "today")) field.value = "";
  }
  for (const table of form.querySelectorAll("[data-rows]")) setRowCount(table, 0);
  takeAnswerAway(form);
  if (!quietly) changed(form);
}

function read() {
  return parsed(recall("localStorage", KEY) ?? "") ?? new Map();
}

// Returns nickname -> fields, or null where the text is no log of ours.
function parsed(text) {
  try {
    const log = JSON.parse(text);
    if (log.bendbook !== KIND || log.version !== VERSION) return null;
    return new Map(log.pitchers.map(({ nickname, fields }) => [String(nickname).slice(0, 40), { ...fields }]));
  } catch {
    return null;
  }
}

// Fields as the page's own [name, text] pairs; whatever is not a text or a list of rows is left out.
function flattened(fields) {
  return Object.entries(fields).flatMap(([name, value]) => {
    if (typeof value === "string") return [[name, value]];
    if (!Array.isArray(value)) return [];
    if (!value.length) return [[name, ""]];
    return value.flatMap((row, index) =>
      Object.entries(row ?? {}).map(([column, text]) => [`${name}.${index}.${column}`, String(text)]),
    );
  });
}
