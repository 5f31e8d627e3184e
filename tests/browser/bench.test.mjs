// The bench view as cold fingers use it: on a phone, by taps alone, by the keys of a remote, without script, from a folder.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { folder, launch, open, pages, serve } from "./demo.mjs";

const LOIN = "bench/pork/loin-boneless.html";
const MARK = "seamwise bench pork/loin-boneless ";
let browser, server;
before(async () => { browser = await launch(); server = await serve(); });
after(async () => { await browser.close(); server.stop(); });

const benches = async () => (await pages()).filter((path) => path.startsWith("bench/"));
/** Waits for a screen, or says which one is shown instead. */
async function on(page, id, why = "") {
  const came = await page.waitForFunction((id) => document.querySelector(".now")?.id === id, id, { timeout: 2000 }).catch(() => null);
  if (!came) assert.equal(await page.locator(".now").getAttribute("id"), id, why);
}
/** A finger on the middle of what is seen; nothing is scrolled to reach it. */
async function touch(page, selector) {
  const { x, y, width, height } = await page.locator(selector).boundingBox();
  await page.touchscreen.tap(x + width / 2, y + height / 2);
}
/** A tap on a band, later than a bounce could come. */
async function tap(page, which) {
  await page.waitForTimeout(420);
  await page.locator(`.now .bands .${which}`).waitFor();
  await touch(page, `.now .bands .${which}`);
}
async function screens(page) {
  return page.locator(".screen").evaluateAll((all) => all.map((one) => one.id));
}
async function goTo(page, id) {
  await page.evaluate((id) => { location.hash = id; }, id);
  await on(page, id);
}

for (const [way, base] of [["over http", () => server.address], ["from a folder", () => folder]]) {
  test(`${way}: step 3 is two taps away, the caution stands before the act, a band leads back, and a lock keeps the place`, async () => {
    const { page, wrong, close } = await open(browser);
    await page.goto(base() + LOIN);
    await on(page, "before");
    await page.locator(".top .count").tap();
    await page.locator(".all a", { hasText: "Lift the loin off the bone" }).tap();
    await on(page, "step-loin-lifted");
    assert.equal(await page.locator(".top .count").innerText(), "Step 3 of 7");
    assert.match(await page.locator(".said").textContent(), /^Step 3 of 7/);
    assert.match(await page.title(), /^Step 3 of 7, Lift the loin off the bone/);
    assert.equal(await page.evaluate(() => document.activeElement.textContent), "3Lift the loin off the bone");
    assert.equal(await page.evaluate(() => window.scrollY), 0);
    assert.match(await page.locator(".now .caution").first().innerText(), /WARNING/);
    await tap(page, "next");
    await on(page, "step-ribs-sawn");
    await tap(page, "prev");
    await on(page, "step-loin-lifted");
    await page.reload();
    await on(page, "step-loin-lifted", "the address holds the step");
    assert.equal(await page.locator(".now .ticked").isVisible(), true, "and the tick is kept");
    await page.goto("about:blank");
    await page.goto(base() + LOIN);
    await on(page, "step-loin-lifted", "the device holds it where the address does not");
    assert.match(await page.locator(".said").innerText(), /left off/);
    assert.deepEqual(wrong, []);
    await close();
  });
}

test("Back of the browser leads through the screens as they were seen", async () => {
  const { page, close } = await open(browser);
  await page.goto(`${folder}${LOIN}#step-sirloin-off`);
  await on(page, "step-sirloin-off", "a link may lead to a step");
  await tap(page, "next");
  await tap(page, "next");
  await on(page, "step-ribs-sawn");
  await page.goBack();
  await on(page, "step-loin-lifted");
  await page.goForward();
  await on(page, "step-ribs-sawn");
  await close();
});

