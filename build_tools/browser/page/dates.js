// What an edition shows only until a day, or from a day on, by the reader's own calendar: a copy kept on a
// phone does not learn of it in any other way.
export function showByDate(today = civilToday()) {
  for (const notice of document.querySelectorAll("[data-until]")) notice.hidden = today > notice.dataset.until;
  for (const warning of document.querySelectorAll("[data-due]")) {
    if (today > warning.dataset.due) warning.hidden = false;
  }
}

// The date of the reader's own calendar, not of Greenwich.
export function civilToday() {
  const now = new Date();
  const two = (number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
