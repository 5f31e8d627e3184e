// Compares our index with general-purpose libraries on the same documents in one run: size, loading, hits and time in
// Node, then start-up and keystroke to result in headless Chromium with its processor slowed four times.
// First `cargo bench --bench search_index`. `node bench.mjs 200 demo` takes only these folders.
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { brotliCompressSync, gzipSync } from "node:zlib";
import { inBrowser } from "./browser.mjs";
import { libraries } from "./libraries.mjs";
import { hit, queries } from "./queries.mjs";

const target = fileURLToPath(new URL("../../target/search-bench/", import.meta.url));
const named = process.argv.slice(2);
const at = (list, share) => list[Math.min(list.length - 1, Math.floor(list.length * share))];
const sorted = (list) => [...list].sort((a, b) => a - b);
const kilo = (bytes) => `${(bytes / 1000).toFixed(bytes < 100_000 ? 1 : 0)}`;

function timed(call) {
  const begun = performance.now();
  const value = call();
  return [performance.now() - begun, value];
}

for (const folder of named.length ? named : ["200", "2000", "demo"]) {
  const path = join(target, folder);
  if (!existsSync(join(path, "documents.json"))) throw new Error(`${path} is not there: run cargo bench --bench search_index first`);
  const documents = JSON.parse(readFileSync(join(path, "documents.json"), "utf8"));
  const asked = queries(documents, folder === "demo" ? 60 : 300);
  console.log(`\n## ${folder}: ${documents.length} documents`);
  for (const make of libraries(path, documents)) {
    const [making, library] = timed(make);
    const size = (pack) => library.files.reduce((sum, text) => sum + (pack ? pack(text).length : Buffer.byteLength(text)), 0);
    console.log(`\n${library.name}: raw ${kilo(size())} kB, gz ${kilo(size((text) => gzipSync(text, { level: 9 })))} kB, br ${kilo(size(brotliCompressSync))} kB${library.page ? `, made in ${making.toFixed(0)} ms` : ""}`);
    const loads = sorted(Array.from({ length: 7 }, () => timed(library.load)[0]));
    console.log(`  Node: load ${at(loads, 0.5).toFixed(1)} ms`);
    const loaded = library.load();
    for (const [, list] of Object.entries(asked.all)) for (const { query } of list.slice(0, 20)) library.ask(loaded, query);
    let slips = 0, slipHits = 0;
    for (const [kind, list] of Object.entries(asked.all)) {
      let hits = 0;
      const times = sorted(list.map((one) => {
        const [took, found] = timed(() => library.ask(loaded, one.query));
        hits += hit(kind, one, found, asked.sets);
        return took;
      }));
      if (!kind.includes(" ")) { slips += list.length; slipHits += hits; }
      console.log(`  ${kind.padEnd(13)} hit ${(100 * hits / list.length).toFixed(1).padStart(5)} %   p50 ${at(times, 0.5).toFixed(2)} ms   p95 ${at(times, 0.95).toFixed(2)} ms`);
    }
    console.log(`  all slips     hit ${(100 * slipHits / slips).toFixed(1).padStart(5)} %`);
    const { startUp, parts, keys, work } = await inBrowser(path, library, asked.all);
    console.log(`  Chromium at a quarter of its speed: start-up ${startUp.toFixed(1)} ms${parts ? `, each further file ${parts.toFixed(1)} ms` : ""}; keystroke to result p50 ${at(keys, 0.5).toFixed(1)} ms, p95 ${at(keys, 0.95).toFixed(1)} ms, slowest ${at(keys, 1).toFixed(1)} ms; of it processor time p50 ${at(work, 0.5).toFixed(1)} ms, p95 ${at(work, 0.95).toFixed(1)} ms, most ${at(work, 1).toFixed(1)} ms (${keys.length} keys)`);
  }
}
