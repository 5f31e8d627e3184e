// Lighthouse gives one page of every kind full marks for accessibility, best practice and being found.
import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { createServer } from "node:http";
import { after, before, test } from "node:test";
import { fileURLToPath } from "node:url";
import RobotsTxt from "lighthouse/core/audits/seo/robots-txt.js";
import { onePerKind, serve } from "./demo.mjs";

// A page at fault, so that an audit that finds nothing is found out; it is looked at in the same go.
const poorly = "<!doctype html><html><head><meta name=robots content=noindex></head><body><img src='data:image/gif;base64,R0lGODlhAQABAAAAACw='><a href=x>here</a></body></html>";

let server, poor;
before(async () => {
  server = await serve();
  poor = createServer((_, response) => response.writeHead(200, { "content-type": "text/html" }).end(poorly));
  await new Promise((ready) => poor.listen(0, "127.0.0.1", ready));
});
after(() => { server.stop(); poor.close(); });

/** Runs audits.mjs over addresses, in as many processes as are asked for; they wait more than they reckon. */
async function audited(addresses, processes = 3) {
  const shares = Array.from({ length: processes }, (_, at) => addresses.filter((_, place) => place % processes === at)).filter((share) => share.length > 0);
  const told = await Promise.all(shares.map(async (share) => {
    const run = spawn(process.execPath, [fileURLToPath(new URL("audits.mjs", import.meta.url)), ...share], { stdio: ["ignore", "pipe", "inherit"] });
    let text = "";
    run.stdout.on("data", (part) => { text += part; });
    const status = await new Promise((ended, failed) => { run.on("error", failed); run.on("close", ended); });
    assert.equal(status, 0, `audits of ${share.join(", ")}`);
    return text.trim().split("\n").map((line) => JSON.parse(line));
  }));
  return told.flat();
}

test("one page of every kind has 1.00 for accessibility, best practice and being found, and a page at fault has not", async () => {
  const chosen = [...(await onePerKind()).values()].map((path) => server.address + path);
  const fault = `http://127.0.0.1:${poor.address().port}/`;
  const found = new Map((await audited([fault, ...chosen])).map((one) => [one.address, one]));
  assert.deepEqual([...found.keys()].sort(), [fault, ...chosen].sort());
  for (const address of chosen) {
    const { scores, audits, below, failed } = found.get(address);
    assert.equal(failed, "", address);
    assert.deepEqual(below, [], address);
    assert.deepEqual(scores, { accessibility: 1, "best-practices": 1, seo: 1 }, address);
    assert.ok(audits > 30, `${address}: ${audits} audits`);
  }
  const { scores, below } = found.get(fault);
  for (const [category, score] of Object.entries(scores)) assert.ok(score < 1, `${category} of a page at fault: ${score}`);
  for (const audit of ["image-alt", "html-has-lang", "meta-description", "is-crawlable"]) assert.ok(below.some((text) => text.startsWith(`${audit}:`)), audit);
});

test("machines that look for pages are not turned away", async () => {
  // The rule of Lighthouse for robots.txt, on what the site answers; a site in a folder of a host has none of its own.
  const answer = await fetch(new URL("/robots.txt", server.address));
  const robots = { status: answer.status, content: answer.ok ? await answer.text() : null };
  const { score, notApplicable } = RobotsTxt.audit({ RobotsTxt: robots });
  assert.ok(score === 1, `robots.txt: ${JSON.stringify(robots)}`);
  assert.equal(notApplicable ?? false, !answer.ok);
});
