// Guides are printed to PDF and read back, sheet by sheet.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { folder, guides, launch, open } from "./demo.mjs";

let browser, scratch;
before(async () => { browser = await launch(); scratch = mkdtempSync(join(tmpdir(), "seamwise-paper-")); });
after(async () => { await browser.close(); rmSync(scratch, { recursive: true }); });

/** The text of each sheet, in reading order. */
function sheets(file) {
  const text = execFileSync("pdftotext", ["-raw", "-enc", "UTF-8", file, "-"], { encoding: "utf8", maxBuffer: 1 << 26 });
  return text.split("\f").slice(0, -1).map((sheet) => sheet.replace(/\s+/g, " "));
}

const flat = (text) => text.replace(/\s+/g, " ").trim();

for (const format of ["A4", "Letter"]) {
  test(`on ${format} every sheet names the guide, its revision and its number, and no step is split`, async () => {
    const { page, close } = await open(browser);
    for (const path of await guides()) {
      await page.goto(folder + path);
      const steps = await page.locator("li.step").evaluateAll((elements) => elements.map((element) => ({
        name: element.querySelector("h3 span").textContent,
        last: element.querySelector(".do").textContent.trim().split(/[.\n]/).map((part) => part.trim()).filter(Boolean).at(-1),
        avoid: [...element.querySelectorAll(".caution strong")].map((strong) => strong.textContent.trim().slice(0, 40)),
      })));
      const file = join(scratch, `${format}.pdf`);
      await page.pdf({ path: file, format, preferCSSPageSize: false });
      const read = sheets(file);
      assert.ok(read.length > 1, `${path}: prints`);
      const id = path.replace(/^guides\//, "").replace(/\.html$/, "");
      for (const [at, sheet] of read.entries()) {
        assert.ok(sheet.includes(id), `${path}, sheet ${at + 1}: the guide's id`);
        assert.match(sheet, /revision \d+/i, `${path}, sheet ${at + 1}: the revision`);
        assert.ok(sheet.includes(`page ${at + 1} of ${read.length}`), `${path}, sheet ${at + 1}: its number`);
      }
      for (const step of steps) {
        const on = read.findIndex((sheet) => step.avoid.every((text) => flat(sheet).includes(flat(text))) && flat(sheet).includes(flat(step.name)) && flat(sheet).includes(flat(step.last).slice(0, 30)));
        assert.ok(on >= 0, `${path}: "${step.name}" stands on one sheet with its cautions and its last sentence`);
      }
      const answers = await page.locator(".answer").allTextContents();
      for (const answer of answers) assert.ok(!read.some((sheet) => flat(sheet).includes(flat(answer).slice(0, 60))), `${path}: an answer is printed`);
      assert.ok(readFileSync(file).length > 1000);
    }
    await close();
  });
}
