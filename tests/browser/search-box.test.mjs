// The search box as cold fingers use it: on the demo's home page, over http and from a folder, by touch and by keys.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { folder, launch, open, serve } from "./demo.mjs";

let browser, server;
before(async () => { browser = await launch(); server = await serve(); });
after(async () => { await browser.close(); server.stop(); });

const ways = [["over http", () => server.address], ["from a folder", () => folder]];
const hits = (page) => page.locator(".found a");
const status = (page) => page.locator(".find [role=status]");

/** Types into the box and waits until something is said that is not about reading the index. */
async function search(page, typed) {
  await page.fill("#find", typed);
  await page.waitForFunction(() => /\d|Nothing|Type/.test(document.querySelector(".find [role=status]").textContent));
}

for (const [way, base] of ways) {
  test(`${way}: all names of a piece lead to the step that gives it, and Back returns to the search`, async () => {
    const { page, wrong, close } = await open(browser);
    for (const name of ["knuckle", "thick flank", "sirloin tip"]) {
      await page.goto(`${base()}index.html`);
      await search(page, name);
      assert.match(await hits(page).first().innerText(), /^Thick flank/, name);
      await page.keyboard.press("Enter");
      await page.waitForURL(/leg-seam-boned\.html#.*block-parted$/);
      await page.goBack();
      await page.waitForFunction(() => document.querySelector(".found a"));
      assert.equal(await page.inputValue("#find"), name);
      assert.match(await hits(page).first().innerText(), /^Thick flank/, name);
    }
    assert.deepEqual(wrong, []);
    await close();
  });

  test(`${way}: a name of two pieces shows both with their regions, and the gland is found by any word for it`, async () => {
    const { page, wrong, close } = await open(browser);
    await page.goto(`${base()}index.html`);
    await search(page, "sirloin");
    const shown = await hits(page).allInnerTexts();
    assert.ok(shown.some((text) => /^Chump\s+sirloin \(US\)/.test(text)) && shown.some((text) => /^Boneless sirloin/.test(text)), shown.join(" | "));
    for (const typed of ["lump behind the knee", "kernel"]) {
      await search(page, typed);
      assert.match(await hits(page).first().getAttribute("href"), /leg-seam-boned\.html#.*node-out$/, typed);
    }
    assert.deepEqual(wrong, []);
    await close();
  });

  test(`${way}: a slip is mended and said; filters and the search stand in the address`, async () => {
    const { page, wrong, close } = await open(browser);
    await page.goto(`${base()}index.html`);
    await search(page, "tenderlion");
    assert.match(await status(page).innerText(), /tenderlion.*tenderloin.*\d/s);
    await search(page, "trim");
    await page.locator("[data-by=species] summary").click();
    await page.locator("[data-by=species] button", { hasText: "Lamb" }).click();
    await page.waitForFunction(() => location.hash === "#q=trim&species=lamb");
    for (const link of await hits(page).all()) assert.match(await link.getAttribute("href"), /lamb/);
    await page.reload();
    await page.waitForFunction(() => document.querySelector(".found a"));
    assert.equal(await page.inputValue("#find"), "trim");
    assert.match(await page.locator("[data-by=species] summary").innerText(), /Lamb/);
    assert.deepEqual(wrong, []);
    await close();
  });
}

test("keys alone are enough: slash, arrows, Enter, Escape", async () => {
  const { page, close } = await open(browser, { width: 1280 });
  await page.goto(`${folder}index.html`);
  const focused = () => page.evaluate(() => document.activeElement.id || document.activeElement.textContent);
  await page.keyboard.press("/");
  assert.equal(await focused(), "find");
  await page.keyboard.type("silverside");
  await page.waitForFunction(() => document.querySelector(".found a"));
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowDown");
  assert.equal(await focused(), await hits(page).nth(1).textContent());
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("ArrowUp");
  assert.equal(await focused(), "find");
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Escape");
  assert.equal(await focused(), "find");
  assert.equal(await page.inputValue("#find"), "silverside", "Escape among the hits goes back to the box");
  await page.keyboard.press("Escape");
  assert.equal(await page.inputValue("#find"), "", "and in the box it clears");
  assert.equal(await hits(page).count(), 0);
  await close();
});

test("nothing found says so and offers each species", async () => {
  const { page, close } = await open(browser);
  await page.goto(`${folder}index.html`);
  await search(page, "zzzzzz");
  assert.match(await status(page).innerText(), /Nothing/);
  await page.locator(".found button", { hasText: "Chicken" }).click();
  await page.waitForFunction(() => document.querySelector(".found a"));
  assert.equal(await page.inputValue("#find"), "");
  for (const link of await hits(page).all()) assert.match(await link.getAttribute("href"), /chicken/);
  await close();
});

test("everything to be hit with a glove is large, and nothing scrolls sideways", async () => {
  const { page, close } = await open(browser, { width: 320 });
  await page.goto(`${folder}index.html`);
  await search(page, "rib");
  await page.locator("[data-by=species] summary").click();
  const sizes = await page.locator(".find").evaluate((form) => [...form.querySelectorAll("input, button, summary, a")]
    .filter((element) => element.checkVisibility()).map((element) => [element.textContent || element.id, Math.round(element.getBoundingClientRect().width), Math.round(element.getBoundingClientRect().height)]));
  assert.ok(sizes.length > 8);
  assert.deepEqual(sizes.filter(([, width, height]) => width < 64 || height < 64), []);
  assert.ok((await page.locator("#find").boundingBox()).height >= 96);
  assert.ok((await page.evaluate(() => document.documentElement.scrollWidth)) <= 320);
  await close();
});

test("the index is read on the first touch of the box and not before", async () => {
  const { page, close } = await open(browser);
  const asked = [];
  page.on("request", (request) => { if (/search-index/.test(request.url())) asked.push(request.url()); });
  await page.goto(`${server.address}index.html`, { waitUntil: "networkidle" });
  assert.equal(asked.length, 0);
  await page.focus("#find");
  await page.waitForFunction(() => window.seamwiseIndex);
  assert.equal(asked.length, 1);
  await close();
});

test("without script the page says where all pieces and guides stand", async () => {
  const { page, close } = await open(browser, { script: false });
  await page.goto(`${folder}index.html`);
  assert.equal(await page.locator("form.find").isVisible(), false);
  assert.equal(await page.locator("noscript a").isVisible(), true);
  await close();
});

test("with the keyboard of a phone open the first place found is seen, and a wide screen stays where it is", async () => {
  for (const [width, height, moves] of [[360, 430, true], [1280, 800, false]]) {
    const { page, close } = await open(browser, { width, height });
    await page.goto(server.address);
    await page.locator("#find").click();
    await page.keyboard.type("knuckle");
    await hits(page).first().waitFor();
    const first = await hits(page).first().boundingBox();
    assert.ok(first.y >= 0 && first.y + first.height <= height, `${width}×${height}: the first place at ${first.y}`);
    const field = await page.locator("#find").boundingBox();
    assert.ok(field.y >= 0, `${width}×${height}: the box at ${field.y}`);
    assert.equal(await page.evaluate(() => scrollY > 0), moves, `${width}×${height}`);
    await close();
  }
});
