// Prints what the pages of a site measure against the bars of the web that apply to them, worst value of each kind of page:
// `node bars.mjs`, with SITE set for another site than the demo. The tests hold the same measures against their bounds.
import { execFileSync } from "node:child_process";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { everyPage, files, folder, kinds, launch, scripted, serve, site } from "./demo.mjs";
import { addresses, deadEnds } from "./links.mjs";
import { complaints, told } from "./markup.mjs";
import { cautions, contrasts, restyle, targets, texts, wide } from "./measures.mjs";

const spaced = "* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }";
const doubled = "html { font-size: 200% !important }";
const side = ({ width, height }) => Math.min(width, height);
/** The least of some values, as text; a dash where there are none. */
const least = (values, digits = 0) => (values.length > 0 ? Math.min(...values).toFixed(digits) : "–");
const most = (values) => (values.length > 0 ? String(Math.max(...values)) : "–");

/** All that is measured on one page. */
async function measured(page, path) {
  await page.emulateMedia({ colorScheme: "light" });
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto(folder + path);
  const found = await page.evaluate(addresses);
  await page.evaluate(() => document.querySelectorAll("details").forEach((details) => { details.open = true; }));
  const all = await page.evaluate(targets);
  const light = (await page.evaluate(contrasts))[0].ratio;
  await page.emulateMedia({ colorScheme: "dark" });
  const dark = (await page.evaluate(contrasts))[0].ratio;
  await page.emulateMedia({ colorScheme: "light" });
  await page.setViewportSize({ width: 320, height: 740 });
  const before = await page.evaluate(texts);
  const loss = [];
  const widths = [await page.evaluate(wide)];
  for (const css of [spaced, doubled]) {
    await page.evaluate(restyle, css);
    const after = await page.evaluate(texts);
    loss.push(after.lost.length + after.covered.length + Math.abs(after.all.length - before.all.length));
    widths.push(await page.evaluate(wide));
  }
  return { path, found, all, light, dark, loss: [before.lost.length + before.covered.length, ...loss], widths };
}

// The program itself: the library of Node packs a little less.
const compressed = (text) => execFileSync("gzip", ["-9", "-n", "-c"], { input: text }).length;

/** Pages whose scripts hide a part are measured again with all of it; the worse of both counts. */
function worse(one, other) {
  const larger = (name) => one[name].map((value, at) => Math.max(value, other[name][at]));
  const smaller = (name) => Math.min(one[name], other[name]);
  return { ...one, all: [...one.all, ...other.all], light: smaller("light"), dark: smaller("dark"), loss: larger("loss"), widths: larger("widths") };
}

/** Bytes of a page compressed as a server does at most: the whole, and up to the end of its first step. */
async function weight(path) {
  const text = await readFile(join(site, path), "utf8");
  const second = [...text.matchAll(/<li class="step"/g)][1]?.index ?? text.length;
  return { whole: compressed(text), first: compressed(text.slice(0, second)) };
}

const browser = await launch();
const server = await serve();
const all = await files();
const pages = all.filter((file) => file.endsWith(".html"));
const results = new Map();
const judging = complaints([...pages.map((path) => server.address + path), ...all.filter((file) => /\.(svg|css)$/.test(file)).map((file) => join(site, file))]);
await everyPage(browser, { width: 360 }, pages, async (page, path) => { results.set(path, await measured(page, path)); });
await everyPage(browser, { width: 360, still: true }, await scripted(), async (page, path) => { results.set(path, worse(results.get(path), await measured(page, path))); });
await everyPage(browser, { width: 360, script: false }, pages, async (page, path) => {
  await page.goto(folder + path);
  results.get(path).steps = await page.evaluate(cautions);
});
const messages = await judging;
await browser.close();
server.stop();

const dead = deadEnds(new Map([...results].map(([path, { found }]) => [path, found])), folder, all);
const rows = [["kind", "pages", "B1 any", "B2 control", "B3 tool", "B5 light", "B5 dark", "B6 320", "B7 loss", "B8 loss", "B9 cautions", "wrong", "B14 whole", "B14 first", "B19 markup", "links"]];
for (const [kind, paths] of await kinds()) {
  const own = paths.map((path) => results.get(path));
  const every = own.flatMap((one) => one.all);
  const steps = own.flatMap((one) => one.steps);
  const weights = await Promise.all(paths.map(weight));
  const wrong = steps.filter(({ before, above, signal, items }) => !before || !above || !signal || items.some(({ sentences, avoid }) => sentences < (signal === "NOTICE" ? 1 : 2) || avoid === 0));
  rows.push([kind, paths.length, least(every.map(side)), least(every.filter(({ inline }) => !inline).map(side)), least(every.filter(({ tool }) => tool).map(side)),
    least(own.map(({ light }) => light), 2), least(own.map(({ dark }) => dark), 2), most(own.map(({ widths }) => widths[0])),
    most(own.map(({ loss }) => loss[1])), most(own.map(({ loss }) => loss[2])), steps.length, wrong.length,
    most(weights.map(({ whole }) => whole)), most(weights.map(({ first }) => first)),
    messages.filter(({ url }) => paths.some((path) => url.endsWith(`/${path}`))).length, dead.filter((text) => paths.some((path) => text.startsWith(`${path}:`))).length].map(String));
}
const breadths = rows[0].map((_, at) => Math.max(...rows.map((row) => row[at].length)));
for (const row of rows) console.log(row.map((cell, at) => (at === 0 ? cell.padEnd(breadths[at]) : cell.padStart(breadths[at]))).join("  "));
const drawings = messages.filter(({ url }) => /\.(svg|css)$/.test(url)).length;
console.log(`\n${pages.length} pages, ${all.length} files; Nu HTML Checker: ${messages.length} messages, ${drawings} of them on drawings; ${dead.length} dead links`);
for (const line of [...messages.map(told), ...dead].slice(0, 20)) console.log(line);
console.log(`
B1 the smallest side of any target, in a sentence too (bar 24, or 24 of room round it); B2 of a control outside of sentences
(44); B3 of a button, field or fold (64, on the bench 96). B5 the least contrast of a text (7). B6 width at 320 px. B7 and B8
texts cut off, covered or gone with wide spacing and at 200 %. B9 cautions in steps, and those behind the act or without one
of their four parts. B14 bytes of the heaviest page, gzip -9: the whole, and up to the end of step 1 (14,600). B19 errors
and warnings of the checker, and links that lead nowhere.`);
