// A newer edition beside the one that is read: told with what changed, taken only when the reader says so, whole or not
// at all, and without fetching again what stayed as it was. Each test publishes a guidebook of its own.
import assert from "node:assert/strict";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { launch, launchIn, open, serve } from "./demo.mjs";
import { kept, reviseLoin, until, workshop } from "./editions.mjs";

const LOIN = "guides/pork/loin-boneless.html";
let browser;
before(async () => { browser = await launch(); });
after(() => browser.close());

/** Runs a test on a shop that has published once, and on a page on which that edition is kept. */
async function inShop(test, served = {}) {
  const shop = await workshop();
  await shop.publishFirst();
  const server = await serve({ folder: shop.site, ...served });
  const { page, wrong, close } = await open(browser);
  try {
    await kept(page, server.address);
    await test({ shop, server, page, wrong });
  } finally {
    await close();
    await server.stop();
    await shop.close();
  }
}

const revision = (page) => page.evaluate(() => getComputedStyle(document.documentElement).getPropertyValue("--card").match(/revision (\d+)/)[1]);
const news = (page) => page.locator(".news");
/** Loads the page, and waits until a newer edition is told. */
async function told(page) {
  await page.reload();
  await news(page).waitFor({ timeout: 30000 });
}

test("a newer edition is told with what changed in this guide, and taken when the reader says so", () => inShop(async ({ shop, server, page, wrong }) => {
  await page.goto(server.address + LOIN);
  await reviseLoin(shop, 6, "The saw stops before the board is cleared.");
  await shop.change("lamb/leg-seam-boned.yaml", /number: \d+/.exec(await shop.read("lamb/leg-seam-boned.yaml"))[0], "number: 77");
  await shop.publish();
  await told(page);
  const text = await news(page).innerText();
  for (const part of ["newer edition", "revision 6, in force since 16 November 2026", "The saw stops before the board is cleared.", "Other guides changed too"]) assert.ok(text.includes(part), `${part}: ${text}`);
  for (let again = 0; again < 2; again++) {
    assert.equal(await revision(page), "5", "what is read stays");
    await page.reload();
    await news(page).waitFor();
  }
  for (const button of await news(page).locator("button").all()) {
    const box = await button.boundingBox();
    assert.ok(box.height >= 64 && box.width >= 64, `${await button.innerText()}: ${box.width} by ${box.height}`);
  }
  await news(page).locator("button").last().click();
  assert.equal(await news(page).count(), 0, "put aside on this page");
  await page.goto(server.address + "guides/beef/chuck-boned.html");
  await news(page).waitFor();
  assert.match(await news(page).innerText(), /Changed: .*revision 77; .*revision 6/);
  await page.goto(server.address + LOIN);
  await news(page).locator("button").first().click();
  await page.waitForFunction(() => getComputedStyle(document.documentElement).getPropertyValue("--card").includes("revision 6"));
  await page.reload();
  await page.waitForLoadState();
  assert.equal(await revision(page), "6");
  assert.equal(await news(page).count(), 0);
  await server.stop();
  await page.goto(server.address + "pieces/index.html");
  await page.goto(server.address + LOIN);
  assert.equal(await revision(page), "6", "the newer edition is whole without a network");
  assert.equal((await page.evaluate(() => caches.keys())).length, 2, "the earlier edition is cleared away");
  assert.deepEqual(wrong, []);
}));

test("only what changed is fetched for a newer edition", () => inShop(async ({ shop, server, page }) => {
  await reviseLoin(shop, 6, "Shorter.");
  const before = await shop.list();
  await shop.publish();
  const after = await shop.list();
  const changed = [...after].filter(([path, mark]) => before.get(path) !== mark).map(([path]) => `/${path}`);
  server.asked.length = 0;
  await told(page);
  const asked = new Set(server.asked);
  assert.deepEqual([...asked].sort(), changed.sort(), "what changed, and nothing else");
  assert.ok(changed.length < after.size / 3, `${changed.length} of ${after.size}`);
}));

test("a newer edition that was cut off leaves the earlier one whole, and goes on later where it was", async () => {
  let broken = false, fetched = 0;
  const served = { before: async (path) => { if (broken && path.startsWith("/guides/") && fetched++ > 1) throw new Error("the line is down"); } };
  await inShop(async ({ shop, server, page }) => {
    await page.goto(server.address + LOIN);
    for (const guide of ["pork/loin-boneless", "lamb/leg-seam-boned", "beef/chuck-boned", "salmon/sides", "chicken/eight-pieces"]) {
      await shop.change(`${guide}.yaml`, /number: \d+/.exec(await shop.read(`${guide}.yaml`))[0], "number: 88");
    }
    await shop.publish();
    broken = true;
    await page.reload();
    await until(page, async () => (await caches.keys()).length === 3 && !(await navigator.serviceWorker.getRegistration()).installing);
    assert.ok(fetched > 2, "it was cut off");
    assert.equal(await news(page).count(), 0, "what is not whole is not offered");
    await page.reload();
    assert.equal(await revision(page), "5");
    broken = false;
    server.asked.length = 0;
    await told(page);
    assert.match(await news(page).innerText(), /revision 88/);
    const again = server.asked.filter((path) => path.startsWith("/guides/") && path.endsWith(".html"));
    assert.ok(again.length < 5, `what had come is not fetched again: ${again}`);
    await server.stop();
    await page.goto(server.address + LOIN);
    assert.equal(await revision(page), "5", "the reader has not taken it yet");
  }, served);
});

