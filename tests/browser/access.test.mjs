// axe-core over every page: all its rules for WCAG 2.2 of levels A, AA and AAA and its best practice, the 7:1 contrast
// among them. Colours are looked at again in the dark; and where axe cannot tell what lies below a text, every contrast is
// reckoned anew, in the forced colours of a reader too.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { after, before, test } from "node:test";
import { everyPage, folder, launch, open, pages, scripted } from "./demo.mjs";
import { contrasts } from "./measures.mjs";

const axe = readFileSync(new URL("node_modules/axe-core/axe.min.js", import.meta.url), "utf8");
let browser;
before(async () => { browser = await launch(); });
after(() => browser.close());

/** The tags of axe-core 4.14 for all levels of WCAG 2.2 and for good practice; rules that it calls experimental or deprecated stay out. */
const tags = ["wcag2a", "wcag2aa", "wcag2aaa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
/** The rules whose answer depends on colours. */
const colours = ["color-contrast", "color-contrast-enhanced", "link-in-text-block"];
/** WCAG 2.2, success criterion 1.4.6: the contrast of body text. Ours holds for large text too. */
const LEAST_CONTRAST = 7;

const broken = ({ violations }) => violations.map((v) => `${v.id}: ${v.nodes.slice(0, 3).map((node) => node.target).join(" | ")}`);
const run = (page, runOnly) => page.evaluate((only) => globalThis.axe.run({ runOnly: only, resultTypes: ["violations"] }), runOnly);

/** Light, dark, and the colours that a reader forces on all pages, in both. */
const media = [["light", "none"], ["dark", "none"], ["light", "active"], ["dark", "active"]].map(([colorScheme, forcedColors]) => ({ colorScheme, forcedColors }));

/** Opens a page with all its folds, and gives the number of its visible texts. */
async function unfolded(page, path) {
  await page.emulateMedia(media[0]);
  await page.goto(folder + path);
  await page.evaluate(() => document.querySelectorAll("details").forEach((details) => { details.open = true; }));
  return (await page.evaluate(contrasts)).length;
}

/** Holds an open page against all rules. */
async function holds(page, path) {
  await page.evaluate(axe);
  assert.deepEqual(broken(await run(page, { type: "tag", values: tags })), [], path);
  for (const one of media) {
    await page.emulateMedia(one);
    const all = await page.evaluate(contrasts);
    assert.deepEqual(all.filter(({ ratio }) => ratio < LEAST_CONTRAST).slice(0, 5), [], `${path}, ${Object.values(one)}`);
    if (one === media[1]) assert.deepEqual(broken(await run(page, { type: "rule", values: colours })), [], `${path}, dark`);
  }
}

test("no page breaks an accessibility rule, and every text has a contrast of 7:1: light, dark, in forced colours", async () => {
  const shown = new Map();
  await everyPage(browser, {}, await pages(), async (page, path) => {
    shown.set(path, await unfolded(page, path));
    assert.ok(shown.get(path) > 5, `${path}: texts to look at`);
    await holds(page, path);
  });
  assert.equal(shown.size, (await pages()).length);
  // And what a script hides at first, where one does.
  await everyPage(browser, { still: true }, await scripted(), async (page, path) => {
    if ((await unfolded(page, path)) > shown.get(path)) await holds(page, `${path}, all of it`);
  });
});

test("the rules that are run are all that axe-core has for these levels", async () => {
  const { page, close } = await open(browser);
  await page.goto(`${folder}index.html`);
  await page.evaluate(axe);
  const known = await page.evaluate(() => globalThis.axe.getRules().map(({ ruleId, tags: own }) => [ruleId, own]));
  const { passes, violations, incomplete, inapplicable } = await page.evaluate((values) => globalThis.axe.run({ runOnly: { type: "tag", values } }), tags);
  const ran = new Set([passes, violations, incomplete, inapplicable].flat().map(({ id }) => id));
  const left = known.filter(([id, own]) => !ran.has(id) && !own.includes("experimental") && !own.includes("deprecated")).map(([id]) => id);
  assert.deepEqual(left, []);
  for (const id of [...colours, "target-size"]) assert.ok(ran.has(id), id);
  await close();
});

test("a page at fault is found out", async () => {
  const { page, close } = await open(browser);
  await page.setContent("<!doctype html><html lang=en><title>Leg</title><main><h1>Leg</h1><p style='color:#777;background:#fff'>pale</p><p style='color:#595959;background:#fff'>firm</p><p style='color:#666;background:#fff'>grey</p><img src='data:,'></main>");
  await page.evaluate(axe);
  const ids = (await run(page, { type: "tag", values: tags })).violations.map(({ id }) => id);
  for (const id of ["color-contrast", "color-contrast-enhanced", "image-alt"]) assert.ok(ids.includes(id), id);
  // Ratios of these greys on white as the definition of WCAG 2.2 gives them; axe leaves what misses 4.5 to its other rule.
  assert.deepEqual((await page.evaluate(contrasts)).map(({ words, ratio }) => [words, ratio.toFixed(2)]), [["pale", "4.48"], ["grey", "5.74"], ["firm", "7.00"], ["Leg", "21.00"]]);
  await close();
});
