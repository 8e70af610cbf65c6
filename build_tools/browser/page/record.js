// The pitchers' files in this browser: kept only when the reader says so, put back into the form with a tap.
//
//   <section data-record>
//     <p data-record-state role="status">, <div data-record-kept>    filled here: a pair of buttons for each file
//     button data-record-keep
//   A file comes with an answer (its name ends in .pitcher.json) and goes into the field "record".
import { changed, put } from "./fields.js";
import { fillFromRecord } from "./record_fill.js";
import { forget, recall, remember } from "./storage.js";
import { word } from "./words.js";

const KEY = "bendbook-pitchers";
const ENDING = ".pitcher.json";
const DAYS_IN = ["sessions", "log", "targets", "gates"];

export function serveRecord(form) {
  const place = form.closest("[data-desk]")?.querySelector("[data-record]");
  if (!place) return () => {};
  const stop = new AbortController();
  let latest = null;
  form.addEventListener(
    "bendbook:answer",
    ({ detail }) => {
      latest = detail.files?.find(({ name }) => name.endsWith(ENDING)) ?? null;
      show();
    },
    { signal: stop.signal },
  );
  place.addEventListener("click", tapped, { signal: stop.signal });
  show();

  function tapped({ target }) {
    const { recordKeep, recordOpen, recordForget } = target.closest("button")?.dataset ?? {};
    if (recordKeep !== undefined) keep();
    else if (recordOpen !== undefined) open(recordOpen);
    else if (recordForget !== undefined && confirm(word("record_forget", { nickname: recordForget }))) {
      const kept = read();
      kept.delete(recordForget);
      write(kept);
      show(word("record_forgotten"));
    }
  }

  function keep() {
    const { nickname } = JSON.parse(latest.text);
    const kept = read();
    const shrinks = kept.has(nickname) && daysIn(latest.text) < daysIn(kept.get(nickname));
    if (shrinks && !confirm(word("record_shrinks", { nickname }))) return;
    kept.set(nickname, latest.text);
    write(kept);
    show(word(read().get(nickname) === latest.text ? "record_kept" : "record_refused", { nickname }));
  }

  function open(nickname) {
    const text = read().get(nickname) ?? "";
    put(form, "record", text);
    fillFromRecord(form, text);
    changed(form);
    show(word("record_opened", { nickname }));
  }

  function show(words) {
    place.querySelector("[data-record-keep]").disabled = !latest;
    place.querySelector("[data-record-kept]").replaceChildren(
      ...[...read().keys()].flatMap((nickname) => [
        button(word("record_open", { nickname }), { recordOpen: nickname }),
        button(word("record_delete", { nickname }), { recordForget: nickname }),
      ]),
    );
    if (words !== undefined) place.querySelector("[data-record-state]").textContent = words;
  }

  return () => stop.abort();
}

function button(words, names) {
  const made = document.createElement("button");
  made.type = "button";
  made.className = "button quiet";
  made.textContent = words;
  Object.assign(made.dataset, names);
  return made;
}

function daysIn(text) {
  const file = JSON.parse(text);
  return DAYS_IN.reduce((sum, name) => sum + (file[name]?.length ?? 0), 0);
}

function read() {
  try {
    return new Map(Object.entries(JSON.parse(recall("localStorage", KEY)) ?? {}));
  } catch {
    return new Map();
  }
}

function write(kept) {
  if (kept.size) remember("localStorage", KEY, JSON.stringify(Object.fromEntries(kept)));
  else forget("localStorage", KEY);
}
