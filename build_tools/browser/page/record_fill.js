// What a pitcher's file knows goes into the form, in place of the worked example. What the file does not know is
// asked anew: pain and the day always, and the stage.
import { civilToday } from "./dates.js";
import { rowsOf, setRowCount } from "./rows.js";
import { clear, takeAnswerAway, untouched } from "./worked_example.js";

const OF_THE_DAY = ["pain", "tired", "soreness", "slept_badly", "game_yesterday", "rested", "most", "sheet", "day"];
const OF_THE_PITCHER = [
  ...["nickname", "hand", "age", "fastball_clock", "fastball_speed", "slot", "hand_check", "notes", "start"],
  ...["role", "shape", "stage", "passed", "short_of"],
];

export function fillFromRecord(form, text) {
  const file = parsed(text);
  const target = file.targets?.at?.(-1) ?? {};
  clear(form, OF_THE_DAY);
  clear(form, OF_THE_PITCHER, { ...texts(file), age: ageNow(file), role: target.role, shape: target.shape });
  const table = form.querySelector("[data-rows=arsenal]");
  if (table && rowsOf(table).every((row) => [...row.querySelectorAll("input, select")].every(untouched))) {
    // Empty, it is read from the file, where speeds are shares of the fastball's.
    setRowCount(table, 0);
  }
  takeAnswerAway(form);
}

// A damaged file fills nothing: the answer says where it is damaged.
function parsed(text) {
  try {
    return Object(JSON.parse(text));
  } catch {
    return {};
  }
}

function texts(file) {
  return Object.fromEntries(Object.entries(file).map(([name, value]) => [name, value == null ? "" : String(value)]));
}

// Whole years have passed since the day the age was written down; the birthday is not known.
function ageNow({ age, as_of: day }) {
  if (typeof age !== "number" || typeof day !== "string") return "";
  const today = civilToday();
  const years = today.slice(0, 4) - day.slice(0, 4) - (today.slice(5) < day.slice(5) ? 1 : 0);
  return String(age + Math.max(0, years));
}
