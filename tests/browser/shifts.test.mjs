// Nothing moves once it is painted (web.dev, Cumulative Layout Shift: good up to 0.1; here a quarter of that), on a slow
// line and a slow phone, one page of every kind.
import assert from "node:assert/strict";
import { after, before, test } from "node:test";
import { launch, onePerKind, serve } from "./demo.mjs";

let browser, server;
before(async () => { browser = await launch(); server = await serve(); });
after(async () => { await browser.close(); server.stop(); });

/** Sums what moved without the reader's doing while a page loads, with what it was. */
async function moved(address) {
  const context = await browser.newContext({ viewport: { width: 412, height: 823 }, serviceWorkers: "block" });
  const page = await context.newPage();
  await page.addInitScript(() => {
    window.moved = [];
    new PerformanceObserver((list) => list.getEntries().filter((entry) => !entry.hadRecentInput).forEach((entry) => {
      const what = entry.sources.map(({ node }) => `${node?.nodeName}.${node?.className?.baseVal ?? node?.className ?? ""}`);
      window.moved.push({ by: entry.value, what: what.join(" ") });
    })).observe({ type: "layout-shift", buffered: true });
  });
  const client = await context.newCDPSession(page);
  await client.send("Emulation.setCPUThrottlingRate", { rate: 4 });
  await client.send("Network.emulateNetworkConditions", { offline: false, latency: 150, downloadThroughput: 200_000, uploadThroughput: 90_000 });
  await page.goto(address);
  await page.waitForLoadState("networkidle");
  const found = await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(window.moved)))));
  await context.close();
  return { sum: found.reduce((sum, { by }) => sum + by, 0), what: found.map(({ by, what }) => `${by.toFixed(3)} ${what}`) };
}

test("on no kind of page anything moves while it loads, and a page that moves is found out", async () => {
  const kinds = await onePerKind();
  assert.ok(kinds.size > 10, `${kinds.size} kinds`);
  for (const [kind, path] of kinds) {
    const { sum, what } = await moved(server.address + path);
    assert.ok(sum <= 0.025, `${kind}, ${path}: ${sum.toFixed(3)}\n${what.join("\n")}`);
  }
  const restless = "<p>one</p><p>two</p><script>setTimeout(() => document.body.prepend(Object.assign(document.createElement('div'), { style: 'height:400px' })), 100)</script>";
  const { sum } = await moved(`data:text/html,${encodeURIComponent(restless)}`);
  assert.ok(sum > 0.01, `a page that moves: ${sum}`);
});