/** What is too small or too wide on the screen that is shown, at its upper and its lower end. */
const measure = () => {
  const now = document.querySelector(".now"), bands = [...now.querySelectorAll(".bands a")].filter((band) => band.checkVisibility());
  const shown = (element) => element.checkVisibility() && element.getBoundingClientRect().width > 1 && !element.matches(".skip");
  const box = (element) => element.getBoundingClientRect();
  const plain = (element) => getComputedStyle(element).display === "inline";
  window.scrollTo(0, document.documentElement.scrollHeight);
  const edge = now.querySelector(".bands .prev"), over = [...now.querySelectorAll(".body *")].filter(shown).filter((element) => !element.children.length)
    .filter((element) => box(element).bottom > box(edge).top + 1 && box(element).right > box(edge).left + 1 && box(element).top < innerHeight);
  return {
    wide: document.documentElement.scrollWidth,
    low: bands.filter((band) => box(band).height < 96).map((band) => `${band.textContent} ${box(band).height}`),
    together: bands.reduce((sum, band) => sum + box(band).width, 0),
    small: [...document.querySelectorAll("a,button,summary,input")].filter(shown).filter((element) => !plain(element))
      .filter((element) => box(element).height < 64 || box(element).width < 64).map((element) => `${element.textContent.trim()} ${Math.round(box(element).width)}×${Math.round(box(element).height)}`),
    over: over.map((element) => element.textContent.trim().slice(0, 40)),
  };
};

for (const [width, height] of [[320, 640], [360, 740], [412, 915], [740, 360], [1280, 800]]) {
  test(`at ${width}×${height} every band is 96 px high, all else 64 px, nothing is covered and nothing scrolls sideways`, async () => {
    const { page, close } = await open(browser, { width, height });
    const side = width > height && height < 480;
    for (const path of await benches()) {
      await page.goto(folder + path);
      for (const id of await screens(page)) {
        await goTo(page, id);
        await page.evaluate(() => document.querySelectorAll("details").forEach((one) => { one.open = true; }));
        const { wide, low, together, small, over } = await page.evaluate(measure);
        assert.ok(wide <= width, `${path}#${id}: ${wide} px wide`);
        assert.deepEqual(low, [], `${path}#${id}`);
        if (!side) assert.ok(Math.abs(together - width) < 2, `${path}#${id}: the bands are as wide as the screen, not ${together} px`);
        assert.deepEqual(small, [], `${path}#${id}`);
        assert.deepEqual(over, [], `${path}#${id}: covered at the end of the screen`);
      }
    }
    await close();
  });
}

test("text at 200 % and with wide spacing loses nothing at 320 px", async () => {
  const { page, close } = await open(browser, { width: 320, height: 740 });
  const wide = "* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }";
  for (const path of await benches()) {
    for (const change of ["html { font-size: 200% !important }", wide]) {
      await page.goto(folder + path);
      await page.evaluate((css) => { const sheet = new CSSStyleSheet(); sheet.replaceSync(css); document.adoptedStyleSheets = [sheet]; }, change);
      for (const id of await screens(page)) {
        await goTo(page, id);
        const { wide, low, over } = await page.evaluate(measure);
        assert.ok(wide <= 320, `${path}#${id}: ${wide} px wide with ${change.slice(0, 20)}`);
        assert.deepEqual([low, over], [[], []], `${path}#${id}`);
      }
    }
  }
  await close();
});

test("in every step the caution stands before hold, landmark and cut, on the same screen", async () => {
  const { page, close } = await open(browser);
  let seen = 0;
  for (const path of await benches()) {
    await page.goto(folder + path);
    for (const id of (await screens(page)).filter((id) => id.startsWith("step-"))) {
      await goTo(page, id);
      const order = await page.locator(".now").evaluate((screen) => {
        const order = [...screen.querySelectorAll(".caution, .say, .do, .comes")].map((part) => [part.className.split(" ")[0], Math.round(part.getBoundingClientRect().top)]);
        return { names: order.map(([name]) => name), sorted: order.every(([, top], at) => at === 0 || top >= order[at - 1][1]), shown: [...screen.querySelectorAll(".caution")].every((caution) => caution.checkVisibility() && caution.querySelector("strong").textContent.length > 20) };
      });
      assert.match(order.names.join(" "), /^(caution )+(say )?do comes$/, `${path}#${id}`);
      assert.ok(order.sorted && order.shown, `${path}#${id}`);
      seen += 1;
    }
    await goTo(page, "before");
    const hurt = await page.locator("#before .caution li").count();
    assert.ok(hurt > 1 && (await page.locator("#before").innerText()).includes("°C"), `${path}: what can hurt and how cold it starts stand before the first step`);
  }
  assert.ok(seen > 45, `${seen} steps were looked at`);
  await close();
});

