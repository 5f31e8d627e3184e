// Every page, drawing and style sheet of the demo is valid: the Nu HTML Checker finds no error and warns of nothing.
import assert from "node:assert/strict";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { after, before, test } from "node:test";
import { files, serve, site } from "./demo.mjs";
import { complaints, told } from "./markup.mjs";

// Three documents at fault, so that a checker that says nothing of anything is found out.
const broken = {
  "page.html": ["<!doctype html><html lang=en><title>Leg</title><p id=a>One<p id=a>Two", /Duplicate ID/],
  "drawing.svg": ['<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><rct width="9"/></svg>', /rct/],
  "style.css": ["p { colr: red }", /colr/],
};

let server, scratch;
before(async () => { server = await serve(); scratch = mkdtempSync(join(tmpdir(), "seamwise-markup-")); });
after(() => { server.stop(); rmSync(scratch, { recursive: true }); });

test("no page, drawing or style sheet has an error or a warning, and documents at fault are found out", async () => {
  for (const [name, [text]] of Object.entries(broken)) writeFileSync(join(scratch, name), text);
  const all = await files();
  const pages = all.filter((file) => file.endsWith(".html")).map((file) => server.address + file);
  const drawings = all.filter((file) => /\.(svg|css)$/.test(file)).map((file) => join(site, file));
  assert.ok(pages.length > 40 && drawings.length > 30, `${pages.length} pages, ${drawings.length} drawings`);
  const messages = await complaints([...Object.keys(broken).map((name) => join(scratch, name)), ...pages, ...drawings]);
  const folder = pathToFileURL(scratch).pathname;
  const ours = (url) => !url.includes(folder);
  const found = messages.filter(({ url }) => ours(url));
  assert.deepEqual(found.slice(0, 20).map(told), [], `${found.length} in all`);
  for (const [name, [, expected]] of Object.entries(broken)) {
    assert.ok(messages.some(({ url, message }) => url.endsWith(`${folder}/${name}`) && expected.test(message)), `${name} is at fault`);
  }
});
