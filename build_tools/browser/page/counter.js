// Counts a game that is going on: one tap a pitch, one a new batter. It knows no rule. What it calls out comes
// with the answer; the count goes into the form's fields "tonight" and "tonight_before".
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
  let moves = kept();
  const stop = new AbortController();
  place.addEventListener("click", tapped, { signal: stop.signal });
  form.addEventListener("bendbook:answer", ({ detail }) => callOut(detail), { signal: stop.signal });
  show();
  // After the calculator has begun to listen.
  if (moves.length) setTimeout(fillIn);

  function tapped(event) {
    const button = event.target.closest("button");
    if (!button) return;
    if (!moves.length) emptyIfUntouched(form);
    if (button.dataset.move) moves.push(button.dataset.move);
    else if ("undo" in button.dataset) moves.pop();
    else if ("gameOver" in button.dataset && !gameOver()) return;
    else if ("startAgain" in button.dataset && !startAgain()) return;
    rememberForTonight(KEY, { moves });
    show();
    fillIn();
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

  // The game goes into the list of games that are over, on the day the form calls today.
  function gameOver() {
    const { pitches, before } = counted(moves);
    const table = form.querySelector('[data-rows="outings"]');
    addRow(table);
    const row = rowsOf(table).length - 1;
    put(form, `outings.${row}.date`, typedIn(form).today);
    put(form, `outings.${row}.pitches`, String(pitches));
    put(form, `outings.${row}.before`, before === null ? "" : String(before));
    moves = [];
    return true;
  }

  function startAgain() {
    if (!confirm(word("start_again"))) return false;
    moves = [];
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
  const { moves } = recallForTonight(KEY);
  return Array.isArray(moves) ? moves.filter((move) => ["pitch", "batter"].includes(move)) : [];
}
