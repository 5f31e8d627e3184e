// What the bench view asks of a device, each with a stand-in for it and without it: the screen kept on, a voice, a clock;
// and what is left without script, in other colours and for those who hear a page.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { after, before, test } from "node:test";
import { folder, launch, open, pages } from "./demo.mjs";

const axe = readFileSync(new URL("node_modules/axe-core/axe.min.js", import.meta.url), "utf8");
const LOIN = "bench/pork/loin-boneless.html";
let browser;
before(async () => { browser = await launch(); });
after(() => browser.close());

const benches = async () => (await pages()).filter((path) => path.startsWith("bench/"));
async function goTo(page, id) {
  await page.evaluate((id) => { location.hash = id; }, id);
  await page.waitForFunction((id) => document.querySelector(".now").id === id, id);
}

/** A stand-in for the lock of the screen, which can be refused and taken back. */
const wakeLock = (refuse) => {
  const asked = [];
  const request = (kind) => {
    const lock = new EventTarget();
    asked.push([kind, lock]);
    return refuse ? Promise.reject(new Error("low battery")) : Promise.resolve(lock);
  };
  Object.defineProperty(Navigator.prototype, "wakeLock", { configurable: true, get: () => ({ request }) });
  window.lockAsked = asked;
};

test("the screen is kept on, asked for again when the page comes back, and told in words", async () => {
  const { page, close } = await open(browser);
  await page.addInitScript(wakeLock, false);
  await page.goto(`${folder}${LOIN}#steps`);
  await page.waitForFunction(() => window.lockAsked.length === 1);
  assert.equal(await page.evaluate(() => window.lockAsked[0][0]), "screen");
  assert.match(await page.locator(".awake").innerText(), /stays on/);
  const hide = (hidden) => page.evaluate((hidden) => {
    Object.defineProperty(document, "hidden", { configurable: true, get: () => hidden });
    if (hidden) window.lockAsked.at(-1)[1].dispatchEvent(new Event("release"));
    document.dispatchEvent(new Event("visibilitychange"));
  }, hidden);
  await hide(true);
  assert.equal(await page.evaluate(() => window.lockAsked.length), 1, "nothing is asked while the page is hidden");
  await hide(false);
  await page.waitForFunction(() => window.lockAsked.length === 2);
  await page.evaluate(() => window.lockAsked.at(-1)[1].dispatchEvent(new Event("release")));
  assert.match(await page.locator(".awake").innerText(), /lets the screen go dark/, "taken back while it is seen");
  await close();
});

for (const [why, refuse] of [["refuses it", true], ["has none", null]]) {
  test(`where the browser ${why}, the page says that the screen goes dark`, async () => {
    const { page, wrong, close } = await open(browser);
    if (refuse) await page.addInitScript(wakeLock, true);
    else await page.addInitScript(() => { delete Navigator.prototype.wakeLock; });
    await page.goto(`${folder}${LOIN}#steps`);
    await page.waitForFunction(() => /lets the screen go dark/.test(document.querySelector(".awake").textContent));
    assert.deepEqual(wrong, []);
    await close();
  });
}

/** A stand-in for the voice: it keeps what it is given. */
const voice = () => {
  window.heard = [];
  window.cancelled = 0;
  window.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };
  Object.defineProperty(window, "speechSynthesis", { configurable: true, value: { speak: (one) => window.heard.push(one), cancel: () => { window.cancelled += 1; } } });
};

