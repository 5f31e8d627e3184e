// How soon pages of the published demo are there: Lighthouse's score of performance on its profile of a phone (a slow
// line, a quarter of the processor), as the median of five runs of each page, with what the score is made of.
// First `npm ci --ignore-scripts`. `node bench.mjs` takes one page of most kinds, `node bench.mjs guides/pork/loin-boneless.html`
// the pages named; SITE is another site to look at, RUNS another number of runs.
import { readFile, readdir } from "node:fs/promises";
import { createServer } from "node:http";
import { extname, join, normalize } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import lighthouse from "lighthouse";
import puppeteer from "puppeteer-core";

const site = process.env.SITE ?? fileURLToPath(new URL("../../site/", import.meta.url));
const runs = Number(process.env.RUNS ?? 5);
// The largest guide and the one in the middle, and what hangs on them.
const USUAL = [
  "index.html", "guides/beef/chuck-boned.html", "guides/pork/loin-boneless.html", "bench/beef/chuck-boned.html", "room/pork/loin-boneless.html",
  "cards/beef/chuck-boned.html", "class/pork/loin-boneless.html", "cold/pork/loin-boneless.html", "source/beef/chuck-boned.html",
  "species/pork.html", "pieces/index.html", "cuts/pork.html", "limits/index.html", "offline/index.html",
];
const types = {
  ".html": "text/html; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".css": "text/css; charset=utf-8", ".svg": "image/svg+xml",
  ".png": "image/png", ".jpg": "image/jpeg", ".webp": "image/webp", ".webmanifest": "application/manifest+json",
};
// What is compressed already gains nothing.
const compressed = new Set([".png", ".jpg", ".webp"]);

/** The site as a usual host gives it out: compressed. */
const server = createServer(async (request, response) => {
  const path = normalize(decodeURIComponent(new URL(request.url, "http://127.0.0.1").pathname));
  try {
    const bytes = await readFile(join(site, path));
    const head = { "content-type": types[extname(path)] ?? "text/plain; charset=utf-8" };
    if (compressed.has(extname(path))) response.writeHead(200, head).end(bytes);
    else response.writeHead(200, { ...head, "content-encoding": "gzip" }).end(gzipSync(bytes, { level: 9 }));
  } catch {
    response.writeHead(404).end();
  }
});
await new Promise((ready) => server.listen(0, "127.0.0.1", ready));

/** One run in a browser of its own: a service worker of the run before would answer for the host. */
async function measured(path) {
  const browser = await puppeteer.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-component-update", "--disable-sync"],
  });
  try {
    const page = await browser.newPage();
    const address = `http://127.0.0.1:${server.address().port}/${path}`;
    const { lhr } = await lighthouse(address, { onlyCategories: ["performance"], logLevel: "error" }, undefined, page);
    if (lhr.runtimeError) throw new Error(`${path}: ${lhr.runtimeError.message}`);
    const value = (id) => lhr.audits[id].numericValue;
    return {
      score: lhr.categories.performance.score,
      first: value("first-contentful-paint"), largest: value("largest-contentful-paint"), blocked: value("total-blocking-time"),
      moved: value("cumulative-layout-shift"), bytes: value("total-byte-weight"),
    };
  } finally {
    await browser.close();
  }
}

const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
const seconds = (milliseconds) => `${(milliseconds / 1000).toFixed(2)} s`;
const there = new Set(await readdir(site, { recursive: true }));
const pages = process.argv.length > 2 ? process.argv.slice(2) : USUAL;
for (const path of pages.filter((path) => !there.has(path))) throw new Error(`the site has no page ${path}`);
console.log(`medians of ${runs} runs: score; first paint, largest paint, time blocked, layout shift; bytes of everything loaded`);
for (const path of pages) {
  const all = [];
  for (let run = 0; run < runs; run += 1) all.push(await measured(path));
  const of = (key) => median(all.map((one) => one[key]));
  const lowest = Math.min(...all.map(({ score }) => score));
  console.log(`${of("score").toFixed(2)} (lowest ${lowest.toFixed(2)})  ${seconds(of("first"))}  ${seconds(of("largest"))}  ${of("blocked").toFixed(0)} ms  ${of("moved").toFixed(3)}  ${(of("bytes") / 1000).toFixed(0)} kB  ${path}`);
}
server.close();
