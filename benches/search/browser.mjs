// Start-up and keystroke to result in headless Chromium, its processor slowed four times, pages opened from the disk.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL, fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { page as boxPage } from "./page.mjs";

const SLOWER = 4;
const script = readFileSync(fileURLToPath(new URL("../../themes/paper/assets/search.js", import.meta.url)), "utf8");
const sorted = (list) => [...list].sort((a, b) => a - b);
const middle = (list) => sorted(list)[Math.floor(list.length / 2)];

/** A fresh page at a quarter of its speed. */
async function slow(browser) {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true });
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: SLOWER });
  // Processor time of the page's thread alone: what it does not lose to whatever else runs on this computer.
  await session.send("Performance.enable", { timeDomain: "threadTicks" });
  const busy = async () => 1000 * (await session.send("Performance.getMetrics")).metrics.find(({ name }) => name === "TaskDuration").value;
  return { page, busy, close: () => context.close() };
}

/** Measures one library on the documents of a folder. Times are milliseconds; `keys` (until painted) and `work`
 *  (processor time) are sorted. */
export async function inBrowser(folder, library, asked) {
  const browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
  });
  try {
    const starts = [], parts = [];
    for (let run = 0; run < 7; run += 1) {
      const { page, close } = await slow(browser);
      await page.addScriptTag({ content: library.page ? library.page.library : script });
      // The text is there already, so that fetching it is not counted; reading and running it is.
      const took = await page.evaluate(([texts, load]) => {
        const times = texts.map((text) => {
          const begun = performance.now();
          if (load) window.loaded = (0, eval)(load)(text);
          else { (0, eval)(text); window.loaded = window.seamwiseSearch.open(window.seamwiseIndex); }
          return performance.now() - begun;
        });
        return times;
      }, [library.files, library.page?.load]);
      starts.push(took[0]);
      if (took.length > 1) parts.push(middle(took.slice(1)));
      await close();
    }
    return { startUp: middle(starts), parts: parts.length ? middle(parts) : 0, ...await keystrokes(browser, folder, library, asked) };
  } finally {
    await browser.close();
  }
}

/** Types words, pairs and slips letter by letter, and times each key until its result has been painted. */
async function keystrokes(browser, folder, library, asked) {
  const { page, busy, close } = await slow(browser);
  const name = library.page ? "plain.html" : "index.html";
  if (library.page) plainPage(folder, library); else boxPage(folder, name, ["beef", "chicken", "lamb", "pork", "salmon"], ["piece", "guide", "step"]);
  await page.goto(pathToFileURL(join(folder, name)).href);
  await page.evaluate(() => {
    const field = document.querySelector("input");
    const status = document.querySelector("[role=status]");
    window.times = [];
    field.addEventListener("keydown", () => {
      const begun = performance.now();
      const look = () => requestAnimationFrame(() => setTimeout(() => {
        if (status.textContent.startsWith("Reading")) look(); else window.times.push(performance.now() - begun);
      }));
      look();
    }, true);
  });
  await page.focus("input");
  await page.waitForTimeout(300);
  const typed = ["whole word", "two words", "swap", "deletion"].flatMap((kind) => asked[kind].slice(0, 4).map(({ query }) => query));
  const work = [];
  for (const query of typed) {
    await page.fill("input", "");
    for (const key of query) {
      const before = await page.evaluate(() => window.times.length);
      const begun = await busy();
      await page.keyboard.press(key);
      await page.waitForFunction((count) => window.times.length > count, before);
      work.push(await busy() - begun);
    }
  }
  const times = await page.evaluate(() => window.times);
  await close();
  return { keys: sorted(times), work: sorted(work) };
}

/** The least page around a library: a box, and ten links below it at every key. */
function plainPage(folder, library) {
  writeFileSync(join(folder, "library.js"), library.page.library);
  writeFileSync(join(folder, "plain-index.js"), `window.indexText=${JSON.stringify(library.files[0])};`);
  writeFileSync(join(folder, "plain.html"), `<!doctype html><meta charset="utf-8"><title>Plain</title><input type="search"><p role="status"></p><ol></ol>
<script src="library.js"></script><script src="plain-index.js"></script><script>
const loaded = (${library.page.load})(window.indexText), ask = ${library.page.ask};
document.querySelector("input").addEventListener("input", (event) => {
  const list = document.querySelector("ol");
  list.textContent = "";
  for (const item of ask(loaded, event.target.value)) {
    const link = document.createElement("a");
    link.href = item.url;
    link.textContent = item.title + " " + item.context;
    list.appendChild(document.createElement("li")).appendChild(link);
  }
  document.querySelector("[role=status]").textContent = list.children.length + " found";
});
</script>`);
}
