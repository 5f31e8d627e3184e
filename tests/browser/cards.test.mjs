// Wall cards are printed to PDF and read back sheet by sheet; the code is read from the printed picture by a library of
// its own; a guide says whether a scanned card is current.
import assert from "node:assert/strict";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { pathToFileURL } from "node:url";
import jsQR from "jsqr";
import puppeteer from "puppeteer-core";
import { folder, guides, launch, open, pages, serve } from "./demo.mjs";
import { madeSite } from "./made.mjs";
import { coloured, flat, grey, runs, texts } from "./sheets.mjs";

const FORMATS = ["A4", "Letter"];
// The most sheets that a card takes at 14 points.
const MOST = 2;
const ADDRESS = "https://guides.example/cuts";

let browser, server, scratch, made;
before(async () => {
  browser = await launch();
  server = await serve();
  scratch = mkdtempSync(join(tmpdir(), "seamwise-cards-"));
  // A guidebook with an address, a guide that is a draft, and one that is withdrawn. The name is reserved (RFC 2606).
  made = pathToFileURL(`${madeSite(scratch, {
    "guidebook.yaml": [["\nregion: uk", `\nregion: uk\nsite: ${ADDRESS}`]],
    "chicken/eight-pieces.yaml": [["revision:\n", "revision:\n  state: draft\n"]],
    "salmon/sides.yaml": [["revision:\n", "revision:\n  state: withdrawn\n"]],
  })}/`).href;
});
after(async () => { await browser.close(); server.stop(); rmSync(scratch, { recursive: true }); });