test("with the server gone in the middle of a newer edition the earlier one is whole", () => inShop(async ({ shop, server, page }) => {
  await reviseLoin(shop, 6, "Shorter.");
  await shop.publish();
  let seen = 0;
  await server.stop();
  const again = await serve({ folder: shop.site, port: Number(new URL(server.address).port), before: async () => { if (seen++ > 4) await again.stop(); } });
  await page.reload();
  await until(page, async () => (await caches.keys()).length === 3 && !(await navigator.serviceWorker.getRegistration()).installing);
  assert.ok(seen > 4, "it was cut off");
  await page.goto(server.address + LOIN);
  assert.equal(await revision(page), "5");
  await page.goto(server.address + "guides/salmon/sides.html");
  assert.equal(await page.locator("h1").count(), 1);
}));

test("a server that sends something else than was published changes nothing", () => inShop(async ({ shop, server, page }) => {
  await reviseLoin(shop, 6, "Shorter.");
  await shop.publish();
  // The worker of one edition with a page of another, as while files are put up one by one.
  await shop.spoil(LOIN);
  await page.reload();
  await until(page, () => document.querySelector("#failed").textContent.includes("not what was published"));
  await until(page, () => document.querySelector("[data-kept]").textContent.startsWith("Everything is kept"));
  assert.match(await page.locator("#failed").innerText(), /guides\/pork\/loin-boneless\.html/);
  await page.goto(server.address + LOIN);
  assert.equal(await revision(page), "5");
}));

test("with all pages closed and the browser started again the reader still has the earlier edition", async () => {
  const shop = await workshop(), profile = await mkdtemp(join(tmpdir(), "seamwise-profile-"));
  await shop.publishFirst();
  const server = await serve({ folder: shop.site });
  let context = await launchIn(profile), page = await context.newPage();
  await kept(page, server.address);
  await reviseLoin(shop, 6, "Shorter.");
  await shop.publish();
  await told(page);
  for (let start = 0; start < 2; start++) {
    await context.close();
    context = await launchIn(profile);
    page = await context.newPage();
    await page.goto(server.address + LOIN);
    await news(page).waitFor();
    assert.equal(await revision(page), "5", `start ${start}`);
  }
  await news(page).locator("button").first().click();
  await page.waitForFunction(() => getComputedStyle(document.documentElement).getPropertyValue("--card").includes("revision 6"));
  await context.close();
  await server.stop();
  await Promise.all([shop.close(), rm(profile, { recursive: true })]);
});

test("a page in another window stays as it is, is told, and can still search", () => inShop(async ({ shop, server, page }) => {
  const other = await page.context().newPage();
  await other.goto(server.address);
  await page.goto(server.address + LOIN);
  await reviseLoin(shop, 6, "Shorter, by a word that search knows.");
  await shop.publish();
  await told(page);
  await news(page).locator("button").first().click();
  await page.waitForFunction(() => getComputedStyle(document.documentElement).getPropertyValue("--card").includes("revision 6"));
  await news(other).filter({ hasText: "another window" }).waitFor();
  await server.stop();
  await other.locator("#find").fill("rib");
  await other.waitForFunction(() => document.querySelectorAll(".found a").length > 2);
  await news(other).locator("button").first().click();
  await other.waitForLoadState();
  await other.waitForFunction(() => !document.querySelector(".news"));
}));

test("an edition that was never taken is overtaken by the next", () => inShop(async ({ shop, server, page }) => {
  for (const number of [6, 7]) {
    await reviseLoin(shop, number, `Change ${number}.`);
    await shop.publish();
    await page.goto(server.address + LOIN);
    await page.waitForFunction((number) => document.querySelector(".news")?.textContent.includes(`revision ${number}`), number, { timeout: 30000 });
    assert.equal(await revision(page), "5");
  }
  assert.equal((await page.evaluate(() => caches.keys())).length, 3, "the edition in between is cleared away");
  await news(page).locator("button").first().click();
  await page.waitForFunction(() => getComputedStyle(document.documentElement).getPropertyValue("--card").includes("revision 7"));
}));

test("a guide that is withdrawn says so before all else", () => inShop(async ({ shop, server, page }) => {
  await page.goto(server.address + LOIN);
  await reviseLoin(shop, 6, "The press is gone.");
  await shop.change("pork/loin-boneless.yaml", "  number: 6\n", "  number: 6\n  state: withdrawn\n");
  await shop.change("pork/loin-boneless.yaml", "house-cut: true\n", "");
  await shop.publish();
  await told(page);
  assert.match(await news(page).locator("b").nth(1).innerText(), /withdrawn: do not work from it/);
}));

test("a page in use is not moved under a finger; it is told when it is looked at again", () => inShop(async ({ shop, server, page }) => {
  await page.goto(server.address + LOIN);
  // The page has asked for a newer edition on its own and is in use before there is one.
  await page.waitForTimeout(3000);
  await page.mouse.wheel(0, 400);
  await reviseLoin(shop, 6, "Shorter.");
  await shop.publish();
  await page.evaluate(async () => (await navigator.serviceWorker.getRegistration()).update());
  await until(page, async () => Boolean((await navigator.serviceWorker.getRegistration()).waiting));
  await page.waitForTimeout(1000);
  assert.equal(await news(page).count(), 0);
  await page.evaluate(() => document.dispatchEvent(new Event("visibilitychange")));
  await news(page).waitFor();
  assert.equal(await revision(page), "5");
}));
