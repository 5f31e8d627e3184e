// The libraries that are compared, each behind the same three calls: make an index as text, load it, ask it.
import { readFileSync, readdirSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { createContext, runInContext } from "node:vm";
import lunr from "lunr";
import MiniSearch from "minisearch";

const require = createRequire(import.meta.url);
const script = readFileSync(fileURLToPath(new URL("../../themes/paper/assets/search.js", import.meta.url)), "utf8");
const options = { fields: ["title", "names", "text"], storeFields: ["title", "url", "context"], searchOptions: { boost: { title: 8, names: 6 }, prefix: true, fuzzy: 0.2, combineWith: "AND" } };

function ours(folder) {
  const names = readdirSync(join(folder, "assets")).filter((name) => /^search-(index|lists|texts)/.test(name)).sort();
  const files = new Map(names.map((name) => [name, readFileSync(join(folder, "assets", name), "utf8")]));
  return {
    name: "ours", files: [...files.values()],
    load() {
      const context = createContext({});
      runInContext(script, context);
      runInContext(files.get("search-index.js"), context);
      return { context, index: context.seamwiseSearch.open(context.seamwiseIndex) };
    },
    // Files that are missing are read within the call, as the first such keystroke has to.
    ask({ context, index }, query) {
      for (;;) {
        const answer = context.seamwiseSearch.find(index, query);
        if (!answer.missing) return answer.hits.slice(0, 10).map((hit) => hit.record);
        for (const name of answer.missing) runInContext(files.get(name), context);
      }
    },
    page: null,
  };
}

function mini(folder, documents) {
  const search = new MiniSearch(options);
  search.addAll(documents);
  const text = JSON.stringify(search);
  return {
    name: "minisearch 7.2.0 (prefix, fuzzy .2, AND)", files: [text],
    load: () => MiniSearch.loadJSON(text, options),
    ask: (search, query) => search.search(query).slice(0, 10).map((hit) => hit.id),
    page: { library: readFileSync(require.resolve("minisearch").replace(/cjs.index\.cjs$/, "umd/index.js"), "utf8"),
      load: `(text) => MiniSearch.loadJSON(text, ${JSON.stringify(options)})`,
      ask: "(search, query) => search.search(query).slice(0, 10)" },
  };
}

function lunrBy(name, stemmed, documents) {
  const index = lunr(function () {
    if (!stemmed) { this.pipeline.remove(lunr.stemmer); this.searchPipeline.remove(lunr.stemmer); }
    this.ref("id");
    this.field("title", { boost: 8 });
    this.field("names", { boost: 6 });
    this.field("text");
    for (const document of documents) this.add(document);
  });
  // lunr stores no texts: what is shown must be carried beside it.
  const text = JSON.stringify({ index, shown: documents.map(({ title, url, context }) => [title, url, context]) });
  const asked = `(search, query) => search.index.query((all) => {
    for (const word of query.toLowerCase().split(/\\s+/).filter(Boolean)) {
      all.term(word, { boost: 100 });
      all.term(word, { boost: 10, wildcard: lunr.Query.wildcard.TRAILING, usePipeline: false });
      all.term(word, { boost: 1, editDistance: 1, usePipeline: false });
    }
  }).slice(0, 10).map((hit) => ({ id: Number(hit.ref), title: search.shown[hit.ref][0], url: search.shown[hit.ref][1], context: search.shown[hit.ref][2] }))`;
  const load = "(text) => { const all = JSON.parse(text); return { index: lunr.Index.load(all.index), shown: all.shown }; }";
  const call = new Function("lunr", `return ${asked}`)(lunr);
  return {
    name, files: [text],
    load: () => new Function("lunr", `return ${load}`)(lunr)(text),
    ask: (search, query) => call(search, query).map((hit) => hit.id),
    page: { library: readFileSync(require.resolve("lunr"), "utf8"), load, ask: asked },
  };
}

/** All libraries for the documents of a folder. */
export function* libraries(folder, documents) {
  yield () => ours(folder);
  yield () => mini(folder, documents);
  yield () => lunrBy("lunr 2.3.9 (stemmed)", true, documents);
  yield () => lunrBy("lunr 2.3.9 (no stemmer)", false, documents);
}