const cards = async () => (await pages()).filter((path) => path.startsWith("cards/"));
const idOf = (path) => path.replace(/^(cards|class|guides)\//, "").replace(/\.html$/, "");
const times = (text, part) => text.split(part).length - 1;

/** Prints the open page; gives back the file. */
async function printed(page, format) {
  const file = join(scratch, `${format}.pdf`);
  await page.emulateMedia({ media: null });
  await page.pdf({ path: file, format, preferCSSPageSize: false });
  return file;
}

/** What a sheet should hold, from the page itself. */
const content = () => [...document.querySelectorAll(".sheet")].map((sheet) => ({
  strip: sheet.querySelector(".strip b").textContent,
  whole: [...sheet.querySelectorAll(".warn:not(.again)")].map((warn) => warn.textContent),
  again: [...sheet.querySelectorAll(".warn.again")].map((warn) => warn.textContent),
  steps: [...sheet.querySelectorAll(".step")].map((step) => ({
    number: step.querySelector(".count").textContent,
    name: step.querySelector("h2").lastChild.previousSibling?.textContent ?? "",
    heading: step.querySelector("h2").textContent,
    named: [...step.querySelectorAll(".named")].map((named) => named.textContent),
    lines: [...step.querySelectorAll(".do p")].map((line) => line.textContent),
    off: [...step.querySelectorAll(".off li")].map((output) => output.textContent),
  })),
}));

for (const format of FORMATS) {
  test(`on ${format} every sheet of a card carries id, revision, date and number by two means, and no step is split`, async () => {
    const { page, wrong, close } = await open(browser);
    const seen = await cards();
    assert.equal(seen.length, (await guides()).length);
    for (const path of seen) {
      await page.goto(folder + path);
      const sheets = await page.evaluate(content);
      const read = texts(await printed(page, format));
      assert.equal(read.length, sheets.length, `${path}: as many sheets of paper as were laid out`);
      assert.ok(read.length <= MOST, `${path}: ${read.length} sheets`);
      let before = "";
      const numbers = [];
      for (const [at, text] of read.entries()) {
        const where = `${path}, sheet ${at + 1}`;
        const [, revision, date] = /revision (\d+), from (\d+ \w+ \d{4})/.exec(sheets[at].strip);
        for (const part of [idOf(path), `revision ${revision}`, date, `page ${at + 1} of ${read.length}`]) {
          assert.ok(times(text, part) >= 2, `${where}: "${part}" stands there by two means`);
        }
        for (const { heading, named, lines, off } of sheets[at].steps) {
          const begin = text.indexOf(flat(heading).replace(/^\d+\. /, ""));
          assert.ok(begin > 0, `${where}: the name "${heading}"`);
          let last = begin;
          for (const part of [...named, ...lines, ...off]) {
            const found = text.indexOf(flat(part), begin);
            assert.ok(found >= last, `${where}: "${part}" stands there, behind what comes before it`);
            last = found;
          }
        }
        // Each caution stands before the first act of its sheet, and is whole there or on an earlier one.
        const firstAct = Math.min(...sheets[at].steps.map(({ heading, lines }) => text.indexOf(flat(lines[0] ?? heading).replace(/^\d+\. /, ""))), text.length);
        for (const warn of [...sheets[at].whole, ...sheets[at].again]) {
          const found = text.indexOf(flat(warn));
          assert.ok(found >= 0 && found < firstAct, `${where}: "${warn}" stands before the first act`);
        }
        for (const name of sheets[at].again.map((warn) => /[A-Z]+ (.*?)\./.exec(flat(warn))[1])) {
          assert.ok(before.includes(`${name}.`), `${where}: "${name}" is whole on an earlier sheet`);
        }
        before += text;
        numbers.push(...sheets[at].steps.map(({ number }) => Number(number)));
      }
      assert.deepEqual(numbers, numbers.map((_, at) => at + 1), `${path}: every step once, in order`);
    }
    assert.deepEqual(wrong, []);
    await close();
  });

  test(`on ${format} no letter of a card is under 14 points, and no sheet runs over`, async () => {
    const { page, close } = await open(browser, { width: 760, height: 1100 });
    for (const path of await cards()) {
      await page.goto(folder + path);
      const found = runs(await printed(page, format));
      assert.ok(found.length > 60, `${path}: ${found.length} runs of text`);
      const small = found.filter(({ size, words }) => size < 14 && words);
      assert.deepEqual(small, [], `${path}: too small`);
      await page.emulateMedia({ media: "print" });
      const over = await page.locator(".sheet").evaluateAll((sheets) => sheets.map((sheet) => {
        const lowest = Math.max(...[...sheet.querySelectorAll("p, li, h2")].flatMap((part) => [...part.getClientRects()].map((box) => box.bottom)));
        return Math.round(lowest - sheet.getBoundingClientRect().bottom);
      }));
      assert.ok(over.every((pixels) => pixels <= 0), `${path}: pixels below the end of a sheet: ${over}`);
    }
    await close();
  });
}

test("the printed code opens the guide with the revision of the card, and its modules are large enough", async () => {
  const { page, close } = await open(browser);
  const dots = 300;
  for (const path of await cards()) {
    await page.goto(made + path);
    const revision = await page.locator(".strip b").first().textContent().then((strip) => /revision (\d+)/.exec(strip)[1]);
    for (const format of FORMATS) {
      const sheet = grey(await printed(page, format), 1, dots);
      const [left, bottom] = [Math.round(sheet.width * 0.7), Math.round(sheet.height * 0.25)];
      const found = jsQR(...Object.values(coloured(sheet, { left, top: 0, right: sheet.width, bottom })), { inversionAttempts: "dontInvert" });
      assert.ok(found, `${path}, ${format}: the code can be read`);
      assert.equal(found.data, `${ADDRESS}/guides/${idOf(path)}.html#card-${revision}`);
      const { topLeftCorner: one, topRightCorner: other } = found.location;
      const millimetres = Math.hypot(other.x - one.x, other.y - one.y) / dots * 25.4;
      const module = millimetres / (17 + 4 * found.version);
      assert.ok(module >= 0.5, `${path}, ${format}: a module of ${module.toFixed(2)} mm`);
      const whole = module * (17 + 4 * found.version + 8);
      assert.ok(whole > 25 && whole < 32, `${path}, ${format}: ${whole.toFixed(1)} mm wide with its free edge`);
      // The free edge: four modules on every side hold no ink.
      const edge = Math.floor(3.5 * module / 25.4 * dots);
      const box = (x, y) => sheet.pixels[Math.round(y) * sheet.width + Math.round(x)];
      for (let step = -edge; step <= other.x - one.x + edge; step += 2) {
        for (const away of [edge, edge / 2]) assert.ok(box(left + one.x + step, one.y - away) > 250, `${path}: ink above the code`);
      }
    }
  }
  await close();
});

// Firefox 153 prints no boxes in the margin: there the strip of the sheet is what remains.
test("in Firefox too every sheet of a card is one sheet of paper with its strip", async () => {
  const firefox = await puppeteer.launch({ browser: "firefox", executablePath: process.env.FIREFOX ?? "/usr/bin/firefox-esr", headless: true });
  const page = await firefox.newPage();
  for (const path of await cards()) {
    await page.goto(folder + path);
    const strips = await page.evaluate(() => [...document.querySelectorAll(".strip")].map((strip) => strip.textContent));
    const file = join(scratch, "firefox.pdf");
    // US Letter is the lower of the two.
    await page.pdf({ path: file, width: "8.5in", height: "11in", margin: { top: "6mm", left: "8mm", right: "8mm", bottom: "10mm" } });
    const read = texts(file);
    assert.equal(read.length, strips.length, path);
    for (const [at, strip] of strips.entries()) assert.ok(read[at].includes(flat(strip)), `${path}, sheet ${at + 1}: "${strip}"`);
  }
  await firefox.close();
});

test("without an address the card says which revision to ask for", async () => {
  const { page, close } = await open(browser);
  for (const path of await cards()) {
    await page.goto(folder + path);
    const revision = /revision (\d+)/.exec(await page.locator(".strip b").first().textContent())[1];
    assert.match(flat(await page.locator(".head").textContent()), new RegExp(`Ask for revision ${revision} or later`));
    assert.equal(await page.locator(".code").count(), 0);
  }
  await close();
});

test("a draft and a withdrawn guide say so large on every sheet of card and class sheet", async () => {
  const { page, close } = await open(browser);
  for (const [id, mark] of [["chicken/eight-pieces", "DRAFT, not for use"], ["salmon/sides", "WITHDRAWN"]]) {
    for (const kind of ["cards", "class"]) {
      await page.goto(`${made}${kind}/${id}.html`);
      const sheets = await page.locator(".sheet").count();
      for (const format of FORMATS) {
        const file = await printed(page, format);
        assert.equal(texts(file).length, sheets, `${kind}/${id}, ${format}`);
        const large = runs(file).filter(({ size, words }) => size >= 24 && words === mark).map(({ sheet }) => sheet);
        assert.deepEqual(large, Array.from({ length: sheets }, (_, at) => at + 1), `${kind}/${id}, ${format}: "${mark}"`);
      }
    }
  }
  await close();
});

const loin = "guides/pork/loin-boneless.html";
const said = (page) => page.locator("main > [role=status]");
const outdated = "This card is out of date since 14 September 2026. Revision 5: The ribs are counted and the number goes on the label. After step 4 everything goes back to the cold.";

for (const [way, base] of [["over http", () => server.address], ["from a folder", () => folder]]) {
  test(`${way} a guide says whether the card that was scanned is current`, async () => {
    for (const [card, text] of [
      [3, outdated], [4, outdated], [5, "Card revision 5 is current."], [6, "The card is newer than this page: load the page again."],
    ]) {
      const { page, wrong, close } = await open(browser);
      await page.goto(`${base()}${loin}#card-${card}`);
      await page.waitForLoadState("load");
      assert.equal(flat(await said(page).innerText()), text, `card ${card}`);
      await page.waitForFunction(() => scrollY === 0);
      await page.waitForTimeout(200);
      const box = await said(page).boundingBox();
      assert.ok(box.y >= 0 && box.y + box.height <= 740, `card ${card}: seen at once, at ${box.y}`);
      assert.deepEqual(wrong, []);
      await close();
    }
    const { page, close } = await open(browser);
    for (const other of ["", "#card-", "#card-0", "#card-x", "#cards-3", "#control"]) {
      await page.goto("about:blank");
      await page.goto(`${base()}${loin}${other}`);
      assert.equal(await said(page).count(), 0, `"${other}" names no card`);
    }
    // Scanned again while the page is open.
    await page.evaluate(() => { location.hash = "#card-2"; });
    await said(page).waitFor();
    await page.evaluate(() => { location.hash = "#card-5"; });
    await page.waitForFunction(() => document.querySelector("main > [role=status]").textContent.includes("is current"));
    await close();
  });
}

test("a card of a draft or of a withdrawn guide is never called current", async () => {
  const { page, close } = await open(browser);
  for (const [id, text] of [["chicken/eight-pieces", /^Revision 3 is a draft of .*, not for use/], ["salmon/sides", /^This guide is withdrawn\. Take the card down\./]]) {
    for (const card of [1, 2, 3]) {
      await page.goto("about:blank");
      await page.goto(`${made}guides/${id}.html#card-${card}`);
      const shown = await said(page).innerText();
      if (card <= Number(await page.locator(".control[id]").getAttribute("id").then((name) => name.slice(5)))) assert.match(shown, text);
      else assert.match(shown, /newer than this page/);
    }
  }
  await close();
});

test("without script a current card leads to the control block, an older one to a guide that names its revision", async () => {
  const { page, close } = await open(browser, { script: false });
  await page.goto(`${folder}${loin}#card-5`);
  const block = await page.locator(".control").boundingBox();
  assert.ok(block.y >= 0 && block.y < 740, `the control block at ${block.y}`);
  await page.goto("about:blank");
  await page.goto(`${folder}${loin}#card-3`);
  assert.equal(await said(page).count(), 0);
  assert.match(flat(await page.locator(".facts").innerText()), /Revision 5 in force, 14 September 2026/);
  await close();
});

test("the button prints, and is there only with script", async () => {
  for (const kind of ["cards", "class"]) {
    const { page, close } = await open(browser);
    await page.addInitScript(() => { window.print = () => { document.documentElement.dataset.printed = "yes"; }; });
    await page.goto(`${folder}${kind}/pork/loin-boneless.html`);
    const box = await page.locator(".print").boundingBox();
    assert.ok(box.height >= 64 && box.width >= 64, `${box.width}×${box.height}`);
    await page.locator(".print").click();
    assert.equal(await page.evaluate(() => document.documentElement.dataset.printed), "yes");
    await close();
    const silent = await open(browser, { script: false });
    await silent.page.goto(`${folder}${kind}/pork/loin-boneless.html`);
    assert.equal(await silent.page.locator(".print").isVisible(), false);
    await silent.close();
  }
});

for (const format of FORMATS) {
  test(`on ${format} the class sheet holds the table to weigh into, protection, limits and questions, and no answer`, async () => {
    const { page, wrong, close } = await open(browser);
    for (const path of (await pages()).filter((path) => path.startsWith("guides/"))) {
      const id = idOf(path);
      await page.goto(folder + path);
      const answers = (await page.locator(".ask > :not(summary)").allTextContents()).map(flat);
      const questions = (await page.locator(".ask > summary").allTextContents()).map(flat);
      const table = await page.locator("table.figures tbody tr:has(td)").evaluateAll((rows) => rows.map((row) =>
        [...row.querySelectorAll("td")].slice(3, 6).map((cell) => cell.textContent).join(" ")));
      const guide = texts(await printed(page, format)).join(" ");
      await page.goto(`${folder}class/${id}.html`);
      const sheets = await page.locator(".sheet").count();
      const read = texts(await printed(page, format));
      assert.equal(read.length, sheets, `${id}: as many sheets of paper as were laid out`);
      const strip = /revision (\d+), from (\d+ \w+ \d{4})/.exec(await page.locator(".strip b").first().textContent());
      for (const [at, text] of read.entries()) {
        for (const part of [id, `revision ${strip[1]}`, strip[2], `page ${at + 1} of ${sheets}`]) {
          assert.ok(times(text, part) >= 2, `${id}, sheet ${at + 1}: "${part}" by two means`);
        }
      }
      const all = read.join(" ");
      for (const part of ["Name", "Group", "Date", "Wear", "30 min out of the cold at most", "Tools", "Start weight", "Weighed kg", "Lost: start weight less A", "What can hurt", "WARNING", "Local codes"]) {
        assert.ok(all.includes(part), `${id}: "${part}"`);
      }
      for (const row of table) assert.ok(all.includes(row), `${id}: low, typical and high ${row}`);
      for (const question of questions) assert.ok(all.includes(question), `${id}: asks "${question}"`);
      for (const answer of answers) {
        const part = answer.slice(0, 60);
        assert.ok(!all.includes(part), `${id}: the class sheet holds an answer: ${part}`);
        assert.ok(!guide.includes(part), `${id}: the printed guide holds an answer: ${part}`);
      }
      assert.ok(questions.length > 0 && answers.length === questions.length, `${id}: ${answers.length} answers`);
      // The columns to write into are empty, row for row.
      const filled = await page.locator("tbody .fill").allTextContents();
      assert.ok(filled.length > 12 && filled.filter((text) => text.trim()).join() === "100", `${id}: ${filled}`);
    }
    assert.deepEqual(wrong, []);
    await close();
  });
}
