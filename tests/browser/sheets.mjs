// Sheets of paper read back: text, sizes of letters, and the picture of a sheet in grey.
import { execFileSync } from "node:child_process";

const run = (program, options) => execFileSync(program, options, { maxBuffer: 1 << 28 });

/** Text on one line, with plain blanks; a line that ends with a hyphen goes on without one. */
export const flat = (text) => text.replace(/\s+/g, " ").replaceAll("- ", "-").trim();

/** The text of each sheet, in the order in which it was set. */
export function texts(file) {
  return run("pdftotext", ["-raw", "-enc", "UTF-8", file, "-"]).toString().split("\f").slice(0, -1).map(flat);
}

/** Every run of text: its sheet, its size in points, its words. */
export function runs(file) {
  const xml = run("pdftohtml", ["-xml", "-i", "-zoom", "1", "-stdout", file]).toString();
  const sizes = new Map([...xml.matchAll(/<fontspec id="(\d+)" size="(-?\d+)"/g)].map(([, id, size]) => [id, Number(size)]));
  return [...xml.matchAll(/<page number="(\d+)"[\s\S]*?<\/page>/g)].flatMap(([page, number]) =>
    [...page.matchAll(/<text [^>]*font="(\d+)"[^>]*>([\s\S]*?)<\/text>/g)].map(([, font, words]) => ({
      sheet: Number(number), size: sizes.get(font), words: words.replace(/<[^>]+>/g, "").trim(),
    })));
}

/** A sheet as grey pixels. */
export function grey(file, sheet, dotsPerInch) {
  const bytes = run("pdftoppm", ["-gray", "-r", String(dotsPerInch), "-f", String(sheet), "-l", String(sheet), file]);
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 64).toString("latin1"));
  const [width, height] = [Number(head[1]), Number(head[2])];
  return { width, height, pixels: bytes.subarray(head[0].length) };
}

/** The same as red, green, blue and opacity, part of it only: columns from `left`, rows from `top`. */
export function coloured({ width, pixels }, { left, top, right, bottom }) {
  const out = new Uint8ClampedArray((right - left) * (bottom - top) * 4);
  for (let y = top; y < bottom; y += 1) {
    for (let x = left; x < right; x += 1) {
      const at = ((y - top) * (right - left) + x - left) * 4;
      out.fill(pixels[y * width + x], at, at + 3);
      out[at + 3] = 255;
    }
  }
  return { data: out, width: right - left, height: bottom - top };
}
