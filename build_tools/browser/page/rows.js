// A table of rows the reader fills: rows are added from the template, taken away, and stay numbered from 0.
const PLACEHOLDER = "ROW";
const NUMBERED = ["id", "name", "for", "aria-describedby"];

export function addRow(table) {
  const template = table.querySelector("template[data-row-template]");
  const row = template.content.firstElementChild.cloneNode(true);
  template.before(row);
  renumber(table, row, PLACEHOLDER, rowsOf(table).length - 1);
  return row;
}

export function removeRow(row) {
  const table = row.closest("[data-rows]");
  row.remove();
  for (const [index, other] of rowsOf(table).entries()) renumber(table, other, other.dataset.row, index);
}

export function rowsOf(table) {
  return [...table.querySelectorAll("[data-row]")];
}

export function setRowCount(table, count) {
  while (rowsOf(table).length > count) removeRow(rowsOf(table).at(-1));
  while (rowsOf(table).length < count) addRow(table);
}

// Row buttons work by keyboard too: the focus goes to the row that came, or to what is nearest to one that went.
export function serveRowButtons(form, changed) {
  form.addEventListener("click", (event) => {
    const button = event.target.closest("[data-add-row], [data-remove-row]");
    if (!button) return;
    const table = button.closest("[data-rows]");
    if ("addRow" in button.dataset) {
      addRow(table).querySelector("input, select")?.focus();
    } else {
      const row = button.closest("[data-row]");
      const index = rowsOf(table).indexOf(row);
      removeRow(row);
      const next = rowsOf(table)[Math.min(index, rowsOf(table).length - 1)];
      (next?.querySelector("[data-remove-row]") ?? table.querySelector("[data-add-row]")).focus();
    }
    changed();
  });
}

function renumber(table, row, from, to) {
  row.dataset.row = to;
  const number = new RegExp(`(${table.dataset.rows}[.-])${from}([.-])`, "g");
  for (const element of row.querySelectorAll(NUMBERED.map((name) => `[${name}]`).join())) {
    for (const name of NUMBERED) {
      const value = element.getAttribute(name);
      if (value) element.setAttribute(name, value.replace(number, `$1${to}$2`));
    }
  }
}
