// Cut maps: on a phone their words are of their own size and stay inside the drawing, none lies on another, and what stands in the
// drawing stands in the tables below it.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { folder, launch, open, pages } from "./demo.mjs";

let browser;
before(async () => { browser = await launch(); });
after(() => browser.close());

/** The words of every line of the drawing with their boxes, in pixels of the drawing. */
const drawn = () => [...document.querySelectorAll("text")].map((text) => {
  const { x, y, width, height } = text.getBBox();
  return { words: text.textContent, size: Number.parseFloat(getComputedStyle(text).fontSize), x, y, right: x + width, bottom: y + height };
});

test("each map can be read on a phone and in its tables", async () => {
  const maps = (await pages()).filter((path) => path.startsWith("cuts/"));
  assert.ok(maps.length >= 6, `${maps.length} maps`);
  const { page, wrong, close } = await open(browser, { width: 360 });
  for (const path of maps) {
    await page.goto(folder + path);
    const image = page.locator("img.map");
    const { width } = await image.boundingBox();
    const [natural, alt] = await image.evaluate((element) => [element.naturalWidth, element.alt]);
    assert.equal(width, natural, `${path}: not made smaller at 360 px`);
    assert.match(alt, /^Drawing: \d+ pieces/);
    const tables = await page.evaluate(() => [...document.querySelectorAll("tbody th")].map((cell) => cell.textContent));
    await page.goto(new URL(await image.getAttribute("src"), folder + path).href);
    const lines = await page.evaluate(drawn);
    for (const line of lines) {
      assert.ok(line.size >= 12, `${path}: ${line.words} at ${line.size} px`);
      assert.ok(line.x >= 0 && line.right <= natural, `${path}: ${line.words} reaches ${line.right} of ${natural}`);
    }
    for (const [at, one] of lines.entries()) {
      const other = lines.slice(at + 1).find((other) => one.x < other.right && other.x < one.right && one.y + 3 < other.bottom && other.y + 3 < one.bottom);
      assert.equal(other, undefined, `${path}: ${one.words} lies on ${other?.words}`);
    }
    const all = lines.map(({ words }) => words).join(" ");
    const missing = tables.filter((name) => !all.includes(name) && name !== "lost on the way");
    assert.deepEqual(missing, [], path);
  }
  assert.deepEqual(wrong, []);
  await close();
});
