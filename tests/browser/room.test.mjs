// The room view as a class sees it: on a projector, by the keys of a remote, in a dark and in a bright room.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { after, before, test } from "node:test";
import { folder, launch, open, pages, serve } from "./demo.mjs";

const axe = readFileSync(new URL("node_modules/axe-core/axe.min.js", import.meta.url), "utf8");
const LOIN = "room/pork/loin-boneless.html";
let browser, server;
before(async () => { browser = await launch(); server = await serve(); });
after(async () => { await browser.close(); server.stop(); });

const rooms = async () => (await pages()).filter((path) => path.startsWith("room/"));
const hash = (page) => page.evaluate(() => decodeURIComponent(location.hash));
async function goTo(page, anchor) {
  await page.evaluate((anchor) => { location.hash = anchor; }, anchor);
  await page.waitForFunction(() => document.querySelector(".now"));
}
const head = (page) => page.locator(".now h2").innerText();

/** On the picture that is shown: the height of a capital letter of every text, what is cut off, and what is too small to hit. */
const measure = () => {
  const pen = document.createElement("canvas").getContext("2d"), seen = (element) => element.checkVisibility() && element.getBoundingClientRect().width > 1;
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT), low = [], cut = [];
  while (texts.nextNode()) {
    const text = texts.currentNode.data.trim(), parent = texts.currentNode.parentElement;
    if (!text || /^(STYLE|SCRIPT|TITLE)$/.test(parent.nodeName) || !seen(parent) || parent.closest(".hear,.skip")) continue;
    const style = getComputedStyle(parent), range = document.createRange();
    pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
    const letter = pen.measureText("H").actualBoundingBoxAscent;
    if (letter < innerHeight / 25 - 0.5) low.push(`${text.slice(0, 30)}: ${letter}`);
    range.selectNodeContents(texts.currentNode);
    const box = range.getBoundingClientRect(), bar = document.querySelector(".moves").getBoundingClientRect(), inBar = parent.closest(".moves");
    if ((box.right > innerWidth + 1 || box.left < -1 || (!inBar && box.bottom > bar.top + 4))) cut.push(text.slice(0, 40));
  }
  const small = [...document.querySelectorAll("button,summary")].filter(seen).map((one) => [one.textContent, one.getBoundingClientRect()]).filter(([, box]) => box.height < 64 || box.width < 64).map(([text, box]) => `${text} ${box.width}×${box.height}`);
  return { low, cut, small, spilled: document.querySelector(".now").scrollHeight > document.querySelector(".now").clientHeight + 2, last: document.querySelector(".moves .next").disabled };
};

for (const [width, height] of [[1920, 1080], [1280, 800], [1024, 768]]) {
  test(`at ${width}×${height} every letter is 4 % of the picture high, and no word is cut off`, async () => {
    const { page, wrong, close } = await open(browser, { width, height });
    let seen = 0, spilled = 0;
    for (const path of await rooms()) {
      await page.goto(folder + path);
      // All pictures are gone through inside the page, for there are hundreds.
      const found = await page.evaluate(`(() => { const measure = ${measure}, all = [];
        for (;;) { all.push({ ...measure(), at: location.hash }); if (all.at(-1).last) return all; document.querySelector(".moves .next").click(); } })()`);
      seen += found.length;
      for (const one of found) assert.deepEqual([one.low, one.cut, one.small], [[], [], []], `${path}${one.at}`);
      spilled += found.filter((one) => one.spilled).length;
    }
    assert.ok(seen > 300, `${seen} pictures were looked at`);
    assert.equal(spilled, 0, "no picture scrolls");
    assert.deepEqual(wrong, []);
    await close();
  });
}

test("each step begins with its cautions, whole and with signal words; nothing of a step is lost by splitting", async () => {
  for (const [width, height] of [[1280, 800], [1024, 768]]) {
    const { page, close } = await open(browser, { width, height });
    const { page: plain, close: closePlain } = await open(browser, { width, height, script: false });
    for (const path of await rooms()) {
      await page.goto(folder + path);
      await plain.goto(folder + path);
      for (const step of await page.locator(".step").all()) {
        const { id, kinds, words } = await step.evaluate((step) => ({
          id: step.id,
          kinds: [...step.querySelectorAll(".pic")].map((pic) => pic.querySelector(".caution") ? (pic.querySelector(".caution > b").textContent ? "caution" : "") : pic.matches(".cut") ? "cut" : "other"),
          words: [...step.querySelectorAll(".atoms, .kit")].map((list) => list.textContent).join(""),
        }));
        assert.match(kinds.join(" "), /^(caution )+other /, `${path}#${id}`);
        assert.ok(kinds.indexOf("cut") > kinds.lastIndexOf("caution"), `${path}#${id}`);
        const whole = await plain.locator(`[id="${id}"]`).evaluate((step) => [...step.querySelectorAll(".atoms, .kit")].map((list) => list.textContent).join(""));
        assert.equal(words.replace(/\s+/g, ""), whole.replace(/\s+/g, ""), `${path}#${id}: all words, in their order`);
      }
    }
    await close();
    await closePlain();
  }
});

