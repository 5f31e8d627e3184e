// Sites made for a test from the demo's guidebook with a few lines changed, by the program that was built last.
import { execFileSync } from "node:child_process";
import { cpSync, existsSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const project = fileURLToPath(new URL("../../", import.meta.url));

/** The program: the one named, else the newest that was built. */
function program() {
  if (process.env.SEAMWISE) return process.env.SEAMWISE;
  const built = ["release", "debug"].map((kind) => join(project, "target", kind, "seamwise")).filter((path) => existsSync(path));
  if (built.length === 0) throw new Error("build the program first: cargo build");
  return built.sort((one, other) => statSync(other).mtimeMs - statSync(one).mtimeMs)[0];
}

/**
 * Copies the demo's guidebook into a folder, changes files of it, and publishes it.
 * `changes`: path of a file to a list of [text, other text]; every text must be there.
 * Gives back the path of the site.
 */
export function madeSite(folder, changes) {
  const book = join(folder, "procedures");
  cpSync(join(project, "procedures"), book, { recursive: true });
  for (const [path, replacements] of Object.entries(changes)) {
    let text = readFileSync(join(book, path), "utf8");
    for (const [from, to] of replacements) {
      if (!text.includes(from)) throw new Error(`${path} does not hold: ${from}`);
      text = text.replace(from, () => to);
    }
    writeFileSync(join(book, path), text);
  }
  const site = join(folder, "site");
  execFileSync(program(), ["publish", book, "--to", site], { stdio: ["ignore", "ignore", "inherit"] });
  return site;
}
