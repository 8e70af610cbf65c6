// One calculator on a page: fields typed -> the runtime's answer -> put in place of the worked example.
import { addressOf, fieldsInAddress, fillFrom } from "./address.js";
import { civilToday } from "./dates.js";
import { offerFiles } from "./downloads.js";
import { namedValues, put, typedIn } from "./fields.js";
import { hasPicked, readPicked } from "./files.js";
import { serveFills } from "./fills.js";
import { clearProblems, showProblems } from "./problems.js";
import { serveRowButtons } from "./rows.js";
import { isSupported, onProgress, start } from "./runtime.js";
import { statusLine } from "./status.js";
import { serveTaps } from "./taps.js";
import { language, word } from "./words.js";
import { watchSheet } from "./worked_example.js";

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
  let picked = false;

  const stopListening = onProgress((progress) => {
    if (asked || begun) status.progress(progress);
  });
  const stop = new AbortController();
  const on = (target, type, listener) => target.addEventListener(type, listener, { signal: stop.signal });

  watchSheet(form, stop.signal);
  on(form, "focusin", begin);
  on(form, "input", () => {
    begin();
    later(PAUSE_MS);
  });
  on(form, "change", ({ target }) => {
    if (target.type === "file") filePicked();
    later(0);
  });
  on(form, "focusout", () => heldBack.length && show(heldBack, null));
  on(form, "submit", (event) => {
    event.preventDefault();
    ask({ wanted: true });
  });
  on(form, "bendbook:empty", takeAnswerAway);
  on(self, "hashchange", () => {
    if (restore(fieldsInAddress(form))) ask({});
  });
  on(desk, "click", (event) => {
    const button = event.target.closest("[data-copy-link]");
    if (button) copyLink(button);
  });
  serveRowButtons(form, () => later(0));
  serveTaps(form, stop.signal);
  serveFills(form, () => later(0), stop.signal);
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

  // Rest is counted from today, so an old link or the worked example must not bring its own. A made-up file
  // lives on its own days until the reader picks another.
  function setToday() {
    if (!form.querySelector("input[type=file][name]")) put(form, "today", civilToday());
  }

  function filePicked() {
    if (!picked && hasPicked(form)) put(form, "today", civilToday());
    picked = hasPicked(form);
  }

  function later(milliseconds) {
    clearTimeout(pause);
    pause = setTimeout(() => ask({}), milliseconds);
  }

  async function ask({ wanted }) {
    clearTimeout(pause);
    desk.querySelector(".link-note")?.replaceChildren();
    const mine = ++asked;
    noteInAddress();
    try {
      await readPicked(form);
      const runtime = await start(language());
      const answer = JSON.parse(await runtime.answer(form.dataset.calculator, JSON.stringify(typedIn(form))));
      if (mine !== asked) return;
      if (answer.failed) status.say(word("failed_answer"));
      else if (answer.problems.length) show(answer.problems, wanted ? null : document.activeElement, wanted);
      else putAnswer(answer, wanted);
      form.dispatchEvent(new CustomEvent("bendbook:answer", { detail: answer }));
    } catch (error) {
      if (mine === asked) failed(error);
    }
  }

  function putAnswer(answer, wanted) {
    clearProblems(form);
    heldBack = [];
    place.innerHTML = answer.html;
    offerFiles(place, answer.files);
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

  // What was worked out for one arm must not stand there while another one's questions are open.
  function takeAnswerAway() {
    asked += 1;
    const note = document.createElement("p");
    note.textContent = word("answer_later");
    place.replaceChildren(note);
    place.removeAttribute("data-stop");
    desk.querySelector("[data-echo]")?.replaceChildren();
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
    else status.say(word(place.querySelector(".headline") ? "mend" : "questions_open"));
    // A question with answers to tap is gone to, unless somebody is typing elsewhere.
    const asks = problems.some(({ offers }) => offers?.length) && !document.activeElement?.matches("[type=text]");
    if (goThere || asks) shown[0]?.focus();
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

  // Said beside the button, because the status line may change at any moment with the next answer.
  async function copyLink(button) {
    noteInAddress();
    let note = button.nextElementSibling;
    if (!note?.matches(".link-note")) {
      note = document.createElement("span");
      note.className = "link-note";
      note.setAttribute("role", "status");
      button.after(note);
    }
    try {
      await navigator.clipboard.writeText(location.href);
      note.textContent = ` ${word("link_copied")}`;
    } catch {
      note.textContent = ` ${word("link_in_address")}`;
    }
  }

  return () => {
    stop.abort();
    stopListening();
    clearTimeout(pause);
  };
}

function bringIntoView(element) {
  const calm = matchMedia("(prefers-reduced-motion: reduce)").matches;
  element.scrollIntoView({ behavior: calm ? "auto" : "smooth", block: "nearest" });
}
