// Guides for machines are read as machines do: expanded by a library for JSON-LD 1.1 (W3C, 2020), each term held against
// the vocabulary of schema.org, and each figure against the guide that people read. Nothing is fetched: the context below
// says what the terms mean, and a term that is not in it is an error.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, test } from "node:test";
import jsonld from "jsonld";
import { files, folder, launch, open, site } from "./demo.mjs";
import { holds, isA, size, takes } from "./vocabulary.mjs";

const schema = "http://schema.org/";
/** Terms whose value is a link, which the context of schema.org says too. */
const links = ["url"];
const terms = ["HowTo", "HowToStep", "HowToSupply", "HowToTool", "ImageObject", "Organization", "identifier", "name", "description", "inLanguage", "version",
  "dateModified", "creativeWorkStatus", "publisher", "image", "caption", "prepTime", "performTime", "totalTime", "supply", "tool", "requiredQuantity", "yield",
  "step", "position", "text"];
const context = { "@context": Object.fromEntries([...terms.map((term) => [term, schema + term]), ...links.map((term) => [term, { "@id": schema + term, "@type": "@id" }])]) };

/** Gives the context above for that of schema.org, and nothing for any other address. */
const documentLoader = async (address) => {
  assert.equal(address, "https://schema.org", "nothing else is asked for");
  return { contextUrl: null, documentUrl: address, document: context };
};

const expand = (data, base) => jsonld.expand(data, { documentLoader, base, safe: true });

let browser, guides;
before(async () => {
  browser = await launch();
  guides = (await files()).filter((file) => file.endsWith(".jsonld")).map((file) => [file, JSON.parse(readFileSync(join(site, file), "utf8"))]);
  assert.ok(guides.length >= 8, `${guides.length} guides`);
});
after(() => browser.close());

/** Every key of a document but those of JSON-LD itself. */
function keys(value) {
  if (Array.isArray(value)) return value.flatMap(keys);
  if (value === null || typeof value !== "object") return [];
  return Object.entries(value).flatMap(([key, inner]) => [...(key.startsWith("@") ? [] : [key]), ...keys(inner)]);
}

test("every term of every guide means a term of schema.org, and none is dropped", async () => {
  for (const [file, data] of guides) {
    const expanded = await expand(data, `https://guides.example.org/${file}`);
    assert.equal(expanded.length, 1, file);
    const meant = keys(expanded);
    assert.deepEqual(meant.filter((key) => !key.startsWith(schema)), [], file);
    assert.deepEqual(meant.map((key) => key.slice(schema.length)).sort(), keys(data).sort(), `${file}: as many as were written`);
    assert.deepEqual(expanded[0]["@type"], [`${schema}HowTo`], file);
  }
});

test("a term that schema.org does not know is found out", async () => {
  const data = { "@context": "https://schema.org", "@type": "HowTo", name: "Leg", hazard: "knife" };
  await assert.rejects(expand(data, "https://guides.example.org/leg.jsonld"), /safe mode/i);
  assert.deepEqual(misused({ "@type": "HowTo", hazard: "knife", step: 3, performTime: "PT9M", supply: { "@type": "HowToTool", name: "x" } }),
    ["HowTo has no hazard", "HowTo.step takes no number", "HowTo.supply takes no HowToTool"]);
});

/** Every property that its type does not have, and every value that its property does not take, in words. */
function misused(node) {
  const type = node["@type"];
  return Object.entries(node).filter(([key]) => !key.startsWith("@")).flatMap(([property, values]) => {
    const taken = takes(type, property);
    if (taken === undefined) return [`${type} has no ${property}`];
    return [values].flat().flatMap((value) => {
      if (typeof value !== "object") return taken.some((one) => holds(one, typeof value)) ? [] : [`${type}.${property} takes no ${typeof value}`];
      return [...(taken.some((one) => isA(value["@type"], one)) ? [] : [`${type}.${property} takes no ${value["@type"]}`]), ...misused(value)];
    });
  });
}

test("each property is one of its type, and each value one that the property takes", () => {
  assert.ok(size > 800, `${size} types in the vocabulary`);
  for (const [file, data] of guides) assert.deepEqual(misused(data), [], file);
});

/** Minutes of a duration (ISO 8601-1:2019, 5.5.2), as all that a guide can need. */
function minutes(duration) {
  const parts = /^PT(?=\d)(?:(\d+)H)?(?:(\d+(?:\.\d+)?)M)?$/.exec(duration);
  assert.ok(parts, `${duration} is a duration in hours and minutes`);
  return Number(parts[1] ?? 0) * 60 + Number(parts[2] ?? 0);
}