test("a long step can be read to its end by taps alone", async () => {
  const { page, close } = await open(browser);
  await page.goto(`${folder}${LOIN}#step-ribs-sawn`);
  let taps = 0;
  const seen = new Set();
  const look = () => page.evaluate(() => {
    const top = 0, bottom = document.querySelector(".now .more-below").checkVisibility() ? document.querySelector(".now .more-below").getBoundingClientRect().top : document.querySelector(".now .bands").getBoundingClientRect().top;
    return [...document.querySelectorAll(".now .do p, .now .caution p, .now .caution strong")].filter((line) => line.getBoundingClientRect().top >= top && line.getBoundingClientRect().bottom <= bottom).map((line) => line.textContent);
  });
  for (const line of await look()) seen.add(line);
  while (await page.locator(".now .more-below").isVisible() && taps < 20) {
    await touch(page, ".now .more-below");
    taps += 1;
    await page.waitForTimeout(60);
    for (const line of await look()) seen.add(line);
  }
  assert.ok(taps > 1 && taps < 20, `${taps} taps`);
  const all = await page.locator(".now .do p, .now .caution p, .now .caution strong").allTextContents();
  assert.deepEqual(all.filter((line) => !seen.has(line)), [], "each line was seen whole");
  await close();
});

test("keys of a remote and of a keyboard read on, then tick; no key leaves the page; one press is one step", async () => {
  const { page, close } = await open(browser, { width: 1280, height: 2400 });
  await page.goto(folder + LOIN);
  await page.keyboard.press("ArrowLeft");
  await on(page, "before", "no key leaves the page");
  await page.keyboard.press("ArrowRight");
  await on(page, "step-tenderloin-out");
  for (const [key, to] of [["PageDown", "step-sirloin-off"], [" ", "step-loin-lifted"], ["ArrowRight", "step-ribs-sawn"], ["PageUp", "step-loin-lifted"], ["ArrowLeft", "step-sirloin-off"]]) {
    await page.keyboard.press(key);
    await on(page, to, key);
  }
  await page.setViewportSize({ width: 360, height: 740 });
  await page.keyboard.press("PageDown");
  await on(page, "step-sirloin-off", "there is more of the step to read");
  assert.ok((await page.evaluate(() => window.scrollY)) > 200);
  for (let at = 0; at < 12 && (await page.locator(".screen.now").getAttribute("id")) === "step-sirloin-off"; at += 1) await page.keyboard.press("PageDown");
  await on(page, "step-loin-lifted", "and at its end it is done");
  await page.keyboard.press("PageUp");
  await on(page, "step-sirloin-off");
  await page.keyboard.press("Control+ArrowRight");
  await on(page, "step-sirloin-off", "keys of the browser stay its own");
  await page.locator(".top .aloud").focus();
  await page.locator(".top .count").click();
  for (const name of ["→", "←", "Page Down", "Page Up", "Space"]) assert.ok((await page.locator(".keys").innerText()).includes(name), `${name} is explained`);
  await page.keyboard.press("ArrowLeft");
  await on(page, "step-sirloin-off", "the list leads back");
  await close();
});

