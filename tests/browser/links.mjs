// Where links lead, and which of them lead nowhere. `addresses` runs in a page; the rest judges what it gives.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { site } from "./demo.mjs";

/** The places in a drawing of the site; undefined for another file. */
const placesIn = (path) => path.endsWith(".svg") ? [...readFileSync(join(site, path), "utf8").matchAll(/ id="([^"]+)"/g)].map(([, id]) => id) : undefined;

/** Every address that a page names, resolved by the browser, every id that it names, and every id that it has. */
export const addresses = () => {
  const links = [];
  const add = (element, name, address) => links.push({ element: element.localName, raw: element.getAttribute(name) ?? address, to: new URL(address, document.baseURI).href });
  for (const name of ["href", "src", "data", "poster", "action", "cite", "xlink:href"]) {
    for (const element of document.querySelectorAll(`[${CSS.escape(name)}]`)) add(element, name, element.getAttribute(name));
  }
  for (const element of document.querySelectorAll("[srcset]")) {
    for (const part of element.getAttribute("srcset").split(",")) add(element, "srcset", part.trim().split(/\s+/)[0]);
  }
  const named = ["aria-labelledby", "aria-describedby", "aria-controls", "aria-owns", "aria-details", "for", "headers", "list", "form"]
    .flatMap((name) => [...document.querySelectorAll(`[${name}]`)].flatMap((element) => element.getAttribute(name).split(/\s+/).filter(Boolean)));
  return { links, named, ids: [...document.querySelectorAll("[id]")].map((element) => element.id) };
};

/** Why an address outside of the site is not one that a page may name; empty when it may. It is never asked for. */
export function unfit({ element, raw, to }) {
  if (element !== "a" && element !== "link") return "something is loaded from elsewhere";
  const { protocol, hostname, username, password } = new URL(to);
  if (protocol !== "https:") return "not https";
  if (username || password) return "a name or a password in it";
  if (!/^([a-z0-9]([a-z0-9-]*[a-z0-9])?\.)+[a-z]{2,}$/.test(hostname)) return "no host of the web";
  if (/[\s<>"\\^`{|}]/.test(raw)) return "a sign in it that must be encoded";
  return "";
}

/**
 * Every link that leads nowhere, in words. `found`: what `addresses` gave, by page; `base`: where the site lies, with a
 * slash at its end; `files`: every file of the site.
 */
export function deadEnds(found, base, files) {
  const there = new Set(files);
  const dead = [];
  for (const [page, { links, named, ids }] of found) {
    for (const id of named) if (!ids.includes(id)) dead.push(`${page}: nothing has the id ${id}`);
    for (const [at, id] of ids.entries()) if (ids.indexOf(id) !== at) dead.push(`${page}: the id ${id} twice`);
    for (const link of links) {
      const why = wrongWith(link, base, there, found);
      if (why) dead.push(`${page}: ${link.raw} (${link.element}): ${why}`);
    }
  }
  return dead;
}

function wrongWith(link, base, files, found) {
  if (link.to.startsWith("data:")) return link.element === "a" ? "data as a link" : "";
  if (!link.to.startsWith(base)) return unfit(link);
  if (/^([a-z]+:|\/)/i.test(link.raw)) return "not relative, so the folder cannot be moved";
  return leadsNowhere(link.to.slice(base.length), files, (path) => found.get(path)?.ids ?? placesIn(path));
}

/** Why a link inside the site, from its root, leads nowhere; empty when it leads somewhere. `ids` gives those of a page. */
export function leadsNowhere(link, files, ids) {
  const [address, fragment] = link.split("#");
  const path = decodeURIComponent(address.split("?")[0]);
  if (path === "" || path.endsWith("/")) return "names no file, so it shows a list of files where the site is a folder";
  if (!files.has(path)) return `${path} is not there`;
  if (!fragment) return "";
  const known = ids(path);
  if (known === undefined) return `a place in ${path}, which is no page`;
  return known.includes(decodeURIComponent(fragment)) ? "" : `no place ${fragment} in ${path}`;
}
