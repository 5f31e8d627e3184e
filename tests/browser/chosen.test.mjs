// A site too large to be kept unasked: the first visit keeps what every reader needs, and a reader chooses the rest by
// species and by course, and removes it again.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { launch, open, serve } from "./demo.mjs";
import { kept, reviseLoin, until, workshop } from "./editions.mjs";

const PORK = "guides/pork/loin-boneless.html", BEEF = "guides/beef/chuck-boned.html", LAMB = "guides/lamb/leg-seam-boned.html";
const PICTURES = { pork: "pictures/pork-loin-lines.svg", beef: "pictures/beef-chuck-lines.svg" };
let browser, shop;
before(async () => {
  browser = await launch();
  shop = await workshop();
  for (const picture of Object.values(PICTURES)) await shop.append(picture, `<!--${" a photograph".repeat(480000)}-->`);
  await shop.write("courses/first-term.yaml", "title: First term\nlessons:\n  - { name: Legs, procedures: [lamb/leg-seam-boned] }\n");
  await shop.publish();
});
after(async () => { await browser.close(); await shop.close(); });

const row = (page, id) => page.locator(`li[data-part="${id}"]`);
const press = async (page, id, then) => {
  await row(page, id).locator("button").click();
  await until(page, ([id, then]) => document.querySelector(`li[data-part="${id}"] .is`).textContent === then, [id, then]);
};
/** Paths of what is kept. */
const held = (page) => page.evaluate(async () => {
  const name = (await caches.keys()).find((name) => !name.endsWith("state"));
  return (await (await caches.open(name)).keys()).map((request) => new URL(request.url).pathname.slice(1));
});
/** Whether a page opens: its title, or that it is not kept. */
async function opens(page, address) {
  await page.goto(address);
  return !page.url().includes("offline/index.html#");
}

test("only what was chosen is kept, and opens with the server stopped", async () => {
  const server = await serve({ folder: shop.site });
  const { page, wrong, close } = await open(browser);
  await kept(page, server.address);
  assert.match(await page.locator("main").innerText(), /The whole site is 1\d\.\d.MB, too much to keep unasked/);
  const shell = await held(page);
  assert.ok(shell.includes("index.html") && shell.includes("pieces/index.html") && shell.some((path) => path.startsWith("search/")));
  assert.ok(!shell.some((path) => /^(guides|pictures|species|tables|source)\//.test(path)), `${shell}`);
  assert.ok(!server.asked.some((path) => path.startsWith("/pictures/")), "nothing large was fetched unasked");
  // The picture of the loin alone is 6.2 MB.
  const [, size] = /Pork\s+2 guides, (\d\.\d).MB/.exec(await row(page, "species/pork").innerText()) ?? [];
  assert.ok(size >= 6.2 && size < 9, `${size} MB`);
  assert.equal(await row(page, "species/pork").locator("button").innerText(), "Keep Pork");
  await press(page, "species/pork", "kept");
  await press(page, "courses/first-term", "kept");
  for (const button of await page.locator("button:visible").all()) {
    const box = await button.boundingBox();
    assert.ok(box.height >= 64 && box.width >= 64, `${await button.innerText()}: ${box.width} by ${box.height}`);
  }
  await server.stop();
  for (const path of ["", "pieces/index.html", PORK, "tables/guides/pork/loin-boneless.html", "species/pork.html", LAMB]) {
    assert.ok(await opens(page, server.address + path), path);
  }
  for (const path of [BEEF, "species/lamb.html", "checks/index.html"]) {
    assert.ok(!(await opens(page, server.address + path)), path);
    assert.ok((await page.locator("#missing").innerText()).includes(path), path);
  }
  await page.goto(server.address + PORK);
  const picture = page.locator(`img[src$="${PICTURES.pork}"]`).first();
  assert.ok(await picture.evaluate(async (image) => { image.loading = "eager"; await image.decode(); return image.naturalWidth > 0; }));
  assert.deepEqual(wrong, []);
  await close();
});

test("what is removed is gone, and what another choice needs stays", async () => {
  const server = await serve({ folder: shop.site });
  const { page, close } = await open(browser);
  await kept(page, server.address);
  const before = await held(page);
  await press(page, "species/lamb", "kept");
  await press(page, "courses/first-term", "kept");
  await press(page, "species/lamb", "not kept");
  assert.ok((await held(page)).includes(LAMB), "the course has it");
  await press(page, "courses/first-term", "not kept");
  assert.deepEqual((await held(page)).sort(), before.sort());
  assert.equal(await row(page, "species/lamb").locator("button").innerText(), "Keep Lamb");
  await close();
  await server.stop();
});

test("a newer edition brings the parts that were chosen, and no others", async () => {
  const server = await serve({ folder: shop.site });
  const { page, close } = await open(browser);
  await kept(page, server.address);
  await press(page, "species/pork", "kept");
  await reviseLoin(shop, 6, "Shorter.");
  await shop.publish();
  server.asked.length = 0;
  await page.goto(server.address + PORK);
  await page.reload();
  await page.locator(".news").waitFor({ timeout: 30000 });
  assert.ok(server.asked.includes(`/${PORK}`) && !server.asked.includes(`/${BEEF}`) && !server.asked.some((path) => path.startsWith("/pictures/")));
  await page.goto(`${server.address}offline/index.html`);
  await page.locator(".news").waitFor();
  await row(page, "species/beef").locator("button").click();
  await until(page, () => !document.querySelector("#failed").hidden);
  assert.match(await page.locator("#failed").innerText(), /newer edition/);
  await page.locator(".news button").first().click();
  await page.waitForFunction(() => !document.querySelector(".news") && document.querySelector("[data-part='species/pork'] .is").textContent === "kept");
  await server.stop();
  assert.ok(await opens(page, server.address + PORK));
  assert.match(await page.locator("main").innerText(), /Shorter\./);
  await close();
});

test("a choice that is cut off keeps what was there, and is told", async () => {
  let broken = false;
  const server = await serve({ folder: shop.site, before: async (path) => { if (broken && path.startsWith("/source/")) throw new Error("the line is down"); } });
  const { page, close } = await open(browser);
  await kept(page, server.address);
  broken = true;
  await row(page, "species/beef").locator("button").click();
  await until(page, () => !document.querySelector("#failed").hidden);
  assert.equal(await row(page, "species/beef").locator(".is").innerText(), "not kept");
  broken = false;
  await press(page, "species/beef", "kept");
  assert.equal(await page.locator("#failed:visible").count(), 0);
  await server.stop();
  assert.ok(await opens(page, server.address + BEEF));
  await close();
});
