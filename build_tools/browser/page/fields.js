// What stands in a form's fields, read out and put back. A field in a table of rows is named table.row.column.
import { contentOf } from "./files.js";

// Field name -> text typed; for a table, a list of {column: text}; for a file, its bytes as text.
export function typedIn(form) {
  const typed = {};
  for (const table of form.querySelectorAll("[data-rows]")) typed[table.dataset.rows] = [];
  for (const [name, value] of namedValues(form)) {
    const [table, row, column] = name.split(".");
    if (column === undefined) typed[name] = value;
    else (typed[table][row] ??= {})[column] = value;
  }
  for (const file of form.querySelectorAll("input[type=file][name]")) typed[file.name] = contentOf(file);
  return typed;
}

// [name, text] of every field but files, in the order of the page; of radio buttons the chosen one.
export function namedValues(form) {
  return [...form.elements]
    .filter((field) => field.name && field.type !== "file" && (field.type !== "radio" || field.checked))
    .map((field) => [field.name, field.value]);
}

export function put(form, name, value) {
  for (const field of form.elements) {
    if (field.name !== name || field.type === "file") continue;
    if (field.type === "radio") field.checked = field.value === value;
    else field.value = value;
  }
}

// Tells the form that fields were changed by a button, as if somebody had typed.
export function changed(form) {
  form.dispatchEvent(new Event("input", { bubbles: true }));
}
