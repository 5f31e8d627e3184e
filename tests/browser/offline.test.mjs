// The site after one visit, with the server stopped: every page, search, pictures, downloads; from a folder; and what a
// reader is told who has no script. What is kept is held byte for byte against what was published.
import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { folder, launch, launchIn, open, pages, serve, site } from "./demo.mjs";
import { kept, until } from "./editions.mjs";

let browser;
before(async () => { browser = await launch(); });
after(() => browser.close());

/** The paths of all published files. */
async function published() {
  const list = await readFile(join(site, "seamwise-files.txt"), "utf8");
  return list.trim().split("\n").slice(1).map((line) => line.split("  ")[1]);
}

test("after one visit every page, picture and file opens with the server stopped", async () => {
  const server = await serve();
  const { page, wrong, close } = await open(browser);
  await page.goto(server.address);
  // One visit to the home page, and no other page: what is kept is told on the offline page, from what is kept.
  await until(page, async () => (await caches.keys()).some((name) => name.endsWith("state")));
  await server.stop();
  for (const path of await pages()) {
    await page.goto(server.address + path);
    assert.equal(await page.locator("h1").count(), 1, path);
    const broken = await page.evaluate(async () => {
      const images = [...document.querySelectorAll("img")];
      for (const image of images) image.loading = "eager";
      await Promise.all(images.map((image) => image.decode().catch(() => {})));
      return images.filter((image) => image.naturalWidth === 0).map((image) => image.src);
    });
    assert.deepEqual(broken, [], `${path}: pictures that do not show`);
  }
  for (const address of ["", "tables/", "?from=card", "guides/pork/loin-boneless.html?revision=5#step-ribs-sawn"]) {
    await page.goto(server.address + address);
    assert.equal(await page.locator("h1").count(), 1, address);
  }
  await page.goto(server.address);
  await page.locator("#find").fill("rib");
  await page.waitForFunction(() => document.querySelectorAll(".found a").length > 2);
  await page.locator(".found a").first().click();
  await page.waitForURL(/(guides|pieces)\//);
  assert.deepEqual(wrong, []);
  await close();
});

test("every published file is kept, byte for byte, and nothing else", async () => {
  const server = await serve();
  const { page, close } = await open(browser);
  await kept(page, server.address);
  const found = await page.evaluate(async () => {
    const name = (await caches.keys()).find((name) => !name.endsWith("state")), cache = await caches.open(name), all = [];
    for (const request of await cache.keys()) {
      const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", await (await cache.match(request)).arrayBuffer()));
      all.push([decodeURIComponent(new URL(request.url).pathname.slice(1)) + new URL(request.url).search, [...digest].map((byte) => byte.toString(16).padStart(2, "0")).join("")]);
    }
    return Object.fromEntries(all);
  });
  const paths = (await published()).filter((path) => path !== "service-worker.js");
  assert.deepEqual(Object.keys(found).sort(), ["?index", ...paths].sort());
  for (const path of paths) assert.equal(found[path], createHash("sha256").update(await readFile(join(site, path))).digest("hex"), path);
  assert.equal(server.asked.length - new Set(server.asked).size <= 4, true, "only what the page itself had loaded is asked for twice");
  await close();
  await server.stop();
});

test("a table is saved as a file with the server stopped", async () => {
  const server = await serve();
  const { page, wrong, close } = await open(browser);
  await kept(page, server.address);
  await server.stop();
  for (const path of ["tables/guides/pork/loin-boneless", "tables/species/pork"]) {
    await page.goto(`${server.address}${path}.html`);
    for (const [at, ending] of [[0, "csv"], [1, "json"]]) {
      const [download] = await Promise.all([page.waitForEvent("download"), page.locator("a[download]").nth(at).click()]);
      assert.equal(download.suggestedFilename(), `${path.split("/").pop()}.${ending}`);
      assert.deepEqual(await readFile(await download.path()), await readFile(join(site, `${path}.${ending}`)));
    }
  }
  assert.deepEqual(wrong, []);
  await close();
});

test("a page that is not there is told, and leads to what is kept", async () => {
  const server = await serve();
  const { page, close } = await open(browser);
  await kept(page, server.address);
  await page.goto(`${server.address}guides/pork/none.html`);
  assert.equal(await page.locator("body").innerText(), "not here", "with a network the server answers for itself");
  await server.stop();
  await page.goto(`${server.address}guides/pork/none.html`);
  assert.match(await page.locator("#missing").innerText(), /not kept on this device.*guides\/pork\/none\.html/);
  await close();
});

test("from a folder everything is there, and nothing is said on the console", async () => {
  const { page, wrong, close } = await open(browser);
  await page.goto(`${folder}offline/index.html`);
  assert.match(await page.locator("[data-kept]").innerText(), /Opened from a folder: everything is here already/);
  assert.equal(await page.locator("button:visible").count(), 0);
  for (const path of ["index.html", "guides/pork/loin-boneless.html", "tables/index.html"]) await page.goto(folder + path);
  assert.deepEqual(wrong, []);
  await close();
});

test("without script the page says what it needs, and how much there is", async () => {
  const server = await serve();
  const { page, wrong, close } = await open(browser, { script: false });
  await page.goto(`${server.address}offline/index.html`);
  const text = await page.locator("main").innerText();
  assert.match(text, /needs script, which is off here/);
  assert.match(text, /Pork\s+\d+ guides, \d+\.\d.[kM]B/);
  assert.equal(await page.locator("button:visible").count(), 0);
  assert.doesNotMatch(text, /Looking at what is kept/);
  assert.deepEqual(wrong, []);
  await close();
  await server.stop();
});

test("the site can be put on the home screen, under a name and with icons that load", async () => {
  const server = await serve(), profile = await mkdtemp(join(tmpdir(), "seamwise-profile-"));
  const context = await launchIn(profile), page = await context.newPage();
  await page.goto(`${server.address}guides/pork/loin-boneless.html`);
  const session = await context.newCDPSession(page);
  const { errors, url, data, manifest } = await session.send("Page.getAppManifest");
  assert.deepEqual([errors, url], [[], `${server.address}site.webmanifest`]);
  assert.deepEqual([manifest.startUrl, manifest.scope, manifest.display], [`${server.address}index.html`, server.address, "kStandalone"]);
  assert.ok(JSON.parse(data).short_name.length <= 14);
  for (const icon of manifest.icons) assert.equal((await fetch(icon.url)).status, 200, icon.url);
  assert.deepEqual((await session.send("Page.getInstallabilityErrors")).installabilityErrors, []);
  await context.close();
  await rm(profile, { recursive: true });
  await server.stop();
});

test("the icons in pixels are the drawing", async () => {
  const server = await serve();
  const { page, close } = await open(browser);
  await page.goto(server.address);
  const icons = JSON.parse(await readFile(join(site, "site.webmanifest"), "utf8")).icons;
  const drawing = icons.find((icon) => icon.sizes === "any").src;
  for (const icon of icons.filter((icon) => icon.sizes !== "any")) {
    const size = Number(icon.sizes.split("x")[0]);
    const difference = await page.evaluate(async ([drawn, pixels, size]) => {
      const data = [];
      for (const source of [drawn, pixels]) {
        const image = new Image();
        image.src = source;
        await image.decode();
        if (source === pixels && (image.naturalWidth !== size || image.naturalHeight !== size)) return "another size";
        const canvas = new OffscreenCanvas(size, size), paint = canvas.getContext("2d");
        paint.drawImage(image, 0, 0, size, size);
        data.push(paint.getImageData(0, 0, size, size).data);
      }
      return data[0].reduce((sum, value, at) => sum + Math.abs(value - data[1][at]), 0) / data[0].length;
    }, [drawing, icon.src, size]);
    assert.ok(difference < 2, `${icon.src} differs from ${drawing} by ${difference} of 255`);
  }
  await close();
  await server.stop();
});
