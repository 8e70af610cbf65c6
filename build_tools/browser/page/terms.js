// A word of the trade, explained where it stands: a tap opens a small note with its meaning. Without this
// script, or with a key held down to open a new tab, it is a plain link to the glossary.
import { word } from "./words.js";

let open = null;

export function serveTerms() {
  document.addEventListener("click", (event) => {
    if (event.target.closest(".term-note [data-close]")) return close(true);
    const term = event.target.closest("a.term[data-meaning]");
    if (!term) return event.target.closest(".term-note") ? undefined : close(false);
    if (event.ctrlKey || event.metaKey || event.shiftKey) return undefined;
    event.preventDefault();
    const wasOpen = open?.term === term;
    close(false);
    if (!wasOpen) show(term);
    return undefined;
  }, { capture: true });
  document.addEventListener("keydown", (event) => {
    if (event.key === "Escape") close(true);
  });
}

// Opened right behind the term, so that the next Tab goes into it.
function show(term) {
  const note = document.createElement("span");
  note.className = "term-note";
  note.setAttribute("role", "status");
  term.after(note);
  term.setAttribute("aria-expanded", "true");
  open = { term, note };

  const more = document.createElement("a");
  more.href = term.href;
  more.textContent = word("in_glossary");
  const button = document.createElement("button");
  button.type = "button";
  button.dataset.close = "";
  button.setAttribute("aria-label", word("close"));
  button.textContent = "\u00d7";
  // Filled once it is in the page, because only a change in a live region is read out.
  setTimeout(() => note.append(`${term.dataset.meaning} `, more, button));
}

function close(backToTerm) {
  if (!open) return;
  const { term, note } = open;
  open = null;
  if (backToTerm && note.contains(document.activeElement)) term.focus();
  note.remove();
  term.removeAttribute("aria-expanded");
}
