// The one line that says what a calculator is doing. It is read out when its words change; the bar is not.
import { word } from "./words.js";

export function statusLine(place) {
  const text = document.createElement("p");
  const bar = document.createElement("progress");
  const heard = document.createElement("span");
  heard.className = "only-heard";
  const retry = document.createElement("button");
  retry.type = "button";
  retry.className = "button";

  // Only what is shown stands in the page: a style sheet may show a hidden button, and then it is a dead one.
  function show(words, ...others) {
    if (text.textContent !== words) text.textContent = words;
    const wanted = words ? [text, ...others] : others;
    const same = place && wanted.length === place.children.length && wanted.every((one, at) => one === place.children[at]);
    if (!same) place?.replaceChildren(...wanted);
  }

  return {
    clear: () => show(""),
    // What is only heard is for a reader who cannot see that the answer has changed.
    say(words, onlyHeard = "") {
      heard.textContent = onlyHeard;
      show(words, heard);
    },
    progress({ stage, done, total }) {
      bar.setAttribute("aria-label", word("progress"));
      if (stage === "download" && total) {
        bar.max = total;
        bar.value = done;
      } else {
        bar.removeAttribute("value");
      }
      show(stage === "download" ? word("fetching") : word("starting"), bar);
    },
    failed(words, again) {
      retry.textContent = word("try_again");
      retry.onclick = () => {
        show("");
        again();
      };
      show(words, retry);
    },
  };
}
