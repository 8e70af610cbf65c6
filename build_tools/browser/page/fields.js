// What stands in a form's fields, read out and put back. A field in a table of rows is named table.row.column.

// Field name -> text typed; for a table, a list of {column: text}.
export function typedIn(form) {
  const typed = {};
  for (const table of form.querySelectorAll("[data-rows]")) typed[table.dataset.rows] = [];
  for (const [name, value] of namedValues(form)) {
    const [table, row, column] = name.split(".");
    if (column === undefined) typed[name] = value;
    else (typed[table][row] ??= {})[column] = value;
  }
  return typed;
}

// [name, text] of every field, in the order of the page; of radio buttons the chosen one.
export function namedValues(form) {
  return [...form.elements]
    .filter((field) => field.name && (field.type !== "radio" || field.checked))
    .map((field) => [field.name, field.value]);
}

export function put(form, name, value) {
  for (const field of form.elements) {
    if (field.name !== name) continue;
    if (field.type === "radio") field.checked = field.value === value;
    else field.value = value;
  }
}