test("keys of a remote go picture by picture, arrows go step by step, and a reload stays", async () => {
  const { page, close } = await open(browser, { width: 1280, height: 800 });
  await page.goto(folder + LOIN);
  assert.match(await head(page), /^Pork loin/);
  await page.keyboard.press("ArrowLeft");
  assert.match(await head(page), /^Pork loin/, "there is nothing before the first");
  await page.keyboard.press("ArrowDown");
  while ((await hash(page)) !== "#step-tenderloin-out") await page.keyboard.press("PageDown");
  assert.match(await head(page), /^1\s*Take out the tenderloin/);
  assert.equal(await page.locator(".moves .place").innerText(), "Step 1 of 7");
  assert.match(await page.locator("[role=status]").textContent(), /^Step 1 of 7, 1 of \d+$/);
  await page.keyboard.press("PageDown");
  assert.equal(await hash(page), "#step-tenderloin-out/2");
  await page.keyboard.press(" ");
  await page.keyboard.press("ArrowRight");
  assert.equal(await hash(page), "#step-tenderloin-out/4");
  await page.keyboard.press("PageUp");
  assert.equal(await hash(page), "#step-tenderloin-out/3");
  await page.reload();
  assert.equal(await hash(page), "#step-tenderloin-out/3");
  await page.keyboard.press("ArrowDown");
  assert.equal(await hash(page), "#step-sirloin-off");
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowUp");
  assert.equal(await hash(page), "#step-loin-lifted", "up goes to the head of the step first");
  await page.keyboard.press("ArrowUp");
  assert.equal(await hash(page), "#step-sirloin-off");
  await page.keyboard.press("End");
  assert.match(await head(page), /The end/);
  await page.keyboard.press("Home");
  assert.equal(await hash(page), "#opening");
  await page.waitForTimeout(1500);
  assert.equal(await hash(page), "#opening", "it never moves by itself");
  await page.locator(".moves .next").click();
  await page.locator(".moves .prev").click();
  assert.equal(await hash(page), "#opening", "two large buttons do the same");
  await close();
});

test("a question is a picture of its own behind its step, and its answer is shown only when asked", async () => {
  const { page, close } = await open(browser, { width: 1280, height: 800 });
  for (const path of await rooms()) {
    await page.goto(folder + path);
    const asked = await page.locator(".asks").evaluateAll((all) => all.map((one) => ({ open: one.querySelector("details").open, words: one.querySelector(".asked").textContent })));
    assert.ok(asked.every((one) => !one.open && one.words.endsWith("?")), path);
  }
  await page.goto(`${folder}${LOIN}#step-sirloin-off`);
  for (let at = 0; at < 40 && !(await page.locator(".now.asks").count()); at += 1) await page.keyboard.press("PageDown");
  assert.match(await page.locator(".now").innerText(), /Why does the tenderloin come out before the sirloin end goes off\?/);
  assert.equal(await page.locator(".now .ask > div").isVisible(), false);
  await page.keyboard.press("Enter");
  assert.match(await page.locator(".now .ask > div").innerText(), /hip bone/);
  assert.deepEqual((await page.evaluate(measure)).cut, []);
  await page.keyboard.press("PageDown");
  await page.keyboard.press("PageUp");
  assert.equal(await page.locator(".now .ask > div").isVisible(), false, "left, it is folded again");
  await page.locator(".now summary").click();
  assert.equal(await page.locator(".now .ask > div").isVisible(), true, "a button shows it too");
  await close();
});

test("the index jumps to a step, closes by a key, and leads to the other views", async () => {
  const { page, close } = await open(browser, { width: 1280, height: 800 });
  await page.goto(folder + LOIN);
  await page.locator(".moves .place").click();
  const { low } = await page.evaluate(measure);
  assert.deepEqual(low, []);
  for (const name of ["The guide", "Bench view"]) assert.equal(await page.locator("dialog a", { hasText: name }).isVisible(), true, name);
  for (const key of ["Page Down", "Page Up", "→", "←", "↓", "↑", "Enter", "Home", "Space"]) assert.ok((await page.locator(".keys").innerText()).includes(key), `${key} is explained`);
  await page.keyboard.press("PageDown");
  assert.equal(await hash(page), "", "keys of the index stay in it");
  await page.keyboard.press("Escape");
  assert.equal(await page.locator("dialog").isVisible(), false);
  await page.locator(".moves .place").click();
  await page.locator("dialog li a", { hasText: "Saw the ribs" }).click();
  assert.equal(await hash(page), "#step-ribs-sawn");
  assert.equal(await page.locator("dialog").isVisible(), false);
  await close();
});

