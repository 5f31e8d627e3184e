// What measures.mjs measures, on a page made for it: each fault alone is found, and its sound neighbour is not.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { launch, open } from "./demo.mjs";
import { cautions, restyle, targets, texts, wide } from "./measures.mjs";

let browser, tab;
before(async () => { browser = await launch(); tab = await open(browser, { width: 320 }); });
after(async () => { await tab.close(); await browser.close(); });

const shown = async (body) => {
  await tab.page.setContent(`<!doctype html><html lang=en><title>Leg</title><body style="margin:0;font:16px/1.5 monospace">${body}`);
  return tab.page;
};

test("a text that is cut off is lost; one that can be moved into sight, or is for ears alone, is not", async () => {
  const long = "Follow_the_seam_between_topside_and_silverside";
  const box = (style) => `<div style="width:200px;${style}">${long}</div>`;
  for (const [style, lost] of [["overflow:hidden", 1], ["overflow:clip", 1], ["overflow:auto", 0], ["overflow:hidden;overflow-wrap:anywhere", 0],
    ["overflow:hidden;overflow-wrap:anywhere;height:1em", 1], ["overflow:hidden;text-overflow:ellipsis;white-space:nowrap", 1],
    ["width:1px;height:1px;overflow:hidden;clip-path:inset(50%);position:absolute", 0], ["display:none", 0], ["margin-left:-60px;overflow-wrap:anywhere", 1]]) {
    const page = await shown(box(style));
    assert.equal((await page.evaluate(texts)).lost.length > 0, lost === 1, style);
  }
});

test("spaces that hang out of a box are no loss", async () => {
  const page = await shown(`<pre style="white-space:pre-wrap;width:200px;overflow:hidden">weight: 6.5 kg          ${" ".repeat(30)}\n# kept</pre>`);
  assert.deepEqual((await page.evaluate(texts)).lost, []);
});

test("a text that lies over another covers it; lines and neighbours do not", async () => {
  const page = await shown("<p style='margin:0'>Open the seam</p><p style='margin:-20px 0 0'>Lift the muscle</p>");
  assert.equal((await page.evaluate(texts)).covered.length, 1);
  await shown("<p style='margin:0;line-height:1'>Open the seam with the fingers, <b>and lift</b> the muscle off</p><p style='margin:0'>Lift</p>");
  assert.deepEqual((await page.evaluate(texts)).covered, []);
});

test("a fixed height loses text when the spacing is widened, and letters in pixels do not grow", async () => {
  const page = await shown("<p style='height:24px;width:300px;overflow:hidden;margin:0'>Open the seam with fingers</p><p style='font-size:1rem'>Lift</p>");
  assert.deepEqual((await page.evaluate(texts)).lost, []);
  await page.evaluate(restyle, "* { letter-spacing: 0.12em !important; word-spacing: 0.16em !important }");
  assert.ok((await page.evaluate(texts)).lost.length > 0);
  const before = (await page.evaluate(texts)).all;
  await page.evaluate(restyle, "html { font-size: 200% !important }");
  assert.deepEqual((await page.evaluate(texts)).all.map(({ size }, at) => size / before[at].size), [1, 2]);
});

test("targets have their sizes, and those in a sentence are told apart", async () => {
  const page = await shown("<p>Take the <a href=x>leg</a>.</p><p><a href=x>Loin</a></p><nav><a href=x style='display:block;width:96px;height:40px'>Back</a></nav><button style='width:64px;height:64px'>Done</button>");
  const told = (await page.evaluate(targets)).map(({ words, width, height, inline, tool }) => inline ? [words, "inline"] : [words, Math.round(width), Math.round(height), tool]);
  assert.deepEqual(told.filter(([words]) => words !== "Loin"), [["leg", "inline"], ["Back", 96, 40, false], ["Done", 64, 64, true]]);
  assert.ok(told.find(([words]) => words === "Loin")[2] < 24, "a link that stands alone is no part of a sentence");
});

test("a page that is too wide is found out", async () => {
  const page = await shown("<div style='width:400px'>Leg</div>");
  assert.equal(await page.evaluate(wide), 400);
});

test("a caution behind its act, or without its parts, is found out", async () => {
  const caution = (words) => `<div class="caution warning"><b>WARNING</b><ul><li><p>${words}</p><strong>Wear the glove.</strong></li></ul></div>`;
  const step = (parts) => `<ol><li class="step" id="step-one">${parts}</li></ol>`;
  const act = '<div class="do"><p>Cut.</p></div>';
  const page = await shown(step(caution("The knife slips. A cut tendon stays stiff.") + act));
  assert.deepEqual((await page.evaluate(cautions)).map(({ before, above, signal, items }) => [before, above, signal, items]), [[true, true, "WARNING", [{ sentences: 2, avoid: 15 }]]]);
  await shown(step(act + caution("The knife slips.")));
  assert.deepEqual((await page.evaluate(cautions)).map(({ before, above, items }) => [before, above, items[0].sentences]), [[false, false, 1]]);
});
