// Prints one part of a page: the answer, or the sheet whose button was tapped, and nothing around it.
export function servePrinting() {
  document.addEventListener("click", (event) => {
    const button = event.target.closest("[data-print]");
    const part = button?.closest(".sheet") ?? button?.closest("[data-desk]")?.querySelector("[data-answer]");
    if (part) printAlone(part);
  });
}

function printAlone(part) {
  const paper = document.createElement("div");
  paper.className = "paper md-typeset";
  paper.append(part.cloneNode(true));
  document.body.append(paper);
  document.documentElement.classList.add("printing");
  // Not after print(), which returns at once on some phones while the page is still needed.
  addEventListener(
    "afterprint",
    () => {
      document.documentElement.classList.remove("printing");
      paper.remove();
    },
    { once: true },
  );
  print();
}
