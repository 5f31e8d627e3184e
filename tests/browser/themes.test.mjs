// The second built-in theme: the demo published with it, three kinds of pages under the accessibility rules of the first, in
// the light and in the dark, in forced colours, narrow, and on paper.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { appendFileSync, cpSync, existsSync, mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { fileURLToPath, pathToFileURL } from "node:url";
import { launch, open } from "./demo.mjs";
import { contrasts } from "./measures.mjs";

const root = fileURLToPath(new URL("../../", import.meta.url));
const axe = readFileSync(new URL("node_modules/axe-core/axe.min.js", import.meta.url), "utf8");
const tags = ["wcag2a", "wcag2aa", "wcag2aaa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
/** WCAG 2.2, success criterion 1.4.6. */
const LEAST_CONTRAST = 7;
/** One page of each kind that is read at the bench. */
const kinds = ["index.html", "guides/pork/loin-boneless.html", "bench/pork/loin-boneless.html", "tables/guides/pork/loin-boneless.html"];

let browser;
let scratch;
let site;
before(async () => {
  scratch = mkdtempSync(join(tmpdir(), "seamwise-theme-"));
  const book = join(scratch, "book");
  cpSync(join(root, "procedures"), book, { recursive: true });
  appendFileSync(join(book, "guidebook.yaml"), "\ntheme: steel\n");
  const target = process.env.CARGO_TARGET_DIR ?? join(root, "target");
  const built = ["release", "debug"].map((kind) => join(target, kind, "seamwise")).filter((file) => existsSync(file));
  assert.ok(built.length > 0, "build the program first: cargo build --release");
  const [program] = built.sort((one, other) => statSync(other).mtimeMs - statSync(one).mtimeMs);
  execFileSync(program, ["publish", "--to", join(scratch, "site"), book], { stdio: ["ignore", "ignore", "inherit"] });
  site = pathToFileURL(join(scratch, "site/")).href;
  browser = await launch();
});
after(async () => {
  await browser?.close();
  rmSync(scratch, { recursive: true, force: true });
});

for (const kind of kinds) {
  test(`${kind} can be read in steel`, async () => {
    const { page, close } = await open(browser);
    await page.goto(site + kind);
    await page.evaluate(() => document.querySelectorAll("details").forEach((details) => { details.open = true; }));
    await page.evaluate(axe);
    const { violations } = await page.evaluate((values) => globalThis.axe.run({ runOnly: { type: "tag", values } }), tags);
    assert.deepEqual(violations.map(({ id, nodes }) => `${id}: ${nodes[0].target}`), []);
    for (const media of [{ colorScheme: "light" }, { colorScheme: "dark" }, { colorScheme: "dark", forcedColors: "active" }]) {
      await page.emulateMedia(media);
      const all = await page.evaluate(contrasts);
      assert.deepEqual(all.filter(({ ratio }) => ratio < LEAST_CONTRAST).slice(0, 5), [], JSON.stringify(media));
      assert.ok(all.length > 5, "texts to look at");
    }
    await page.emulateMedia({ colorScheme: "light", forcedColors: "none" });
    const ground = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
    assert.equal(await ground(), "rgb(11, 17, 22)", "dark at any hour");
    await page.emulateMedia({ media: "print" });
    assert.equal(await ground(), "rgb(255, 255, 255)", "paper is white");
    await page.emulateMedia({ media: "screen" });
    for (const width of [320, 360, 1280]) {
      await page.setViewportSize({ width, height: 740 });
      assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), `${width} px wide without scrolling sideways`);
    }
    await close();
  });
}
