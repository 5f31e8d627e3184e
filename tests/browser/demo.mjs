// What all browser tests share: the published demo, a small server for it, Chromium, and the list of pages.
// Everything happens on this computer: the server listens on 127.0.0.1 only, and Chromium is told to stay silent.
import { createServer } from "node:http";
import { readFile, readdir, stat } from "node:fs/promises";
import { extname, join, normalize, relative } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { chromium } from "playwright-core";

/** The folder of the published demo, or another site to look at. */
export const site = process.env.SITE ?? fileURLToPath(new URL("../../site/", import.meta.url));

const types = {
  ".html": "text/html; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".css": "text/css; charset=utf-8",
  ".svg": "image/svg+xml", ".json": "application/json", ".jsonld": "application/ld+json", ".txt": "text/plain; charset=utf-8",
  ".csv": "text/csv; charset=utf-8", ".png": "image/png", ".jpg": "image/jpeg",
  ".webp": "image/webp", ".webmanifest": "application/manifest+json", ".xml": "application/xml",
};

/** Serves the demo, or another folder; gives back its address, what was asked for, and a way to stop. */
export async function serve({ folder = site, port = 0, before = async () => {} } = {}) {
  const asked = [];
  const server = createServer(async (request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url, "http://127.0.0.1").pathname));
    asked.push(path);
    try {
      await before(path, request);
      const bytes = await readFile(join(folder, path.endsWith("/") ? `${path}index.html` : path));
      response.writeHead(200, { "content-type": types[extname(path)] ?? "text/html; charset=utf-8" }).end(bytes);
    } catch {
      response.writeHead(404, { "content-type": "text/plain" }).end("not here");
    }
  });
  await new Promise((ready) => server.listen(port, "127.0.0.1", ready));
  const stop = () => new Promise((done) => { server.close(done); server.closeAllConnections(); });
  return { address: `http://127.0.0.1:${server.address().port}/`, asked, stop };
}

/** The address of the demo as a folder on the disk. */
export const folder = pathToFileURL(site.endsWith("/") ? site : `${site}/`).href;

/** Every file of the site, as a path inside it, sorted. */
export async function files() {
  const found = [];
  for (const entry of await readdir(site, { recursive: true, withFileTypes: true })) {
    if (entry.isFile()) found.push(relative(site, join(entry.parentPath, entry.name)));
  }
  return found.sort();
}

/** Every HTML page, as a path inside the site, sorted. */
export async function pages() {
  return (await files()).filter((file) => file.endsWith(".html"));
}

/** Pages of one kind, by the folder that they lie in. */
export async function guides() {
  return (await pages()).filter((page) => page.startsWith("guides/"));
}

/**
 * All pages by what kind they are: the name of their folder, without that of a species, so that a new folder is a new
 * kind. `guides/lamb/leg.html` is one of `guides`, `tables/index.html` one of `tables`, the home page one of `home`.
 */
export async function kinds() {
  const all = await pages();
  const species = new Set(all.filter((page) => page.startsWith("species/")).map((page) => page.slice("species/".length, -".html".length)));
  const found = new Map();
  for (const page of all) {
    const folders = page.split("/").slice(0, -1).filter((folder, at) => at === 0 || !species.has(folder));
    const kind = folders.join("/") || "home";
    found.set(kind, [...(found.get(kind) ?? []), page]);
  }
  return found;
}

/** Of every kind of page the longest, which has most of what a page of that kind can have. */
export async function onePerKind() {
  const chosen = new Map();
  for (const [kind, paths] of await kinds()) {
    const sizes = await Promise.all(paths.map(async (path) => (await stat(join(site, path))).size));
    chosen.set(kind, paths[sizes.indexOf(Math.max(...sizes))]);
  }
  return chosen;
}

/** Pages that have a script, which may show less of them than there is. */
export async function scripted() {
  const texts = await Promise.all((await pages()).map(async (path) => [path, await readFile(join(site, path), "utf8")]));
  return texts.filter(([, text]) => text.includes("<script")).map(([path]) => path);
}

/**
 * Visits pages, several at once, each in a tab of its own; what the browser told of any is in the list that comes back.
 * All pages are visited though some fail, and then all that failed is told.
 */
export async function everyPage(browser, options, paths, visit, atOnce = 3) {
  const waiting = [...paths];
  const wrong = [];
  const failed = [];
  await Promise.all(Array.from({ length: atOnce }, async () => {
    const tab = await open(browser, options);
    for (let path = waiting.shift(); path !== undefined; path = waiting.shift()) {
      await visit(tab.page, path).catch((error) => failed.push(error));
      wrong.push(...tab.wrong.splice(0).map((what) => `${path}: ${what}`));
    }
    await tab.close();
  }));
  if (failed.length > 1) throw new Error(`${failed.length} pages:\n${failed.slice(0, 12).map(({ message }) => message).join("\n\n")}`, { cause: failed[0] });
  if (failed.length === 1) throw failed[0];
  return wrong;
}

const chromiumHere = {
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync"],
};

export function launch() {
  return chromium.launch(chromiumHere);
}

/** A browser that keeps what it knows in a folder, as one at home does; its pages share one context. */
export function launchIn(folder) {
  return chromium.launchPersistentContext(folder, { ...chromiumHere, viewport: { width: 360, height: 740 } });
}

/**
 * A page that keeps what went wrong on it: errors, refused loads, requests to elsewhere. A page that is `still` gets none
 * of its scripts, so that all that they hide is shown, and yet can be asked by scripts of a test.
 */
export async function open(browser, { width = 360, height = 740, script = true, still = false, scheme = "light" } = {}) {
  const context = await browser.newContext({ viewport: { width, height }, javaScriptEnabled: script, colorScheme: scheme, hasTouch: true });
  if (still) {
    await context.route(/\.js$/, (route) => route.fulfill({ contentType: "text/javascript", body: "" }));
    // What lies below the screen is laid out at once here, for a test looks at all of it.
    await context.addInitScript(() => {
      const sheet = Object.assign(new CSSStyleSheet(), { kept: true });
      sheet.replaceSync("* { content-visibility: visible !important }");
      document.adoptedStyleSheets = [sheet];
    });
  }
  const page = await context.newPage();
  const wrong = [];
  page.on("console", (message) => { if (["error", "warning"].includes(message.type())) wrong.push(`${message.text()} ${message.location().url}`); });
  page.on("pageerror", (error) => wrong.push(String(error)));
  // What was still on its way when the page was left is no fault.
  page.on("requestfailed", (request) => { if (request.failure()?.errorText !== "net::ERR_ABORTED") wrong.push(`not loaded: ${request.url()}`); });
  page.on("response", (response) => { if (response.status() >= 400) wrong.push(`${response.status()}: ${response.url()}`); });
  page.on("request", (request) => {
    const { protocol, hostname } = new URL(request.url());
    if (!["file:", "data:", "blob:"].includes(protocol) && hostname !== "127.0.0.1") wrong.push(`asks elsewhere: ${request.url()}`);
  });
  return { page, wrong, close: () => context.close() };
}