test("a step is read aloud in its order, one sentence at a time, and falls silent when it is left", async () => {
  const { page, close } = await open(browser);
  await page.addInitScript(voice);
  await page.goto(`${folder}${LOIN}#step-ribs-sawn`);
  const button = page.locator(".top .aloud");
  await button.click();
  assert.equal(await button.innerText(), "Stop reading");
  const heard = await page.evaluate(() => window.heard.map((one) => one.text));
  const whole = heard.join(" | ");
  assert.equal(heard[0], "4 Saw the ribs off the chine");
  const order = ["WARNING", "A running blade catches gloves", "Take off every glove, mesh above all", "Wear eye protection", "Other hand The other hand guides", "Landmark", "Leave the saw to a colleague", "Write the number on the label", "Everything goes back to the cold", "Back ribs"];
  const places = order.map((part) => whole.indexOf(part));
  assert.ok(places.every((place, at) => place >= 0 && (at === 0 || place > places[at - 1])), `${JSON.stringify(places)}: ${whole}`);
  assert.ok(!whole.includes("ISO 7010"), "codes of signs are not read");
  assert.ok(!/\d\u2013\d/.test(whole) && whole.includes("3 to 4"), "a range is read as one");
  assert.ok(!whole.includes("Drifting into the ribs"), "what is folded is not read");
  assert.ok(heard.every((part) => part.length < 260), `the longest part has ${Math.max(...heard.map((part) => part.length))} letters`);
  for (const line of await page.locator(".now .do p").allTextContents()) assert.equal(heard.slice(heard.indexOf("The cut")).filter((part) => part === line.replace(/\s+/g, " ")).length, 1, `once: ${line}`);
  assert.equal(await page.evaluate(() => window.heard[0].lang), "en");
  await button.click();
  assert.equal(await button.innerText(), "Read aloud");
  const before = await page.evaluate(() => window.cancelled);
  await button.click();
  await page.keyboard.press("ArrowRight");
  await page.waitForFunction(() => document.querySelector(".now").id === "step-loin-trimmed");
  assert.ok((await page.evaluate(() => window.cancelled)) > before + 1, "left, it falls silent");
  assert.equal(await button.innerText(), "Read aloud");
  await button.click();
  await page.evaluate(() => window.heard.at(-1).onend());
  assert.equal(await button.innerText(), "Read aloud", "at its end the button offers it again");
  await button.click();
  await page.evaluate(() => window.heard.at(-1).onerror({ error: "voice-unavailable" }));
  assert.match(await page.locator(".said").innerText(), /no voice/);
  await close();
});

test("without a voice there is no button for it", async () => {
  const { page, close } = await open(browser);
  await page.addInitScript(() => { delete window.SpeechSynthesisUtterance; });
  await page.goto(folder + LOIN);
  assert.equal(await page.locator(".top .aloud").isVisible(), false);
  await close();
});

test("a clock counts up beside the usual time, goes on through a lock, rests when told, and moves nothing on", async () => {
  const { page, close } = await open(browser);
  await page.clock.install({ time: new Date("2026-09-14T06:30:00") });
  await page.goto(`${folder}${LOIN}#step-loin-lifted`);
  const clock = page.locator(".now .clock"), now = () => page.locator(".now [role=timer]").innerText();
  assert.equal(await clock.isVisible(), false, "none is shown unless asked for");
  await goTo(page, "steps");
  await page.locator(".clocks").click();
  assert.equal(await page.locator(".clocks").getAttribute("aria-pressed"), "true");
  await goTo(page, "step-loin-lifted");
  await page.clock.runFor(65_000);
  assert.equal(await now(), "1:05");
  assert.match(await clock.innerText(), /of 5–12.min/);
  await page.reload();
  await page.clock.runFor(1_000);
  assert.equal(await now(), "1:06", "it goes on through a reload");
  await page.locator(".now .pause").click();
  await page.clock.runFor(60_000);
  assert.equal(await now(), "1:06", "it rests");
  await page.locator(".now .pause").click();
  await page.clock.runFor(3_600_000);
  assert.equal(await now(), "1:01:06");
  assert.equal(await page.locator(".now").getAttribute("id"), "step-loin-lifted", "long past its time nothing has moved");
  assert.match(await clock.innerText(), /longer than usual/);
  assert.match(await page.locator(".now .do").innerText(), /Stop at the chine/);
  await page.locator(".now .next").click();
  await page.clock.runFor(30_000);
  await goTo(page, "step-loin-lifted");
  await page.clock.runFor(30_000);
  assert.equal(await now(), "1:01:06", "a step that is done stands still");
  await goTo(page, "done");
  assert.match(await page.locator(".took").innerText(), /^1:01:36 by the clocks/);
  await goTo(page, "step-ribs-sawn");
  await page.locator(".now .hide").click();
  assert.equal(await page.locator(".clock:visible").count(), 0);
  await page.reload();
  assert.equal(await page.locator(".clock:visible").count(), 0, "hidden is kept too");
  await close();
});

