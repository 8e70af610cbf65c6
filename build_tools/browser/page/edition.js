// The copy kept on this device: registers the offline worker, says what is kept, offers a new edition.
/* global KEEPS_A_COPY, FROM_DISK, EDITION_DATE -- put in by the build: false while an author previews pages;
   true in the copy that is opened from a disk; the day the edition is of, in that copy */
import { root } from "./root.js";
import { keepTyped } from "./typed.js";
import { word, writtenDate } from "./words.js";

const CHECK_AGAIN_MS = 60_000;
const TRY_AGAIN_MS = [5_000, 30_000, 120_000];
let state = { name: "unknown" };
let registration = null;
let checkedAt = 0;
let taking = false;
let reloading = false;

// Call on every page shown: a page that came in without a reload has a status line of its own.
export function showKept() {
  for (const place of document.querySelectorAll("[data-kept]")) place.textContent = keptWords();
}

export async function keepEdition() {
  if (FROM_DISK) return to({ name: "on_disk", date: EDITION_DATE });
  if (!KEEPS_A_COPY || !navigator.serviceWorker || !isSecureContext) return to({ name: "impossible" });
  const worker = navigator.serviceWorker;
  let controlled = Boolean(worker.controller);
  worker.addEventListener("message", ({ data, source }) => {
    if (source?.scriptURL === `${root}sw.js`) heard(data);
  });
  worker.addEventListener("controllerchange", () => {
    // The first copy takes over silently; a new edition reloads the page, in every tab.
    if (controlled || taking) reloadOnce();
    controlled = true;
    askWhatIsKept();
  });
  document.addEventListener("click", (event) => {
    if (event.target.closest("[data-keep]")) keepFirmly();
  });
  document.addEventListener("visibilitychange", lookForNew);
  self.addEventListener("online", () => registration?.active || register());
  if (navigator.connection?.saveData && !(await worker.getRegistration(root))) return to({ name: "saving" });
  return register();
}

async function register() {
  const before = registration;
  try {
    registration = await navigator.serviceWorker.register(`${root}sw.js`, { scope: root, updateViaCache: "none" });
  } catch (error) {
    console.warn("No copy is kept on this device.", error);
    return to({ name: "impossible" });
  }
  if (!registration) return to({ name: "impossible" });
  if (registration === before) return askWhatIsKept();
  if (registration.waiting && registration.active) offer();
  registration.addEventListener("updatefound", () => watch(registration.installing));
  if (registration.installing) watch(registration.installing);
  return askWhatIsKept();
}

function watch(coming) {
  coming?.addEventListener("statechange", () => {
    if (coming.state === "installed" && registration.active) offer();
    if (coming.state === "activated") askWhatIsKept();
    if (coming.state === "redundant" && !registration.active && state.name !== "full") {
      to({ name: "failed" });
      tryAgainLater();
    }
  });
}

// What has come so far stays, so on a poor connection each attempt gets further than the last.
function tryAgainLater() {
  const wait = TRY_AGAIN_MS.shift();
  if (wait) setTimeout(() => registration.active || register(), wait);
}

function heard(data) {
  if (data.keeping && !registration?.active) to({ name: "keeping", ...data.keeping });
  if (data.failed) console.warn("The copy broke off.", data.why);
  if (data.failed && !registration?.active) to({ name: data.failed });
}

async function askWhatIsKept() {
  const kept = await ask(registration?.active);
  if (kept) to({ name: "kept", date: kept.date });
}

// Asks a worker which edition it holds.
function ask(worker) {
  if (!worker) return null;
  const { port1, port2 } = new MessageChannel();
  return new Promise((resolve) => {
    port1.onmessage = ({ data }) => resolve(data);
    worker.postMessage({ bendbook: "edition" }, [port2]);
  });
}

function lookForNew() {
  if (document.visibilityState !== "visible" || !registration || Date.now() - checkedAt < CHECK_AGAIN_MS) return;
  checkedAt = Date.now();
  registration.update().catch(() => {});
}

async function offer() {
  const coming = registration.waiting;
  const edition = await ask(coming);
  document.querySelector(".edition-banner")?.remove();
  const banner = document.createElement("section");
  banner.className = "edition-banner";
  banner.setAttribute("aria-label", word("new_edition_label"));
  const text = document.createElement("p");
  text.setAttribute("role", "status");
  banner.append(
    text,
    button("take_new_edition", () => {
      taking = true;
      coming.postMessage({ bendbook: "take over" });
    }),
    button("later", () => banner.remove()),
  );
  document.body.prepend(banner);
  setTimeout(() => (text.textContent = word("new_edition", { date: writtenDate(edition.date) })));
}

function button(name, pressed) {
  const made = document.createElement("button");
  made.type = "button";
  made.className = "button";
  made.textContent = word(name);
  made.addEventListener("click", pressed);
  return made;
}

function reloadOnce() {
  if (reloading) return;
  reloading = true;
  keepTyped();
  location.reload();
}

async function keepFirmly() {
  if (!registration) await register();
  const firmly = await navigator.storage?.persist?.().catch(() => false);
  to({ ...state, firmly: Boolean(firmly) });
}

function to(next) {
  state = { firmly: state.firmly, ...next };
  showKept();
}

function keptWords() {
  // In steps, because every change of this line is read out to those who listen.
  if (state.name === "keeping") return word("keeping", { percent: 10 * Math.floor((10 * state.done) / state.total) });
  if (state.name === "on_disk") return word("kept_on_disk", { date: writtenDate(state.date) });
  if (state.name !== "kept") return state.name === "unknown" ? "" : word(`kept_${state.name}`);
  const kept = word("kept", { date: writtenDate(state.date) });
  if (state.firmly === undefined) return kept;
  return `${kept} ${state.firmly ? word("kept_firmly") : word("kept_loosely")}`;
}
