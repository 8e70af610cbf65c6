// A problem is shown at its own field, in words that say how to mend it.

export function showProblems(form, problems) {
  clearProblems(form);
  return problems.map((problem) => showProblem(form, problem)).filter(Boolean);
}

export function clearProblems(form) {
  for (const place of form.querySelectorAll(".problem")) {
    place.hidden = true;
    place.textContent = "";
  }
  for (const field of form.querySelectorAll("[aria-invalid]")) field.removeAttribute("aria-invalid");
}

// Returns the field to go to, or null where the form has no place for this problem.
function showProblem(form, { field, row, column, text, offers }) {
  const inRow = row === null || column === null ? "" : `-${row}-${column}`;
  const ident = `${form.dataset.calculator}-${field}${inRow}`;
  const place = document.getElementById(`${ident}-problem`);
  if (!place) return null;
  place.textContent = text;
  place.hidden = false;
  place.closest("details")?.setAttribute("open", "");
  const control = document.getElementById(ident);
  if (offers?.length) place.append(...offers.map((offer) => offered(offer, ident)));
  if (control?.matches("input, select, textarea")) {
    control.setAttribute("aria-invalid", "true");
    describe(control, place.id);
    return control;
  }
  return place.closest("[data-field]")?.querySelector("input, select, button") ?? null;
}

function describe(control, ident) {
  const described = new Set((control.getAttribute("aria-describedby") ?? "").split(" ").filter(Boolean));
  control.setAttribute("aria-describedby", [...described.add(ident)].join(" "));
}

// An answer that can be taken with a tap instead of being typed.
function offered(offer, ident) {
  const button = document.createElement("button");
  button.type = "button";
  button.className = "button quiet offer";
  button.dataset.offer = offer;
  button.dataset.for = ident;
  button.textContent = offer;
  return button;
}
