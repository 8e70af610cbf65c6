// A photo of the pitcher at release, measured by two taps: the throwing shoulder, then the throwing hand. It is
// drawn on a canvas and goes nowhere; only how far out and how far up the hand is goes into the form.
import { changed, namedValues, put } from "./fields.js";
import { word } from "./words.js";

const MM_PER_PIXEL = 25.4 / 96;
const RING = 12;
const LARGEST_SIDE = 1600;

export function servePhoto(form) {
  const place = form.closest("[data-desk]")?.querySelector("[data-photo]");
  if (!place) return () => {};
  const [pick, canvas, state, again] = ["pick", "canvas", "state", "again"].map((name) =>
    place.querySelector(`[data-photo-${name}]`),
  );
  const listening = new AbortController();
  const on = (target, type, act) => target.addEventListener(type, act, { signal: listening.signal });
  let picture = null;
  let taps = [];

  const begin = () => {
    taps = [];
    canvas.hidden = again.hidden = !picture;
    draw();
    state.textContent = picture ? word("photo_shoulder") : "";
  };
  on(pick, "change", async () => {
    const [file] = pick.files;
    if (!file) return;
    try {
      picture = await createImageBitmap(file);
    } catch {
      picture = null;
      begin();
      state.textContent = word("photo_unreadable");
      return;
    }
    const scale = Math.min(1, LARGEST_SIDE / Math.max(picture.width, picture.height));
    canvas.width = Math.round(picture.width * scale);
    canvas.height = Math.round(picture.height * scale);
    begin();
  });
  on(again, "click", begin);
  on(canvas, "click", (event) => {
    if (!picture || taps.length === 2) return;
    const seen = canvas.getBoundingClientRect();
    taps.push({ x: (event.clientX - seen.left) / seen.width, y: (event.clientY - seen.top) / seen.height });
    draw();
    state.textContent = word(taps.length === 1 ? "photo_hand" : "photo_done");
    if (taps.length === 2) measure(form, taps, seen);
  });
  return () => listening.abort();

  function draw() {
    if (!picture) return;
    const pen = canvas.getContext("2d");
    const wide = Math.max(1, canvas.width / (canvas.clientWidth || canvas.width));
    pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
    const points = taps.map(({ x, y }) => [x * canvas.width, y * canvas.height]);
    // White on black, so that it is seen on any picture.
    for (const [color, width] of [["#000", 5 * wide], ["#fff", 2.5 * wide]]) {
      pen.strokeStyle = color;
      pen.lineWidth = width;
      for (const [x, y] of points) {
        pen.beginPath();
        pen.arc(x, y, RING * wide, 0, 2 * Math.PI);
        pen.stroke();
      }
      if (points.length === 2) {
        pen.beginPath();
        pen.moveTo(...points[0]);
        pen.lineTo(...points[1]);
        pen.stroke();
      }
    }
  }
}

// From behind, a right-hander's arm side is on the right of the picture.
function measure(form, [shoulder, hand], seen) {
  const right = new Map(namedValues(form)).get("hand") !== "left";
  const out = (hand.x - shoulder.x) * seen.width * (right ? 1 : -1);
  const up = (shoulder.y - hand.y) * seen.height;
  put(form, "hand_out", (out * MM_PER_PIXEL).toFixed(1));
  put(form, "hand_up", (up * MM_PER_PIXEL).toFixed(1));
  put(form, "known", "photo");
  changed(form);
}
