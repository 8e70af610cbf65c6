// node disk_in_firefox.mjs FIREFOX FOLDER CALCULATOR...: opens the copy on a disk in Firefox with the network
// cut, asks each calculator its worked example, searches, and prints what it saw as JSON.
import { pathToFileURL } from "node:url";
import puppeteer from "puppeteer-core";

const [firefox, folder, ...calculators] = process.argv.slice(2);
const root = pathToFileURL(`${folder}/`).href;
const NOWHERE = { "network.proxy.type": 1, "network.proxy.http": "127.0.0.1", "network.proxy.http_port": 9,
  "network.proxy.ssl": "127.0.0.1", "network.proxy.ssl_port": 9, "network.proxy.no_proxies_on": "",
  "network.proxy.allow_hijacking_localhost": true };
const browser = await puppeteer.launch({
  browser: "firefox", executablePath: firefox, headless: true, extraPrefsFirefox: NOWHERE,
});
const seen = { answers: {}, errors: [], foreign: [] };
const page = await browser.newPage();
page.on("pageerror", (error) => seen.errors.push(String(error)));
page.on("request", (request) => {
  if (!/^(file|data|blob|about):/.test(request.url())) seen.foreign.push(request.url());
});
const words = (place) => page.$eval(place, (node) => {
  const copy = node.cloneNode(true);
  for (const filled of copy.querySelectorAll("[data-files]")) filled.remove();
  return copy.textContent.replace(/\s+/g, " ").trim();
});

await page.goto(`${root}index.html`);
await page.waitForFunction(() => document.querySelector("[data-kept]").textContent !== "");
seen.kept = await words("[data-kept]");
for (const calculator of calculators) {
  await page.goto(`${root}calculators/${calculator}/index.html`);
  const example = await words("[data-answer]");
  await page.click("form[data-calculator] [type=submit]");
  await page.waitForFunction(() => document.querySelector("[data-example-note]").hidden, { timeout: 60_000 });
  const asks_for_today = (await page.$("[name=today]")) !== null;
  seen.answers[calculator] = { example, answer: await words("[data-answer]"), asks_for_today };
}
await page.goto(`${root}cues/index.html`);
await page.evaluate(() => {
  const query = document.querySelector("[data-md-component=search-query]");
  query.focus();
  query.value = "knuckle";
  query.dispatchEvent(new KeyboardEvent("keyup", { bubbles: true }));
  query.dispatchEvent(new Event("input", { bubbles: true }));
});
const found = await page.waitForSelector(".md-search-result__link", { timeout: 30_000 });
seen.found = await found.evaluate((link) => link.href.slice(link.href.indexOf("/grips/")));
await browser.close();
process.stdout.write(JSON.stringify(seen));