for (const room of ["dark", "bright"]) {
  test(`the ${room} room is kept on the device and breaks no rule of contrast, on a ${room === "dark" ? "bright" : "dark"} device too`, async () => {
    for (const [way, base] of [["http", server.address], ["folder", folder]]) {
      const { page, close } = await open(browser, { width: 1280, height: 800, scheme: room === "dark" ? "light" : "dark" });
      await page.goto(base + LOIN);
      await page.locator(`.now .${room}`).click();
      assert.equal(await page.locator(`.now .${room}`).getAttribute("aria-pressed"), "true");
      await page.reload();
      const ground = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
      assert.equal(ground, room === "dark" ? "rgb(0, 0, 0)" : "rgb(255, 255, 255)", way);
      await page.evaluate(axe);
      if (way === "folder") {
        // One picture of each kind: the opening, one step with all that a step can have, and the end.
        for (const start of ["#opening", "#step-ribs-sawn", "#done"]) for (await goTo(page, start); (await hash(page)).startsWith(start); ) {
          const { violations } = await page.evaluate(() => globalThis.axe.run({ rules: { "color-contrast-enhanced": { enabled: true }, "target-size": { enabled: true } } }));
          assert.deepEqual(violations.map((one) => `${one.id}: ${one.nodes.slice(0, 3).map((node) => node.target).join(" | ")}`), [], await hash(page));
          if (await page.locator(".moves .next").isDisabled()) break;
          await page.keyboard.press("PageDown");
        }
      }
      await close();
    }
  });
}

test("another size splits anew and keeps the same words in sight", async () => {
  const { page, close } = await open(browser, { width: 1920, height: 1080 });
  await page.goto(`${folder}${LOIN}#step-loin-lifted`);
  for (let at = 0; at < 40 && !(await page.locator(".now.cut").count()); at += 1) await page.keyboard.press("PageDown");
  await page.keyboard.press("PageDown");
  const first = await page.locator(".now .atoms > *").first().innerText(), many = await page.locator("#step-loin-lifted .pic").count();
  await page.setViewportSize({ width: 1024, height: 768 });
  await page.waitForFunction((many) => document.querySelectorAll("#step-loin-lifted .pic").length > many, many);
  assert.ok((await page.locator(".now").innerText()).includes(first));
  await page.setViewportSize({ width: 1920, height: 1080 });
  await page.waitForFunction((many) => document.querySelectorAll("#step-loin-lifted .pic").length === many, many);
  assert.ok((await page.locator(".now").innerText()).includes(first));
  await close();
});

test("without script the pictures stand below one another, in the same large letters", async () => {
  const { page, wrong, close } = await open(browser, { width: 1280, height: 800, script: false });
  for (const path of await rooms()) {
    await page.goto(folder + path);
    const all = await page.locator(".pic").evaluateAll((all) => all.map((one) => ({ seen: one.checkVisibility(), top: one.getBoundingClientRect().top, high: one.getBoundingClientRect().height, letter: parseFloat(getComputedStyle(one).fontSize) })));
    assert.ok(all.every((one, at) => one.seen && one.high >= 799 && one.letter > 46 && (at === 0 || one.top > all[at - 1].top)), path);
    assert.equal(await page.locator(".moves:visible, .choose:visible, .keys:visible").count(), 0, path);
    assert.ok((await page.locator(".index a[href^='#step-']").count()) > 0);
  }
  assert.deepEqual(wrong, []);
  await close();
});

test("on a phone and at 200 % it can still be read", async () => {
  for (const [width, height] of [[360, 740], [740, 360], [320, 640]]) {
    const { page, close } = await open(browser, { width, height });
    await page.goto(folder + LOIN);
    for (const size of ["100%", "200%"]) {
      await page.evaluate((size) => { const sheet = new CSSStyleSheet(); if (size !== "100%") sheet.replaceSync("html{font-size:max(200%,min(5.8vh,5.8vw))!important}"); document.adoptedStyleSheets = [sheet]; window.dispatchEvent(new Event("resize")); }, size);
      await page.waitForTimeout(300);
      for (let at = 0; at < 20; at += 1) {
        assert.ok((await page.evaluate(() => document.documentElement.scrollWidth)) <= width, `${width} px, ${size}, ${await hash(page)}`);
        await page.keyboard.press("PageDown");
      }
    }
    await close();
  }
});
