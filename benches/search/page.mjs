// A page that holds nothing but the search box of the theme, filled as the site fills it, for measuring and for looking.
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const theme = fileURLToPath(new URL("../../themes/paper/", import.meta.url));
const read = (path) => readFileSync(join(theme, path), "utf8");

/** The words of the theme, of which each value is one line. */
function words() {
  return Object.fromEntries([...read("words/en.ftl").matchAll(/^([a-z-]+) = (.+)$/gm)].map(([, id, text]) => [id, text]));
}

/** The component of the box with its values filled in. */
export function box(search) {
  const all = words();
  const word = (id, given = "") => {
    if (!all[id]) throw new Error(`the word ${id} is missing`);
    const values = Object.fromEntries([...given.matchAll(/(\w+)="([^"]*)"/g)].map(([, name, value]) => [name, value]));
    return all[id].replace(/\{ \$(\w+) \}/g, (_, name) => values[name]);
  };
  const [, inner] = read("templates/search_box.html").match(/\{% component .*?-%\}([^]*)\{%- endcomponent/);
  const fill = (text, names) => text
    .replace(/\{% for (\w+) in search\.(\w+) %\}([^]*?)\{% endfor %\}/g, (_, name, list, each) => search[list].map((value) => fill(each, { [name]: value })).join(""))
    .replace(/\{\{ "([a-z-]+)" \| word(\([^)]*\))? \}\}/g, (_, id, given) => word(id, given))
    .replace(/\{\{ \("([a-z-]+)" ~ (\w+)\) \| word \}\}/g, (_, start, name) => word(start + names[name]))
    .replace(/\{\{ ([\w.]+) \}\}/g, (_, path) => path.split(".").reduce((value, name) => value[name], names));
  return fill(inner, { search });
}

/** Writes the page into a folder whose `assets` hold the index; `name` is its path there. */
export function page(folder, name, species, kinds) {
  const root = "../".repeat(name.split("/").length - 1);
  for (const script of ["search.js", "search-box.js"]) writeFileSync(join(folder, "assets", script), read(`assets/${script}`));
  const style = read("styles/base.css") + read("styles/search.css");
  const source = `'sha256-${createHash("sha256").update(style).digest("base64")}'`;
  const search = { index: `${root}assets/search-index.js`, root, list: `${root}list.html`, species: species.map((id) => ({ id, name: id[0].toUpperCase() + id.slice(1) })), kinds };
  const html = `<!doctype html><html lang="en"><head><meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src ${source}; script-src 'self'; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width,initial-scale=1"><title>Search</title><style>${style}</style>
<script src="${root}assets/search.js" defer></script><script src="${root}assets/search-box.js" defer></script></head>
<body><main id="main"><h1>Cutting book</h1>
${box(search)}
</main></body></html>`;
  mkdirSync(join(folder, name, ".."), { recursive: true });
  writeFileSync(join(folder, name), html);
}
