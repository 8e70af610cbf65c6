// The pitcher's file in this browser: kept only when the reader says so, put back into the form with a tap.
//
//   <section data-record>
//     <p data-record-state role="status">
//     buttons data-record-keep, data-record-open, data-record-forget
//   The file comes with an answer (its name ends in .pitcher.json) and goes into the field "record".
import { changed, put } from "./fields.js";
import { forget, recall, remember } from "./storage.js";
import { word } from "./words.js";

const KEY = "bendbook-pitcher";
const ENDING = ".pitcher.json";

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
    const button = target.closest("button");
    if (!button) return;
    if ("recordKeep" in button.dataset) keep();
    else if ("recordOpen" in button.dataset) open();
    else if ("recordForget" in button.dataset && confirm(word("record_forget"))) {
      forget("localStorage", KEY);
      show(word("record_forgotten"));
    }
  }

  function keep() {
    remember("localStorage", KEY, latest.text);
    const kept = recall("localStorage", KEY) === latest.text;
    show(word(kept ? "record_kept" : "record_refused"));
  }

  function open() {
    put(form, "record", recall("localStorage", KEY) ?? "");
    changed(form);
    show(word("record_opened"));
  }

  function show(words = "") {
    const kept = recall("localStorage", KEY) !== null;
    place.querySelector("[data-record-keep]").disabled = !latest;
    place.querySelector("[data-record-open]").disabled = !kept;
    place.querySelector("[data-record-forget]").disabled = !kept;
    place.querySelector("[data-record-state]").textContent = words;
  }

  return () => stop.abort();
}
