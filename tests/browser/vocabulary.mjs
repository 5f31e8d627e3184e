// The vocabulary of schema.org, read from the types that are generated from it (npm package schema-dts): what each type
// extends, which properties it has, and which values each of them takes.
import { readFileSync } from "node:fs";

const text = readFileSync(new URL("node_modules/schema-dts/dist/schema.d.ts", import.meta.url), "utf8");

/** By type: `{ above, properties }`, the types above it and its own properties, each with the names of what it takes. */
const types = new Map();
for (const [, name, above, body] of text.matchAll(/^interface (\w+)Base extends ([^{]+) \{\n([\s\S]*?)^\}/gm)) {
  const own = [...body.matchAll(/^ {4}"(\w+)"\?: SchemaValue<(.+), "\w+">;$/gm)].map(([, property, values]) => [property, values.split(" | ")]);
  types.set(name, { above: [...above.matchAll(/(\w+)Base/g)].map(([, one]) => one), properties: new Map(own) });
}
// A type without properties of its own has no base, only a leaf that extends the bases of the types above it.
for (const [, name, above] of text.matchAll(/^export interface (\w+)Leaf extends ([^{]+) \{$/gm)) {
  if (!types.has(name)) types.set(name, { above: [...above.matchAll(/(\w+)Base/g)].map(([, one]) => one), properties: new Map() });
}

/** Types that a plain text or a number can stand for, by their declarations: `Text`, `Duration`, `Integer`. */
const literals = new Map([...text.matchAll(/^export type (\w+) = (.+);$/gm)].map(([, name, means]) => [name, means.split(" | ")]));

/** True for a type that is, or lies below, another. */
export function isA(type, other) {
  return type === other || (types.get(type)?.above ?? []).some((above) => isA(above, other));
}

/** What a property of a type takes, `undefined` when the type has no such property. */
export function takes(type, property) {
  const known = types.get(type);
  if (known === undefined) return undefined;
  return known.properties.get(property) ?? known.above.map((above) => takes(above, property)).find((values) => values !== undefined);
}

/** True when a literal of this kind, `string` or `number`, is a value of the type. */
export function holds(type, kind) {
  return (literals.get(type) ?? []).some((means) => means === kind);
}

export const size = types.size;
