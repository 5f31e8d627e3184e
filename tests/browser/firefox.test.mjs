// The demo as a folder on the disk in Firefox, whose protection of files is left as it is delivered: every page opens,
// its style and its scripts apply, and a search leads to the step. Firefox is driven by WebDriver BiDi (W3C).
import assert from "node:assert/strict";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { after, before, test } from "node:test";
import puppeteer from "puppeteer-core";
import { folder, onePerKind, pages } from "./demo.mjs";
import { texts, wide } from "./measures.mjs";

let browser, scratch;
before(async () => {
  scratch = mkdtempSync(join(tmpdir(), "seamwise-firefox-"));
  browser = await puppeteer.launch({
    browser: "firefox",
    executablePath: process.env.FIREFOX ?? "/usr/bin/firefox-esr",
    headless: true,
    // Puppeteer lifts the protection of files; here it is what is looked at. Firefox 68 of 2019 made it the default.
    extraPrefsFirefox: { "security.fileuri.strict_origin_policy": true },
  });
});
after(async () => { await browser.close(); rmSync(scratch, { recursive: true }); });

/** A tab that keeps what went wrong in it. */
async function tab(width = 500) {
  const page = await browser.newPage();
  await page.setViewport({ width, height: 740 });
  const wrong = [];
  page.on("console", (message) => { if (["error", "warn", "warning"].includes(message.type())) wrong.push(message.text()); });
  page.on("pageerror", (error) => wrong.push(String(error)));
  page.on("requestfailed", (request) => wrong.push(`not loaded: ${request.url()}`));
  page.on("request", (request) => { if (!/^(file|data):/.test(request.url())) wrong.push(`asks elsewhere: ${request.url()}`); });
  return { page, wrong };
}

test("the protection of files is on: a page may not read its neighbour", async () => {
  writeFileSync(join(scratch, "beside.txt"), "beside");
  writeFileSync(join(scratch, "page.html"), "<!doctype html><html lang=en><title>Leg</title><h1>Leg</h1>");
  const { page } = await tab();
  await page.goto(pathToFileURL(join(scratch, "page.html")).href);
  const read = await page.evaluate(() => fetch("beside.txt").then((answer) => answer.text(), (error) => `refused: ${error.name}`));
  assert.equal(read, "refused: TypeError");
  await page.close();
});

test("every page opens from a folder with its style, its pictures and its scripts, and asks nothing of the net", async () => {
  const { page, wrong } = await tab();
  for (const path of await pages()) {
    await page.goto(folder + path);
    const seen = await page.evaluate(() => ({
      headings: document.querySelectorAll("h1").length,
      // A style sheet that is a file of its own counts as another origin there: it applies and cannot be read.
      rules: [...document.querySelectorAll("style")].reduce((sum, { sheet }) => sum + sheet.cssRules.length, 0),
      bare: [...document.querySelectorAll("link[rel~=stylesheet]")].filter(({ sheet }) => sheet === null).map(({ href }) => href),
      // The colour of the theme's paper, which a page without its style would not have.
      ground: getComputedStyle(document.body).backgroundColor,
      broken: [...document.images].filter((image) => image.loading !== "lazy" && image.complete && image.naturalWidth === 0).map((image) => image.src),
    }));
    assert.equal(seen.headings, 1, `${path}: one h1`);
    assert.ok(seen.rules > 20 && !["rgba(0, 0, 0, 0)", "rgb(255, 255, 255)"].includes(seen.ground), `${path}: its style applies (${seen.rules} rules, ${seen.ground})`);
    assert.deepEqual(seen.bare, [], `${path}: style sheets that are not there`);
    assert.deepEqual(seen.broken, [], `${path}: pictures that do not show`);
    assert.deepEqual(wrong.splice(0), [], path);
  }
  await page.close();
});

test("one page of every kind fits its window, and no text is cut off or covered", async () => {
  const { page } = await tab();
  for (const [kind, path] of await onePerKind()) {
    await page.goto(folder + path);
    const { all, lost, covered } = await page.evaluate(texts);
    assert.ok(all.length > 5, `${kind}: texts to look at`);
    assert.deepEqual([lost.slice(0, 5), covered.slice(0, 5)], [[], []], `${kind}: ${path}`);
    assert.ok((await page.evaluate(wide)) <= 500, `${kind}: ${path} scrolls sideways`);
  }
  await page.close();
});

test("a search from the folder leads to the step of the guide, and the way back to the search", async () => {
  const { page, wrong } = await tab();
  await page.goto(`${folder}index.html`);
  await page.type("#find", "thick flank");
  await page.waitForFunction(() => document.querySelector(".found a") !== null);
  assert.match(await page.$eval(".found a", (link) => link.innerText), /^Thick flank/);
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => /leg-seam-boned\.html#.*block-parted$/.test(location.href));
  assert.equal(await page.$eval("h1", (heading) => heading.textContent), "Leg of lamb, seam-boned");
  // The page comes back from memory without a load event, which puppeteer's own way back waits for.
  await page.evaluate(() => { setTimeout(() => history.back()); });
  await page.waitForFunction(() => document.querySelector(".found a") !== null, { timeout: 10000 });
  assert.equal(await page.$eval("#find", (field) => field.value), "thick flank");
  assert.deepEqual(wrong, []);
  await page.close();
});

test("a start weight of one's own changes the figures of a guide from the folder", async () => {
  const { page, wrong } = await tab();
  await page.goto(`${folder}guides/lamb/leg-seam-boned.html`);
  const cell = () => page.$eval("table.figures tbody td", (td) => td.textContent);
  const before = Number(await cell());
  const worked = Number(await page.$eval("[data-start]", (mark) => mark.textContent));
  await page.$eval("#own", (field, weight) => { field.value = weight; field.dispatchEvent(new Event("input", { bubbles: true })); }, String(worked / 2));
  await page.waitForFunction((old) => Number(document.querySelector("table.figures tbody td").textContent) !== old, {}, before);
  assert.ok(Math.abs(Number(await cell()) - before / 2) <= 0.01, `${await cell()} from ${before}`);
  assert.deepEqual(wrong, []);
  await page.close();
});
