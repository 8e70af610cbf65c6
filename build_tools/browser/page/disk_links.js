// Opened from a disk, a link to a folder shows the folder. The links of a page are mended when the copy is
// made; this mends those that come later, in an answer or a list of what was found.
export function leadToPages() {
  for (const kind of ["click", "auxclick"]) {
    document.addEventListener(kind, mend, { capture: true });
  }
}

function mend(event) {
  const link = event.target.closest?.("a[href]");
  if (link?.protocol === "file:" && link.pathname.endsWith("/")) link.pathname += "index.html";
}
