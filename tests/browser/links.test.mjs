// Links that no page shows: those of files for machines, of the search index and of the list of pages. And the judge of
// links itself, on links at fault.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { appendFileSync, cpSync, existsSync, mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { readdir } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { after, before, test } from "node:test";
import { fileURLToPath } from "node:url";
import { createContext, runInContext } from "node:vm";
import { files, guides, launch, open, pages, site } from "./demo.mjs";
import { deadEnds, leadsNowhere, unfit } from "./links.mjs";

const root = fileURLToPath(new URL("../../", import.meta.url));
const read = (path, from = site) => readFileSync(join(from, path), "utf8");

/** The ids of every page, read from its text. */
const idsIn = (text) => [...text.matchAll(/\sid=(?:"([^"]+)"|([^\s">]+))/g)].map(([, quoted, bare]) => quoted ?? bare);

let scratch;
before(() => { scratch = mkdtempSync(join(tmpdir(), "seamwise-links-")); });
after(() => rmSync(scratch, { recursive: true }));

/** Where a link of a file leads, from the root of the site. */
const from = (file, link) => new URL(link, `http://site/${file}`).href.slice("http://site/".length);

test("the judge of links finds links at fault", () => {
  const base = "http://127.0.0.1:9/";
  const judged = (raw, element = "a", to = new URL(raw, `${base}guides/leg.html`).href) => {
    const found = new Map([["guides/leg.html", { links: [{ element, raw, to }], named: [], ids: ["steps"] }]]);
    return deadEnds(found, base, ["guides/leg.html", "guides/leg.csv", "index.html"]).join();
  };
  for (const sound of ["leg.html", "#steps", "leg.html#steps", "../index.html", "leg.csv", "https://example.org/a?b#c"]) assert.equal(judged(sound), "", sound);
  for (const [link, why] of [["loin.html", /not there/], ["#step", /no place/], ["leg.csv#steps", /no page/], ["../", /names no file/], ["/index.html", /not relative/],
    [`${base}index.html`, /not relative/], ["http://example.org/", /not https/], ["https://localhost/", /no host/], ["https://me@example.org/", /a name/],
    ["https://example.org/a b", /encoded/], ["javascript:void 0", /not https/]]) assert.match(judged(link), why, link);
  assert.match(judged("https://example.org/x.js", "script"), /elsewhere/);
  const twice = new Map([["index.html", { links: [], named: ["gone"], ids: ["a", "a"] }]]);
  assert.deepEqual(deadEnds(twice, base, []), ["index.html: nothing has the id gone", "index.html: the id a twice"]);
});

test("guides for machines lead to pages, steps and pictures that are there", async () => {
  const there = new Set(await files());
  let seen = 0;
  for (const file of [...there].filter((file) => file.endsWith(".jsonld"))) {
    JSON.parse(read(file), (key, value) => {
      if (key !== "url") return value;
      seen += 1;
      assert.equal(leadsNowhere(from(file, value), there, (page) => idsIn(read(page))), "", `${file}: ${value}`);
      return value;
    });
  }
  assert.ok(seen > 50, `${seen} links`);
});

test("every guide and piece that a table names as a file has its page or its place", async () => {
  const there = new Set(await files());
  const pieces = new Set(idsIn(read("pieces/index.html")));
  let seen = 0;
  for (const file of [...there].filter((file) => /^tables\/.*\.csv$/.test(file))) {
    const [head, ...rows] = read(file).trim().split(/\r?\n/).map((row) => row.split(","));
    for (const row of rows) {
      const of = (name) => row[head.indexOf(name)];
      if (of("table") === "procedure") assert.ok(there.has(`guides/${of("id")}.html`), `${file}: the guide ${of("id")}`);
      for (const piece of [of("start"), of("piece")].filter((piece) => piece && piece !== "loss")) assert.ok(pieces.has(`piece-${piece}`), `${file}: the piece ${piece}`);
      seen += 1;
    }
    const data = JSON.parse(read(file.replace(/csv$/, "json")));
    for (const { id } of data.procedures ?? []) assert.ok(there.has(`guides/${id}.html`), `${file}: the guide ${id}`);
  }
  assert.ok(seen > 100, `${seen} rows`);
});

test("every record of the search index leads to a page and a place that are there", async () => {
  const all = await files();
  const context = createContext({});
  for (const file of all.filter((file) => /^assets\/search\.[^/]*js$/.test(file))) runInContext(read(file), context);
  // The index comes first; lists and pages that lie in files of their own may be read in any order after it.
  for (const file of all.filter((file) => file.startsWith("search/")).sort((one, other) => Number(other.includes("index")) - Number(one.includes("index")))) runInContext(read(file), context);
  const { seamwiseSearch, seamwiseIndex } = context;
  const index = seamwiseSearch.open(seamwiseIndex);
  const there = new Set(all);
  const known = new Map();
  const ids = (page) => known.get(page) ?? known.set(page, idsIn(read(page))).get(page);
  assert.ok(seamwiseIndex.records > 200, `${seamwiseIndex.records} records`);
  for (let record = 0; record < seamwiseIndex.records; record += 1) {
    const { title, url } = seamwiseSearch.shown(index, record);
    assert.equal(leadsNowhere(from("index.html", url), there, ids), "", `${title}: ${url}`);
  }
});

