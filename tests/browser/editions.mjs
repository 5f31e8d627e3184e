// What the tests of keeping the site share: guidebooks changed in a folder of their own, published by the program.
import { execFile } from "node:child_process";
import { cp, mkdtemp, readFile, rm, writeFile, mkdir } from "node:fs/promises";
import { existsSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";

const root = fileURLToPath(new URL("../../", import.meta.url));
const built = ["target/debug/seamwise", "target/release/seamwise"].map((path) => join(root, path)).find(existsSync);
const program = process.env.SEAMWISE ?? built;

let first = null;

async function published(book, to) {
  if (!program) throw new Error("build the program first: cargo build");
  await promisify(execFile)(program, ["publish", book, "--to", to]);
}

/** A copy of the demo guidebook in a folder of its own, which can be changed and published into `site` beside it. */
export async function workshop() {
  const folder = await mkdtemp(join(tmpdir(), "seamwise-editions-"));
  const book = join(folder, "procedures"), site = join(folder, "site");
  await cp(join(root, "procedures"), book, { recursive: true });
  return {
    site,
    /** Replaces a text of a file, which must stand there. */
    async change(path, from, to) {
      const text = await readFile(join(book, path), "utf8");
      if (!text.includes(from)) throw new Error(`${path} does not hold ${from}`);
      await writeFile(join(book, path), text.replace(from, to));
    },
    read: (path) => readFile(join(book, path), "utf8"),
    /** The published files with their hashes. */
    async list() {
      const lines = (await readFile(join(site, "seamwise-files.txt"), "utf8")).trim().split("\n").slice(1);
      return new Map(lines.map((line) => line.split("  ").reverse()));
    },
    /** Puts something else where a page was published. */
    spoil: (path) => writeFile(join(site, path), "<!doctype html><title>half a page"),
    async write(path, text) {
      await mkdir(dirname(join(book, path)), { recursive: true });
      await writeFile(join(book, path), text);
    },
    async append(path, text) { await writeFile(join(book, path), (await readFile(join(book, path), "utf8")) + text); },
    /** Publishes the demo as it is: once for all workshops, and copied to each. */
    async publishFirst() {
      first ??= (async () => { const to = join(await mkdtemp(join(tmpdir(), "seamwise-first-")), "site"); process.on("exit", () => rmSync(dirname(to), { recursive: true })); await published(book, to); return to; })();
      await cp(await first, site, { recursive: true });
    },
    async publish() {
      await published(book, site);
    },
    close: () => rm(folder, { recursive: true }),
  };
}

/** The next revision of the boneless loin. */
export async function reviseLoin(shop, number, change) {
  const guide = "pork/loin-boneless.yaml", text = await shop.read(guide);
  await shop.change(guide, `number: ${number - 1}`, `number: ${number}`);
  await shop.change(guide, /date: \d{4}-\d\d-\d\d/.exec(text)[0], `date: 2026-11-${10 + number}`);
  await shop.change(guide, "change: |\n", `change: |\n    ${change}\n`);
}

/** Opens the page of what is kept and waits until all is that should be. */
export async function kept(page, address) {
  await page.goto(`${address}offline/index.html`);
  await until(page, () => /^(Everything is kept|Kept) on this device/.test(document.querySelector("[data-kept]").textContent));
}

/** Waits until something holds on the page; it may take its time to say so. */
export async function until(page, holds, argument) {
  for (const begun = Date.now(); Date.now() - begun < 30000; await page.waitForTimeout(100)) {
    if (await page.evaluate(holds, argument)) return;
  }
  throw new Error(`this never came to hold: ${holds}`);
}
