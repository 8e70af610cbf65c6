// Buttons that change a number field by a step, for a hand that cannot type, and answers taken with a tap.
import { changed } from "./fields.js";

export function serveTaps(form, signal) {
  form.addEventListener(
    "click",
    (event) => {
      const step = event.target.closest("[data-tap]");
      const offer = event.target.closest("[data-offer]");
      if (step) {
        const field = step.parentElement.querySelector("input");
        field.value = Math.max(0, (Number.parseInt(field.value, 10) || 0) + Number(step.dataset.tap));
      } else if (offer) {
        document.getElementById(offer.dataset.for).value = offer.dataset.offer;
      } else {
        return;
      }
      changed(form);
    },
    { signal },
  );
}
