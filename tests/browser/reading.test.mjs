// Every page of the demo is read as an apprentice does: on a phone and on wider screens, over http and from a folder, with
// script and without; with larger letters and wider spacing; by step, the caution first.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { everyPage, files, folder, guides, launch, pages, scripted, serve, site } from "./demo.mjs";
import { addresses, deadEnds } from "./links.mjs";
import { cautions, content, restyle, targets, texts, wide } from "./measures.mjs";

let browser, server;
before(async () => { browser = await launch(); server = await serve(); });
after(async () => { await browser.close(); server.stop(); });

const widths = [320, 360, 412, 1280];

/** Controls that are no part of a sentence and smaller than a glove hits. */
const tooSmall = (all, least) => all.filter(({ inline, width, height }) => !inline && (width < least || height < least))
  .map(({ words, width, height }) => `${words} ${Math.round(width)}×${Math.round(height)}`);

for (const [way, base] of [["over http", () => server.address], ["from a folder", () => folder]]) {
  for (const script of [true, false]) {
    test(`every page opens ${way}, script ${script ? "on" : "off"}: all links lead somewhere, nothing scrolls sideways, every control is at least 44 px`, async () => {
      const found = new Map();
      const wrong = await everyPage(browser, { script, width: widths[0] }, await pages(), async (page, path) => {
        await page.goto(base() + path);
        const { headings, words, broken } = await page.evaluate(content);
        assert.equal(headings, 1, `${path}: one h1`);
        assert.ok(words > 80, `${path}: its text can be read`);
        assert.deepEqual(broken, [], `${path}: pictures that do not show`);
        found.set(path, await page.evaluate(addresses));
        // The next page begins with the width at which this one ends.
        const inTurn = page.viewportSize().width === widths[0] ? widths : widths.toReversed();
        for (const width of inTurn) {
          if (page.viewportSize().width !== width) await page.setViewportSize({ width, height: 740 });
          const scroll = await page.evaluate(wide);
          assert.ok(scroll <= width, `${path}: ${scroll} px wide at ${width}`);
          assert.deepEqual(tooSmall(await page.evaluate(targets), 44), [], `${path} at ${width}: too small to hit with a glove`);
        }
      });
      assert.deepEqual(wrong, []);
      assert.deepEqual(deadEnds(found, base(), await files()), []);
    });
  }
}

// WCAG 2.2 (W3C, 2023): 1.4.12 gives the four spacings, 1.4.4 the 200 %, 1.4.10 the width of 320 px.
const spaced = "* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }";
const doubled = "html { font-size: 200% !important }";

for (const [state, options, chosen] of [["as they open", {}, pages], ["with all that scripts hide", { still: true }, scripted]]) {
  test(`pages ${state}, at 320 px, with wide spacing and with letters of 200 %: no text is cut off, covered or left out`, async () => {
    await everyPage(browser, { width: 320, ...options }, await chosen(), async (page, path) => {
      await page.goto(folder + path);
      await page.evaluate(() => document.querySelectorAll("details").forEach((details) => { details.open = true; }));
      const plain = (await page.evaluate(texts)).all;
      for (const css of ["", spaced, doubled]) {
        await page.evaluate(restyle, css);
        const { all, lost, covered } = await page.evaluate(texts);
        const how = `${path} with ${css.slice(0, 30) || "no change"}`;
        assert.deepEqual([lost.slice(0, 5), covered.slice(0, 5)], [[], []], `${how}: ${lost.length} cut off, ${covered.length} covered`);
        assert.equal(all.map(({ words }) => words).join("\n"), plain.map(({ words }) => words).join("\n"), `${how}: all its words are there`);
        assert.ok((await page.evaluate(wide)) <= 320, `${how}: nothing scrolls sideways`);
        // Letters of a drawing grow with the drawing; all others must do as the reader asks.
        if (css === doubled) assert.deepEqual(all.filter(({ size, drawn }, at) => !drawn && size < 1.9 * plain[at].size).map(({ words }) => words), [], `${how}: letters that do not grow`);
      }
    });
  });
}

const signals = ["DANGER", "WARNING", "CAUTION", "NOTICE"];

test("in every step the caution stands before the act, in the text and on the screen, with its four parts", async () => {
  const seen = new Map();
  // Pages of every kind that have boxes of cautions, not those of guides alone. Wall cards run them on as text, which
  // cards.test.mjs reads sheet by sheet.
  const texts = await Promise.all((await pages()).map(async (path) => [path, await readFile(join(site, path), "utf8")]));
  const having = texts.filter(([, text]) => /class="?caution\b/.test(text)).map(([path]) => path);
  await everyPage(browser, { script: false }, having, async (page, path) => {
    await page.goto(folder + path);
    const all = await page.evaluate(cautions);
    seen.set(path, all.length);
    for (const { step, before: first, above, signal, items } of all) {
      assert.ok(first && above, `${path}, ${step}: the caution stands before the act`);
      assert.ok(signals.includes(signal), `${path}, ${step}: the signal word "${signal}"`);
      // A notice is about goods, so it need not say what comes of it.
      const least = signal === "NOTICE" ? 1 : 2;
      assert.ok(items.length > 0 && items.every(({ sentences, avoid }) => sentences >= least && avoid > 10), `${path}, ${step}: hazard, what comes of it, how to avoid it`);
    }
  });
  for (const path of await guides()) assert.ok(seen.get(path) > 0, `${path}: cautions in steps`);
});