test("what the site says of itself as an app leads to files that are there", async () => {
  const there = new Set(await files());
  for (const file of [...there].filter((file) => file.endsWith(".webmanifest"))) {
    const { start_url: start, icons = [], shortcuts = [] } = JSON.parse(read(file));
    for (const link of [start, ...icons.map(({ src }) => src), ...shortcuts.map(({ url }) => url)]) {
      assert.equal(leadsNowhere(from(file, link), there, (page) => idsIn(read(page))), "", `${file}: ${link}`);
    }
  }
});

/** The program, as it was built last. */
function program() {
  const target = process.env.CARGO_TARGET_DIR ?? join(root, "target");
  const built = ["release", "debug"].map((kind) => join(target, kind, "seamwise")).filter((file) => existsSync(file));
  assert.ok(built.length > 0, "build the program first: cargo build --release");
  return built.sort((one, other) => statSync(other).mtimeMs - statSync(one).mtimeMs)[0];
}

test("with an address, the list of pages names each page once, each page its own address, and guides for machines whole addresses", async () => {
  const [book, to] = [join(scratch, "book"), join(scratch, "site")];
  cpSync(join(root, "procedures"), book, { recursive: true });
  const address = "https://guides.example.org/the-yard";
  appendFileSync(join(book, "guidebook.yaml"), `\nsite: ${address}/\n`);
  execFileSync(program(), ["publish", "--to", to, book], { stdio: ["ignore", "ignore", "inherit"] });
  const made = (await readdir(to, { recursive: true, withFileTypes: true })).filter((entry) => entry.isFile()).map((entry) => relative(to, join(entry.parentPath, entry.name)));
  const there = new Set(made);

  // Sitemaps XML format, protocol 0.9 (sitemaps.org, 2008): urlset of url, each with its loc, lastmod a W3C date.
  const browser = await launch();
  const { page, close } = await open(browser);
  const list = await page.evaluate((text) => {
    const xml = new DOMParser().parseFromString(text, "application/xml");
    return {
      root: `{${xml.documentElement.namespaceURI}}${xml.documentElement.localName}`,
      urls: [...xml.documentElement.children].map((url) => [...url.children].map((part) => [part.localName, part.textContent])),
    };
  }, read("sitemap.xml", to));
  await close();
  await browser.close();
  assert.equal(list.root, "{http://www.sitemaps.org/schemas/sitemap/0.9}urlset");
  for (const parts of list.urls) {
    assert.deepEqual(parts.map(([name]) => name).filter((name) => !["loc", "lastmod"].includes(name)), []);
    for (const [name, text] of parts) if (name === "lastmod") assert.match(text, /^\d{4}-\d{2}-\d{2}$/);
  }
  const locations = list.urls.map((parts) => Object.fromEntries(parts).loc);
  assert.deepEqual(locations.map((loc) => decodeURIComponent(loc)).sort(), made.filter((file) => file.endsWith(".html")).map((file) => `${address}/${file}`).sort());
  for (const location of locations) {
    const text = read(decodeURIComponent(location.slice(address.length + 1)), to);
    // Marks around a value may be left out where HTML lets one leave them out.
    assert.ok(text.replace(/"/g, "").includes(`<link rel=canonical href=${location}>`), `${location} names itself`);
    assert.equal(unfit({ element: "a", raw: location, to: location }), "");
  }
  for (const file of made.filter((file) => file.endsWith(".jsonld"))) {
    JSON.parse(read(file, to), (key, value) => {
      if (key !== "url") return value;
      assert.ok(value.startsWith(`${address}/`), `${file}: ${value} is a whole address`);
      assert.equal(leadsNowhere(value.slice(address.length + 1), there, (page) => idsIn(read(page, to))), "", `${file}: ${value}`);
      return value;
    });
  }
});

test("no two pages have the same title, and each guide is told by its own words", async () => {
  const titles = new Map();
  for (const path of await pages()) {
    const [, title] = read(path).match(/<title>([^<]*)<\/title>/);
    titles.set(title, [...(titles.get(title) ?? []), path]);
  }
  // A guide and its chain may be called the same by their author; two pages of one kind may not.
  const kind = (path) => path.split("/").slice(0, -1).join("/");
  for (const [title, paths] of titles) assert.equal(new Set(paths.map(kind)).size, paths.length, `${title}: ${paths.join(", ")}`);
  const told = (await guides()).map((path) => read(path).match(/<meta name="?description"? content="([^"]*)">/)[1]);
  assert.equal(new Set(told).size, told.length, "descriptions of guides");
});
