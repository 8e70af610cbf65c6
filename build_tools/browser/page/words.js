// The words this script shows come with a script of their own, one a language, which a page loads before this:
//   self.bendbookWords = { en: { ready: "Ready.", ... } }
// Their English is in build_tools/browser/words.py, under the same names.
export function word(name, values = {}) {
  const text = wordsOfThisPage()[name] ?? name;
  return text.replace(/\{(\w+)\}/g, (whole, key) => values[key] ?? whole);
}

export function language() {
  return document.documentElement.lang.split("-")[0] || "en";
}

// A civil date such as 2026-05-16, written out for the reader.
export function writtenDate(civil) {
  const [year, month, day] = civil.split("-").map(Number);
  const written = new Intl.DateTimeFormat(document.documentElement.lang || "en", { dateStyle: "long" });
  return written.format(new Date(year, month - 1, day));
}

function wordsOfThisPage() {
  return self.bendbookWords?.[language()] ?? {};
}
