// The fields in the page's address: #speed_mph=78&clock=7:30&outings.0.date=2026-05-16. What stands after
// the # is not sent to any server, so a setting can be sent on as a link and still stays between two people.
import { namedValues, put } from "./fields.js";
import { setRowCount } from "./rows.js";

// Returns [name, text] pairs, or null where the address holds no field of this form (it may name a heading).
export function fieldsInAddress(form) {
  const hash = location.hash.slice(1);
  if (!hash.includes("=")) return null;
  const tables = new Set([...form.querySelectorAll("[data-rows]")].map((table) => table.dataset.rows));
  const known = new Set([...form.elements].map((field) => field.name));
  const pairs = [...new URLSearchParams(hash)];
  const ours = pairs.filter(([name]) => known.has(name) || tables.has(name.split(".")[0]));
  return ours.length ? ours : null;
}

export function fillFrom(form, pairs) {
  for (const table of form.querySelectorAll("[data-rows]")) {
    const name = table.dataset.rows;
    const rows = pairs.filter(([field]) => field.startsWith(`${name}.`)).map(([field]) => Number(field.split(".")[1]));
    if (rows.length || pairs.some(([field]) => field === name)) {
      setRowCount(table, Math.min(Math.max(-1, ...rows.filter(Number.isInteger)) + 1, MOST_ROWS));
    }
  }
  for (const [name, value] of pairs) put(form, name, value);
}

// Fields marked data-private, such as a pitcher's nickname, never go into an address.
export function addressOf(form, leftOut) {
  const parts = namedValues(form)
    .filter(([name]) => !leftOut.has(name) && !form.querySelector(`[name="${CSS.escape(name)}"][data-private]`))
    .map(([name, value]) => `${readable(name)}=${readable(value)}`);
  for (const table of form.querySelectorAll("[data-rows]")) {
    if (!table.querySelector("[data-row]")) parts.push(`${readable(table.dataset.rows)}=`);
  }
  const address = new URL(location.href);
  address.hash = parts.join("&");
  return address.href;
}

const MOST_ROWS = 200;

function readable(text) {
  return encodeURIComponent(text).replace(/%3A/g, ":").replace(/%20/g, "+");
}
