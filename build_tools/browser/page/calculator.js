// One calculator on a page: fields typed -> the runtime's answer -> put in place of the worked example.
import { addressOf, fieldsInAddress, fillFrom } from "./address.js";
import { namedValues, put, typedIn } from "./fields.js";
import { clearProblems, showProblems } from "./problems.js";
import { serveRowButtons } from "./rows.js";
import { isSupported, onProgress, start } from "./runtime.js";
import { statusLine } from "./status.js";
import { language, word } from "./words.js";

const PAUSE_MS = 350;

export function serveCalculator(form, kept) {
  const desk = form.closest("[data-desk]") ?? form.parentElement;
  const place = desk.querySelector("[data-answer]");
  const status = statusLine(desk.querySelector("[data-status]"));
  if (!isSupported()) {
    desk.dataset.unsupported = "";
    status.say(word("too_old"));
    return () => {};
  }

  let asked = 0;
  let pause = null;
  let heldBack = [];
  let begun = false;

  const stopListening = onProgress((progress) => {
    if (asked || begun) status.progress(progress);
  });
  const stop = new AbortController();
  const on = (target, type, listener) => target.addEventListener(type, listener, { signal: stop.signal });

  on(form, "focusin", begin);
  on(form, "input", () => later(PAUSE_MS));
  on(form, "change", () => later(0));
  on(form, "focusout", () => heldBack.length && show(heldBack, null));
  on(form, "submit", (event) => {
    event.preventDefault();
    ask({ wanted: true });
  });
  on(self, "hashchange", () => {
    if (restore(fieldsInAddress(form))) ask({});
  });
  on(desk, "click", (event) => {
    if (event.target.closest("[data-copy-link]")) copyLink();
  });
  serveRowButtons(form, () => later(0));
  if (restore(kept) || restore(fieldsInAddress(form))) ask({});

  // The runtime starts while the reader is still typing.
  function begin() {
    if (begun) return;
    begun = true;
    setToday();
    start(language()).then(
      () => asked || status.clear(),
      (error) => asked || failed(error),
    );
  }

  function restore(pairs) {
    if (!pairs) return false;
    begun = true;
    setToday();
    fillFrom(form, pairs);
    return true;
  }

  // Rest is counted from today, so an old link or the worked example must not bring its own.
  function setToday() {
    put(form, "today", civilToday());
  }

  function later(milliseconds) {
    clearTimeout(pause);
    pause = setTimeout(() => ask({}), milliseconds);
  }

  async function ask({ wanted }) {
    clearTimeout(pause);
    const mine = ++asked;
    noteInAddress();
    try {
      const runtime = await start(language());
      const answer = JSON.parse(await runtime.answer(form.dataset.calculator, JSON.stringify(typedIn(form))));
      if (mine !== asked) return;
      if (answer.failed) status.say(word("failed_answer"));
      else if (answer.problems.length) show(answer.problems, wanted ? null : document.activeElement, wanted);
      else putAnswer(answer, wanted);
    } catch (error) {
      if (mine === asked) failed(error);
    }
  }

  function putAnswer(answer, wanted) {
    clearProblems(form);
    heldBack = [];
    place.innerHTML = answer.html;
    delete place.dataset.stale;
    place.toggleAttribute("data-stop", answer.stop);
    const headline = place.querySelector(".headline")?.textContent;
    const echo = desk.querySelector("[data-echo]");
    if (echo) echo.textContent = headline;
    status.say(word("answered"), headline);
    const note = desk.querySelector("[data-example-note]");
    if (note) note.hidden = true;
    if (wanted) bringIntoView(place);
  }

  // A field that is still being typed in is not called wrong; its problem waits until the reader leaves it.
  function show(problems, typingIn, goThere) {
    const own = (problem) => typingIn?.id && typingIn.id === fieldId(problem) && !typingIn.matches("[aria-invalid]");
    heldBack = problems.some(own) ? problems : [];
    const shown = showProblems(form, problems.filter((problem) => !own(problem)));
    place.dataset.stale = "";
    const homeless = problems.filter((problem) => !document.getElementById(`${fieldId(problem)}-problem`));
    if (homeless.length) status.say(homeless[0].text);
    else if (heldBack.length) status.clear();
    else status.say(word("mend"));
    if (goThere) shown[0]?.focus();
  }

  function fieldId({ field, row, column }) {
    const inRow = row === null || column === null ? "" : `-${row}-${column}`;
    return `${form.dataset.calculator}-${field}${inRow}`;
  }

  function failed(error) {
    console.warn("The calculator's runtime failed.", error);
    const kind = /^(download|damaged): /.exec(error.message)?.[1] ?? "start";
    status.failed(word(`failed_${kind}`), () => ask({}));
  }

  function noteInAddress() {
    history.replaceState(history.state, "", addressOf(form, leftOutOfAddress()));
  }

  // Another day than today was chosen on purpose and goes along; today's date would be wrong tomorrow.
  function leftOutOfAddress() {
    const today = namedValues(form).find(([name]) => name === "today");
    return new Set(today?.[1] === civilToday() ? ["today"] : []);
  }

  async function copyLink() {
    noteInAddress();
    try {
      await navigator.clipboard.writeText(location.href);
      status.say(word("link_copied"));
    } catch {
      status.say(word("link_in_address"));
    }
  }

  return () => {
    stop.abort();
    stopListening();
    clearTimeout(pause);
  };
}

// The date of the reader's own calendar, not of Greenwich.
function civilToday() {
  const now = new Date();
  const two = (number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function bringIntoView(element) {
  const calm = matchMedia("(prefers-reduced-motion: reduce)").matches;
  element.scrollIntoView({ behavior: calm ? "auto" : "smooth", block: "nearest" });
}
