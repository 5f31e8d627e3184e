// axe-core over every page, with the 7:1 contrast and target-size rules on, light and dark.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { after, before, test } from "node:test";
import { folder, launch, open, pages } from "./demo.mjs";

const axe = readFileSync(new URL("node_modules/axe-core/axe.min.js", import.meta.url), "utf8");
let browser;
before(async () => { browser = await launch(); });
after(() => browser.close());

for (const scheme of ["light", "dark"]) {
  test(`no page breaks an accessibility rule, ${scheme}`, async () => {
    const { page, close } = await open(browser, { scheme });
    for (const path of await pages()) {
      await page.goto(folder + path);
      await page.evaluate(() => document.querySelectorAll("details").forEach((details) => { details.open = true; }));
      await page.evaluate(axe);
      const { violations } = await page.evaluate(() => globalThis.axe.run({ rules: { "color-contrast-enhanced": { enabled: true }, "target-size": { enabled: true } } }));
      assert.deepEqual(violations.map((v) => `${v.id}: ${v.nodes.slice(0, 3).map((node) => node.target).join(" | ")}`), [], path);
    }
    await close();
  });
}
