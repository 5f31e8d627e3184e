// The Nu HTML Checker of the W3C community, run over many documents. It gives all that it has to say.
import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";

const jar = fileURLToPath(new URL("node_modules/vnu-jar/build/dist/vnu.jar", import.meta.url));

/**
 * What the checker says of documents, each an address or a path: `{ type, subType, url, message, extract }`. Pages are
 * asked for over http, so that their content security policy is held against an origin as a browser does; drawings and
 * styles are read as files, since only a file tells by its name that it is one. After its first drawing the checker reads
 * pages as if they were drawings too, so drawings and styles have a run of their own, beside that of the pages.
 */
export async function complaints(documents) {
  const drawings = documents.filter((document) => /\.(svg|css)$/.test(document));
  const pages = documents.filter((document) => !drawings.includes(document));
  const messages = (await Promise.all([pages, drawings].filter((some) => some.length > 0).map(run))).flat();
  // An answer that came too late on a busy machine says nothing of a document: it is asked for once more.
  const late = messages.filter(({ subType }) => subType === "io").map(({ url }) => url).filter((url) => pages.includes(url));
  if (late.length === 0) return messages;
  return [...messages.filter(({ url }) => !late.includes(url)), ...(await run(late))];
}

async function run(documents) {
  // The checker refuses addresses of this computer unless it is told otherwise.
  const options = ["-Dnu.validator.servlet.allow-forbidden-hosts=true", "-jar", jar, "--format", "json", "--stdout", "--exit-zero-always", "--also-check-css", "--also-check-svg"];
  const checker = spawn("java", [...options, ...documents], { stdio: ["ignore", "pipe", "inherit"] });
  const parts = [];
  checker.stdout.on("data", (part) => parts.push(part));
  const status = await new Promise((ended, failed) => { checker.on("error", failed); checker.on("close", ended); });
  if (status !== 0) throw new Error(`the checker ended with ${status}`);
  return JSON.parse(Buffer.concat(parts).toString("utf8")).messages;
}

/** A message in one line. */
export function told({ type, subType, url, message, extract }) {
  return `${url}: ${subType ?? type}: ${message} ${(extract ?? "").trim()}`;
}