/** The longest time that a text of the guide names: `18.5–42.0 min`. */
const longest = (text) => Number(/([\d.]+)\s*min/.exec(text)[1]);
const plain = (text) => text.replaceAll(/\s+/g, " ").trim();

test("what machines read is what the guide says: steps in order, times, weights, shares, revision", async () => {
  const { page, close } = await open(browser, { script: false });
  for (const [file, data] of guides) {
    await page.goto(folder + file.replace(/jsonld$/, "html"));
    const guide = await page.evaluate(() => {
      const text = (element) => element?.textContent ?? "";
      const fact = (name) => [...document.querySelectorAll(".facts > div")].find((part) => text(part.querySelector("dt")) === name)?.querySelector("dd");
      return {
        title: text(document.querySelector("h1")),
        lead: text(document.querySelector(".lead")),
        start: text(fact("Start")?.querySelector("a, span") ?? fact("Start")?.firstChild),
        weight: text(fact("Start")?.querySelector("small")),
        time: text(fact("Time")?.firstChild),
        beside: [...(fact("Time")?.querySelectorAll("small") ?? [])].map(text),
        date: document.querySelector(".control time").getAttribute("datetime"),
        control: Object.fromEntries([...document.querySelectorAll(".control > div")].map((part) => [text(part.querySelector("dt")), text(part.querySelector("dd"))])),
        steps: [...document.querySelectorAll("li.step")].map((step) => ({ id: step.id, name: text(step.querySelector("h3 span")), acts: [...step.querySelectorAll(".do li, .do p")].filter((part) => part.querySelector("li, p") === null).map(text), avoid: [...step.querySelectorAll(".caution strong")].map(text) })),
        rows: [...document.querySelectorAll("table.figures tbody tr:not(.sum)")].map((row) => [text(row.querySelector("th")), ...[...row.querySelectorAll("td")].map(text)]),
      };
    });
    assert.equal(plain(data.name), plain(guide.title), file);
    assert.equal(plain(data.description), plain(guide.lead.replaceAll(/([.!?])(?=\p{Lu})/gu, "$1 ")), file);
    assert.deepEqual([data.identifier, data.version, data.dateModified], [guide.control.Guide, guide.control.Revision, guide.date], file);
    assert.equal({ "in force": "Published", draft: "Draft", withdrawn: "Obsolete" }[guide.control.State], data.creativeWorkStatus, file);

    assert.deepEqual(data.step.map(({ position }) => position), guide.steps.map((_, at) => at + 1), `${file}: positions`);
    assert.deepEqual(data.step.map(({ name }) => plain(name)), guide.steps.map(({ name }) => plain(name)), `${file}: names`);
    for (const [at, step] of data.step.entries()) {
      assert.ok(step.url.endsWith(`#${guide.steps[at].id}`), `${file}: ${step.url}`);
      const said = plain(step.text);
      const act = said.indexOf(plain(guide.steps[at].acts.join(" ")));
      assert.ok(act > 0 && guide.steps[at].acts.length > 0, `${file}, step ${at + 1}: its sentences in their order`);
      for (const avoid of guide.steps[at].avoid) assert.ok(said.slice(0, act).includes(plain(avoid)), `${file}, step ${at + 1}: the caution before the act`);
    }

    const [set, clean] = [/set-up/, /clean-up/].map((kind) => longest(guide.beside.find((text) => kind.test(text))));
    assert.deepEqual([data.prepTime, data.performTime, data.totalTime].map(minutes), [set, longest(guide.time), set + longest(guide.time) + clean], `${file}: times`);
    const [supply] = data.supply;
    assert.equal(plain(supply.name), plain(guide.start), file);
    assert.ok(plain(guide.weight).startsWith(plain(supply.requiredQuantity)), `${file}: ${supply.requiredQuantity} of ${guide.weight}`);

    // Rows without a name of their own are what is lost on the way, which machines are not told of as a piece.
    const rows = guide.rows.filter(([name, ...cells]) => cells.length >= 6 && !/lost on the way/.test(name));
    assert.equal(data.yield.length, rows.length, `${file}: as many final pieces`);
    for (const piece of data.yield) {
      const [, name, low, high] = /^(.*) ([\d.]+)–([\d.]+)\s%$/.exec(piece) ?? /^(.*) (([\d.]+))\s%$/.exec(piece);
      const row = rows.find(([head]) => plain(head).toLowerCase().endsWith(plain(name).toLowerCase()));
      assert.ok(row, `${file}: ${name} stands in the table`);
      assert.deepEqual([row[4], row[6]].map(Number), [low, high].map(Number), `${file}: ${piece}`);
    }
  }
  await close();
});
