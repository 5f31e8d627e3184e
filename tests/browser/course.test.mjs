// What is done of a course is kept on the device, and the next lesson is named.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { folder, launch, open } from "./demo.mjs";

let browser;
before(async () => { browser = await launch(); });
after(async () => { await browser.close(); });

test("a lesson that is ticked stays so, and the next one is named", async () => {
  const { page, close } = await open(browser);
  await page.goto(`${folder}courses/first-six-months.html`);
  const next = page.locator(".next a"), ticks = page.locator(".tick button");
  assert.match(await next.textContent(), /^1\. /);
  const box = await ticks.first().boundingBox();
  assert.ok(box.height >= 96 && box.width >= 96, `Done is ${box.width}×${box.height}`);
  await ticks.nth(0).click();
  assert.match(await next.textContent(), /^2\. /);
  await page.reload();
  assert.equal(await ticks.nth(0).getAttribute("aria-pressed"), "true");
  assert.match(await next.textContent(), /^2\. /);
  await next.click();
  assert.match(page.url(), /#lesson-2$/);
  for (let at = 1; at < await ticks.count(); at += 1) await ticks.nth(at).click();
  assert.equal(await page.locator(".next").textContent(), "Every lesson is done.");
  await ticks.nth(0).click();
  assert.match(await next.textContent(), /^1\. /);
  await close();
});
