// Large print: chosen with a button and remembered, or asked for with ?large in the address, as a link for
// paper does. The style sheet does the rest, on the screen and on paper.
import { forget, recall, remember } from "./storage.js";

const KEY = "bendbook-large";

export function applyLargePrint() {
  const asked = new URLSearchParams(location.search).has("large");
  show(asked || recall("localStorage", KEY) === "yes");
}

export function serveLargePrint() {
  document.addEventListener("click", (event) => {
    if (event.target.closest("[data-print-page]")) return print();
    if (!event.target.closest("[data-large-print]")) return undefined;
    const large = !document.documentElement.classList.contains("large");
    if (large) remember("localStorage", KEY, "yes");
    else forget("localStorage", KEY);
    return show(large);
  });
}

function show(large) {
  document.documentElement.classList.toggle("large", large);
  for (const button of document.querySelectorAll("[data-large-print]")) {
    button.setAttribute("aria-pressed", String(large));
  }
}
