// Limits, cold clocks and anatomy on a phone: from a guide to the source of a limit in two taps, to the clock and the parts.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { folder, guides, launch, open, pages } from "./demo.mjs";

let browser;
before(async () => { browser = await launch(); });
after(() => browser.close());

/** True when at least the upper edge of an element, or all of a small one, lies on the screen. */
const onScreen = (locator) => locator.evaluate((element) => {
  const { top, bottom } = element.getBoundingClientRect();
  return top >= 0 && Math.min(bottom, top + 40) <= innerHeight;
});

test("two taps lead from every guide to the source of a limit, at 360 px, with script off", async () => {
  const { page, wrong, close } = await open(browser, { script: false });
  for (const path of await guides()) {
    await page.goto(folder + path);
    const product = page.locator("main a[href*='limits/index.html#product-']").first();
    await product.tap();
    await page.waitForURL(/#product-/);
    const card = page.locator(`[id="${new URL(page.url()).hash.slice(1)}"]`);
    assert.ok(await onScreen(card), `${path}: the class of product is on the screen`);
    const figure = card.locator("a[href^='#limit-']").first();
    assert.ok(await onScreen(figure), `${path}: a figure is on the screen`);
    await figure.tap();
    await page.waitForURL(/#limit-/);
    const limit = page.locator(`[id="${new URL(page.url()).hash.slice(1)}"]`);
    const source = limit.locator("dt", { hasText: "Source" }).locator("xpath=following-sibling::dd");
    assert.ok(await onScreen(source), `${path}: the source is on the screen after two taps`);
    assert.match(await source.textContent(), /\d/, `${path}: the source names a section or a year`);
    assert.ok(await onScreen(limit.locator("dt", { hasText: "Force" })), `${path}: so is its force`);
  }
  assert.deepEqual(wrong, []);
  await close();
});

test("two taps lead from a guide to the shop's own limit, with who watches and what is done", async () => {
  const { page, close } = await open(browser);
  for (const way of ["main a[href*='limits/index.html#product-']", "main a[href*='/cold/']"]) {
    await page.goto(`${folder}guides/pork/loin-boneless.html`);
    await page.locator(way).first().tap();
    await page.waitForURL(/limits|cold/);
    await page.locator("a[href$='#own-time-out']").first().tap();
    await page.waitForURL(/#own-time-out/);
    const card = page.locator("#own-time-out");
    assert.ok(await onScreen(card));
    for (const words of ["30 minutes", "Watched by", "If missed"]) assert.ok((await card.textContent()).includes(words), words);
  }
  await close();
});

test("the cold clock is drawn at full size on a phone, and its table shows what is left without a swipe", async () => {
  const { page, wrong, close } = await open(browser);
  for (const path of await guides()) {
    await page.goto(folder + path);
    await page.locator("main a[href*='/cold/']").tap();
    const drawing = page.locator("img.clock");
    await drawing.evaluate((image) => image.decode());
    const { width, natural } = await drawing.evaluate((image) => ({ width: image.getBoundingClientRect().width, natural: image.naturalWidth }));
    // Words of the drawing are 15 of its units high.
    assert.ok(15 * width / natural >= 14, `${path}: words of ${15 * width / natural} px`);
    const table = page.locator("table.cold");
    const right = await table.locator("tbody tr").first().locator("td").last().evaluate((cell) => cell.getBoundingClientRect().right);
    assert.ok(right <= 360, `${path}: the room left ends at ${right} px`);
  }
  assert.deepEqual(wrong, []);
  await close();
});

test("a step leads to the parts that it looks for, and a part back to the step", async () => {
  const { page, close } = await open(browser, { script: false });
  await page.goto(`${folder}guides/pork/loin-boneless.html`);
  await page.locator("#step-tenderloin-out summary", { hasText: "Anatomy" }).tap();
  await page.locator("#step-tenderloin-out a[href$='anatomy/pork.html']").tap();
  await page.waitForURL(/anatomy/);
  await page.goto(`${folder}bench/pork/loin-boneless.html#step-tenderloin-out`);
  await page.locator("#step-tenderloin-out summary", { hasText: "Anatomy" }).tap();
  await page.locator("#step-tenderloin-out a[href$='anatomy/pork.html#part-finger-bones']").tap();
  await page.waitForURL(/#part-/);
  const part = page.locator("#part-finger-bones");
  assert.ok(await onScreen(part), "the part is on the screen");
  await part.locator("a[href$='loin-boneless.html#step-tenderloin-out']").tap();
  await page.waitForURL(/#step-/);
  assert.ok(await onScreen(page.locator("#step-tenderloin-out")), "the step is on the screen");
  await close();
});

const own = async () => (await pages()).filter((path) => /^(limits|cold|anatomy)\//.test(path));

test("limits, clocks and anatomy have ways that a glove can hit", async () => {
  const { page, close } = await open(browser);
  for (const path of await own()) {
    await page.goto(folder + path);
    const small = await page.locator("main a").evaluateAll((links) => links.filter((link) => link.getBoundingClientRect().height < 43.9).map((link) => link.outerHTML.slice(0, 80)));
    assert.deepEqual(small, [], path);
  }
  await close();
});

test("limits, clocks and anatomy never scroll sideways, at 320 px and with text twice as large", async () => {
  const { page, close } = await open(browser, { width: 320 });
  for (const path of await own()) {
    await page.goto(folder + path);
    for (const size of ["100%", "200%"]) {
      const wide = await page.evaluate((size) => { document.documentElement.style.fontSize = size; return document.documentElement.scrollWidth; }, size);
      assert.ok(wide <= 320, `${path}: ${wide} px at ${size}`);
    }
  }
  await close();
});
