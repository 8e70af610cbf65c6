// The reader's throwing hand: figures drawn for a right-hander or, mirrored, for a left-hander.
import { recall, remember } from "./storage.js";

const KEY = "bendbook-hand";
const HANDS = ["right", "left"];

export function applyHand(hand = recall("localStorage", KEY)) {
  if (!HANDS.includes(hand)) return;
  document.documentElement.dataset.hand = hand;
  for (const button of document.querySelectorAll("[data-hand-choice] [data-hand]")) {
    button.setAttribute("aria-pressed", String(button.dataset.hand === hand));
  }
}

export function serveHandChoice() {
  document.addEventListener("click", (event) => {
    const button = event.target.closest("[data-hand-choice] [data-hand]");
    if (!button) return;
    remember("localStorage", KEY, button.dataset.hand);
    applyHand(button.dataset.hand);
  });
}
