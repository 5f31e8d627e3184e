// Every page of the demo is read as an apprentice does: on a phone, over http and from a folder, with script and without.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { folder, guides, launch, open, pages, serve } from "./demo.mjs";

let browser, server;
before(async () => { browser = await launch(); server = await serve(); });
after(async () => { await browser.close(); server.stop(); });

for (const [way, base] of [["over http", () => server.address], ["from a folder", () => folder]]) {
  for (const script of [true, false]) {
    test(`every page opens ${way}, script ${script ? "on" : "off"}, and loads nothing from elsewhere`, async () => {
      const { page, wrong, close } = await open(browser, { script });
      for (const path of await pages()) {
        await page.goto(base() + path);
        assert.equal(await page.locator("h1").count(), 1, `${path}: one h1`);
        assert.ok((await page.locator("main").innerText()).length > 80, `${path}: its text can be read`);
        const broken = await page.locator("img").evaluateAll((images) => images.filter((i) => i.loading !== "lazy" && i.complete && i.naturalWidth === 0).map((i) => i.src));
        assert.deepEqual(broken, [], `${path}: pictures that do not show`);
      }
      assert.deepEqual(wrong, []);
      await close();
    });
  }
}

/** Largest scroll width, controls under the bar, and text boxes that are cut off. */
const measure = (least) => {
  const shown = (element) => element.checkVisibility() && element.getBoundingClientRect().width > 0;
  const small = [...document.querySelectorAll("a, button, summary, input, select, [role=button]")]
    .filter((element) => shown(element) && !element.closest("p, li p, dd p, td p, .skip") && getComputedStyle(element).display !== "inline")
    .map((element) => ({ text: element.textContent.trim().slice(0, 30), box: element.getBoundingClientRect() }))
    .filter(({ box }) => box.width < least || box.height < least)
    .map(({ text, box }) => `${text} ${Math.round(box.width)}×${Math.round(box.height)}`);
  return { scroll: document.documentElement.scrollWidth, small };
};

for (const width of [320, 360, 412, 1280]) {
  test(`no page scrolls sideways at ${width} px, and every control is at least 44 px`, async () => {
    const { page, close } = await open(browser, { width, height: 740 });
    for (const path of await pages()) {
      await page.goto(folder + path);
      const { scroll, small } = await page.evaluate(measure, 44);
      assert.ok(scroll <= width, `${path}: ${scroll} px wide at ${width}`);
      assert.deepEqual(small, [], `${path}: too small to hit with a glove`);
    }
    await close();
  });
}

test("text at 200 % and with wide spacing loses nothing", async () => {
  const { page, close } = await open(browser, { width: 320 });
  const wide = "* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }";
  for (const path of await pages()) {
    for (const change of ["html { font-size: 200% !important }", wide]) {
      await page.goto(folder + path);
      await page.evaluate((css) => { const sheet = new CSSStyleSheet(); sheet.replaceSync(css); document.adoptedStyleSheets = [sheet]; }, change);
      assert.ok((await page.evaluate(() => document.documentElement.scrollWidth)) <= 320, `${path}: scrolls sideways with ${change.slice(0, 30)}`);
    }
  }
  await close();
});

test("in every step the caution stands before the act, in the text and on the screen", async () => {
  const { page, close } = await open(browser, { script: false });
  let seen = 0;
  for (const path of await guides()) {
    await page.goto(folder + path);
    for (const step of await page.locator("li.step").all()) {
      const order = await step.evaluate((element) => {
        const act = element.querySelector(".do");
        return [...element.querySelectorAll(".caution")].map((caution) => ({
          before: Boolean(caution.compareDocumentPosition(act) & Node.DOCUMENT_POSITION_FOLLOWING),
          above: caution.getBoundingClientRect().bottom <= act.getBoundingClientRect().top,
          parts: caution.textContent.trim().length > 40,
        }));
      });
      seen += order.length;
      assert.ok(order.every((one) => one.before && one.above && one.parts), `${path}: ${await step.locator("h3").innerText()}`);
    }
  }
  assert.ok(seen > 10, "the demo has cautions");
  await close();
});

test("links lead to pages and places that are there", async () => {
  const { page, close } = await open(browser, { script: false });
  const all = new Map();
  for (const path of await pages()) {
    await page.goto(folder + path);
    const ids = await page.locator("[id]").evaluateAll((elements) => elements.map((element) => element.id));
    const links = await page.locator("a[href]").evaluateAll((elements) => elements.map((element) => element.href));
    assert.equal(new Set(ids).size, ids.length, `${path}: ids are unique`);
    all.set(folder + path, { ids: new Set(ids), links });
  }
  for (const [from, { links }] of all) {
    for (const link of links.filter((link) => link.startsWith("file:"))) {
      const [page, place] = link.split("#");
      if (!page.endsWith(".html")) continue;
      assert.ok(all.has(page), `${from} leads to ${page}, which is not there`);
      if (place) assert.ok(all.get(page).ids.has(decodeURIComponent(place)), `${from} leads to #${place}, which is not there`);
    }
  }
  await close();
});