test("a tick is taken back; a bounce ticks one step; starting anew is undone; what is open is told", async () => {
  const { page, close } = await open(browser);
  await page.goto(`${folder}${LOIN}#step-tenderloin-out`);
  // Twice at the same spot with nothing asked between, as a wet finger does it.
  const { x, y, width, height } = await page.locator(".now .next").boundingBox();
  for (let touches = 0; touches < 2; touches += 1) await page.touchscreen.tap(x + width / 2, y + height / 2);
  await on(page, "step-sirloin-off", "the second touch within 0.4 s is a bounce");
  await tap(page, "prev");
  await on(page, "step-tenderloin-out");
  assert.equal(await page.locator(".now .next b").innerText(), "Next");
  await page.locator(".now .untick").tap();
  assert.equal(await page.locator(".now .ticked").isVisible(), false);
  assert.equal(await page.locator(".now .next b").innerText(), "Done");
  await tap(page, "next");
  await goTo(page, "done");
  assert.equal(await page.locator("#done .left").innerText(), "Not ticked: 2, 3, 4, 5, 6, 7.");
  const start = await page.locator("#done .again").boundingBox();
  assert.ok(start, "start again stands in the text, not in the bands");
  assert.equal(await page.locator(".bands .again").count(), 0);
  await page.locator("#done .again").tap();
  await on(page, "before");
  assert.match(await page.locator(".said").innerText(), /cleared/);
  await page.locator(".offer .go").tap();
  await on(page, "done");
  assert.equal(await page.locator("#done .left").innerText(), "Not ticked: 2, 3, 4, 5, 6, 7.");
  await close();
});

test("an old revision's place is offered and not carried over", async () => {
  const { page, close } = await open(browser);
  const keep = async (revision, place) => {
    await page.goto(folder + LOIN);
    await page.evaluate(([key, place]) => { localStorage.clear(); localStorage.setItem(key, JSON.stringify(place)); }, [MARK + revision, place]);
    await page.goto("about:blank");
    await page.goto(folder + LOIN);
  };
  const old = { at: "step-ribs-sawn", number: 5, name: "Saw the ribs", when: Date.now() - 9e8, ticks: { "step-tenderloin-out": 1 } };
  await keep(4, old);
  await on(page, "before", "it is not gone to by itself");
  assert.match(await page.locator(".offer").innerText(), /step 5 of revision 4: Saw the ribs.*revision 5.*Changed in revision 5/s);
  await page.locator(".offer .go").tap();
  await on(page, "step-ribs-sawn");
  assert.equal(await page.locator(".all .ticked").count(), 0, "its ticks are not taken");
  assert.equal(await page.evaluate((key) => localStorage.getItem(key), `${MARK}4`), null, "and it is not offered twice");
  await keep(4, { ...old, at: "step-of-old" });
  assert.match(await page.locator(".offer").innerText(), /does not stand in this revision/);
  assert.equal(await page.locator(".offer .go").isVisible(), false);
  await page.locator(".offer .drop").tap();
  assert.equal(await page.locator(".offer").isVisible(), false);
  await keep(6, old);
  assert.match(await page.locator(".offer").innerText(), /This page is older: revision 5/);
  await keep(5, old);
  await on(page, "before", "a place of another shift is offered too");
  assert.match(await page.locator(".offer").innerText(), /more than a shift ago/);
  await page.locator(".offer .go").tap();
  await on(page, "step-ribs-sawn");
  assert.equal(await page.locator(".all .ticked").count(), 1);
  await keep(5, "no place");
  await on(page, "before", "what is no place is left aside");
  await close();
});

test("without a store the page works and says that it keeps nothing", async () => {
  const { page, wrong, close } = await open(browser);
  await page.addInitScript(() => Object.defineProperty(window, "localStorage", { get() { throw new Error("refused"); } }));
  await page.goto(folder + LOIN);
  await tap(page, "next");
  await tap(page, "next");
  await on(page, "step-sirloin-off");
  await page.locator(".top .count").tap();
  assert.match(await page.locator(".keeps").innerText(), /keeps nothing/);
  assert.equal(await page.locator(".all .ticked").count(), 1);
  assert.deepEqual(wrong, []);
  await close();
});