test("without script all steps stand one after another, and the bands lead from one to the next", async () => {
  const { page, wrong, close } = await open(browser, { script: false });
  for (const path of await benches()) {
    await page.goto(folder + path);
    const shown = await page.locator(".screen").evaluateAll((all) => all.map((one) => ({ id: one.id, seen: one.checkVisibility(), top: one.getBoundingClientRect().top, next: one.querySelector(".bands .next").getAttribute("href"), prev: one.querySelector(".bands .prev").getAttribute("href") })));
    assert.ok(shown.every((one, at) => one.seen && (at === 0 || one.top > shown[at - 1].top)), path);
    const line = shown.filter((one) => one.id !== "steps");
    line.slice(0, -1).forEach((one, at) => assert.equal(decodeURIComponent(one.next), `#${line[at + 1].id}`, path));
    line.slice(1).forEach((one, at) => assert.equal(decodeURIComponent(one.prev), `#${line[at].id}`, path));
    for (const part of [".aloud", ".device", ".offer", ".clock", ".ticked", ".more-below", ".seam"]) assert.equal(await page.locator(`${part}:visible`).count(), 0, `${path}: ${part} needs script`);
    assert.equal(await page.evaluate(() => document.querySelector(".bands") && getComputedStyle(document.querySelector(".bands")).position).catch(() => "static"), "static");
  }
  assert.deepEqual(wrong, []);
  await close();
});

test("no screen breaks an accessibility rule", async () => {
  for (const scheme of ["light", "dark"]) {
    const { page, close } = await open(browser, { scheme });
    for (const path of scheme === "light" ? await benches() : [LOIN]) {
      await page.goto(folder + path);
      await page.evaluate(axe);
      await page.evaluate(() => document.querySelectorAll("details").forEach((one) => { one.open = true; }));
      const all = await page.locator(".screen").evaluateAll((all) => all.map((one) => one.id));
      // Every screen of one guide; of the others one of each kind.
      for (const id of path === LOIN ? all : [all[0], all[1], all[3], all.at(-1)]) {
        await goTo(page, id);
        const { violations } = await page.evaluate(() => globalThis.axe.run({ rules: { "color-contrast-enhanced": { enabled: true }, "target-size": { enabled: true } } }));
        assert.deepEqual(violations.map((one) => `${one.id}: ${one.nodes.slice(0, 3).map((node) => node.target).join(" | ")}`), [], `${path}#${id}, ${scheme}`);
      }
    }
    await close();
  }
});

test("in the colours of the system the two bands and the signal words still stand out; nothing moves", async () => {
  const { page, close } = await open(browser);
  await page.emulateMedia({ forcedColors: "active", reducedMotion: "reduce" });
  await page.goto(`${folder}${LOIN}#step-ribs-sawn`);
  const border = (selector) => page.locator(selector).first().evaluate((element) => parseFloat(getComputedStyle(element).borderTopWidth));
  assert.ok((await border(".now .bands .next")) > (await border(".now .bands .prev")), "Done has the thicker edge");
  assert.ok((await border(".now .caution > b")) >= 2);
  await page.keyboard.press("ArrowRight");
  assert.deepEqual(await page.evaluate(() => document.getAnimations().length), 0);
  await close();
});
