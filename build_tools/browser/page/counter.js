// Counts a game that is going on: one tap a pitch, one a new batter. It knows no rule. What it calls out comes
// with the answer; the count goes into the form's fields "tonight" and "tonight_before". Each pitcher has a count
// of their own, by nickname: after a pitching change each goes on where it stood.
//
//   <section data-counter>
//     <output data-count>, <span data-to-batter>    filled here
//     <div data-live role="status">                 what is called out
//     buttons data-move="pitch", data-move="batter", data-undo, data-game-over, data-start-again
import { changed, put, typedIn } from "./fields.js";
import { emptyIfUntouched } from "./log.js";
import { addRow, rowsOf } from "./rows.js";
import { recallForTonight, rememberForTonight } from "./storage.js";
import { word } from "./words.js";

const KEY = "bendbook-tonight";

export function serveCounter(form) {
  const place = form.closest("[data-desk]")?.querySelector("[data-counter]");
  if (!place) return () => {};
  let { who, counts } = kept();
  let { moves, day } = countOf(who);
  const stop = new AbortController();
  place.addEventListener("click", tapped, { signal: stop.signal });
  form.addEventListener("bendbook:answer", ({ detail }) => callOut(detail), { signal: stop.signal });
  form.addEventListener("bendbook:opened", opened, { signal: stop.signal });
  form.addEventListener("bendbook:forgotten", forgotten, { signal: stop.signal });
  show();
  // After the calculator has begun to listen.
  if (moves.length) {
    setTimeout(() => {
      put(form, "nickname", who);
      fillIn();
    });
  }

  function tapped(event) {
    const button = event.target.closest("button");
    if (!button) return;
    if (!moves.length) {
      emptyIfUntouched(form);
      day = typedIn(form).today;
    }
    if (button.dataset.move) moves.push(button.dataset.move);
    else if ("undo" in button.dataset) moves.pop();
    else if ("gameOver" in button.dataset && !gameOver()) return;
    else if ("startAgain" in button.dataset && !startAgain()) return;
    remember();
    show();
    fillIn();
  }

  function countOf(name) {
    return counts[name] ?? { moves: [], day: "" };
  }

  function nickname() {
    return typedIn(form).nickname.trim();
  }

  // A nickname that was typed or mended meanwhile is still the same pitcher's.
  function remember() {
    delete counts[who];
    who = nickname();
    if (moves.length) counts[who] = { moves, day };
    rememberForTonight(KEY, { who, counts });
  }

  function opened() {
    goOnWith(nickname());
    setTimeout(fillIn);
  }

  function forgotten({ detail: names }) {
    for (const name of names) delete counts[name];
    goOnWith(who);
  }

  function goOnWith(name) {
    who = name;
    ({ moves, day } = countOf(who));
    rememberForTonight(KEY, { who, counts });
    show();
  }

  function show() {
    const { pitches, toBatter, batter } = counted(moves);
    place.querySelector("[data-count]").textContent = pitches;
    place.querySelector("[data-to-batter]").textContent = word("to_this_batter", { pitches: toBatter, batter });
    for (const button of place.querySelectorAll("[data-undo], [data-game-over], [data-start-again]")) {
      button.disabled = !moves.length;
    }
    if (!moves.length) place.querySelector("[data-live]").replaceChildren();
  }

  function fillIn() {
    const { pitches, before } = counted(moves);
    // The game is of the day on which it began, also after midnight.
    if (day) put(form, "today", day);
    put(form, "tonight", moves.length ? String(pitches) : "");
    put(form, "tonight_before", before === null ? "" : String(before));
    changed(form);
  }

  function callOut({ live, problems }) {
    if (!moves.length) return;
    const lines = problems?.length ? [word("mend_first", { problem: problems[0].text })] : (live ?? []);
    place.querySelector("[data-live]").replaceChildren(
      ...lines.map((line) => {
        const paragraph = document.createElement("p");
        paragraph.textContent = line;
        return paragraph;
      }),
    );
  }

  // The game goes into the list of games that are over, on the day on which it began.
  function gameOver() {
    const { pitches, before } = counted(moves);
    const table = form.querySelector('[data-rows="outings"]');
    addRow(table);
    const row = rowsOf(table).length - 1;
    put(form, `outings.${row}.date`, day);
    put(form, `outings.${row}.pitches`, String(pitches));
    put(form, `outings.${row}.before`, before === null ? "" : String(before));
    return nothingCounted();
  }

  function startAgain() {
    return confirm(word("start_again")) && nothingCounted();
  }

  function nothingCounted() {
    moves = [];
    day = "";
    return true;
  }

  return () => stop.abort();
}

// before: the count when the last batter came up who saw a pitch; null where nobody has.
function counted(moves) {
  let pitches = 0;
  let toBatter = 0;
  let batter = 1;
  let before = null;
  for (const move of moves) {
    if (move === "pitch") {
      if (!toBatter) before = pitches;
      pitches += 1;
      toBatter += 1;
    } else {
      batter += 1;
      toBatter = 0;
    }
  }
  return { pitches, toBatter, batter, before };
}

function kept() {
  const { who, counts } = recallForTonight(KEY);
  const found = {};
  for (const [name, { moves, day } = {}] of Object.entries(counts ?? {})) {
    if (Array.isArray(moves)) found[name] = { moves: moves.filter((move) => ["pitch", "batter"].includes(move)), day };
  }
  return { who: typeof who === "string" ? who : "", counts: found };
}
