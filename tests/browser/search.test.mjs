// The theme's search script, read without a page, gives the very answers of the second reading of its rules, which
// `cargo test --test search` has left in the build folder.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { fileURLToPath } from "node:url";
import { createContext, runInContext } from "node:vm";

const root = new URL("../../", import.meta.url);
const target = process.env.CARGO_TARGET_DIR ?? fileURLToPath(new URL("target", root));
const script = readFileSync(new URL("themes/paper/assets/search.js", root), "utf8");
const answers = JSON.parse(readFileSync([target, "tmp", "search", "answers.json"].join("/"), "utf8"));

/** A script world of its own with the search script in it and the first file of an index. */
function world(files) {
  const context = createContext({});
  runInContext(script, context);
  runInContext(files.get([...files.keys()][0]), context);
  return context;
}

/** Asks until no file is missing, as the page does; gives back how many files had to be read. */
function ask(context, files, call) {
  for (let read = 0; ; read += 1) {
    const answer = call();
    if (answer.missing === undefined) return { answer, read };
    assert.ok(read < 20, "each missing file is read once");
    for (const name of [answer.missing].flat()) runInContext(files.get(name), context);
  }
}

test("words are cut as the index has them", () => {
  const { seamwiseSearch } = world(new Map([["search-index.js", ""]]));
  for (const [text, words] of answers.words) assert.deepEqual([...seamwiseSearch.words(text)], words, JSON.stringify(text));
});

for (const { name, scripts, queries } of answers.cases) {
  test(`${name}: ${queries.length} queries find, rank and mend as they should`, () => {
    const files = new Map(scripts);
    const context = world(files);
    const { seamwiseSearch } = context;
    const index = seamwiseSearch.open(context.seamwiseIndex);
    let most = 0;
    for (const expected of queries) {
      const filters = { species: expected.species, kinds: expected.kinds };
      const { answer, read } = ask(context, files, () => seamwiseSearch.find(index, expected.typed, filters));
      most = Math.max(most, read);
      const hits = answer.hits.slice(0, 20).map(({ record, score }) => {
        const { answer: item } = ask(context, files, () => seamwiseSearch.shown(index, record));
        const names = seamwiseSearch.answering(item, answer.words).map((other) => [other.region, other.name]);
        return { record, score, title: item.title, url: item.url, step: `${item.step || ""}${item.state}`, context: item.context, names };
      });
      const got = { typed: expected.typed, species: expected.species, kinds: expected.kinds, hits, found: answer.hits.length, total: answer.total,
        all: answer.all, instead: answer.instead };
      assert.deepEqual(JSON.parse(JSON.stringify(got)), expected, `query ${JSON.stringify(expected.typed)}`);
    }
    assert.equal(most > 0, name.endsWith("parted"), "files are read on demand where the index is parted, and only there");
  });
}
