// The queries of the comparison: whole words, pairs, beginnings and slips, all of words that occur, but not everywhere.

/** The words of each document, as a plain reader sees them. */
export function wordsOf(document) {
  return new Set(`${document.title} ${document.names} ${document.text}`.toLowerCase().match(/[a-z0-9]+/g) ?? []);
}

/** Numbers that look random and are the same on every run (a linear congruence, Knuth's MMIX constants). */
function random(seed) {
  let state = BigInt(seed);
  return (end) => {
    state = (state * 6364136223846793005n + 1442695040888963407n) & 0xffffffffffffffffn;
    return Number((state >> 33n) % BigInt(end));
  };
}

/** Words that say nothing by themselves and that nobody looks for; some indexes leave them out. */
const EMPTY = new Set(["about", "after", "every", "their", "there", "these", "those", "where", "which", "while"]);

const slips = {
  substitution: (word, at, letter) => word.slice(0, at) + letter + word.slice(at + 1),
  deletion: (word, at) => word.slice(0, at) + word.slice(at + 1),
  insertion: (word, at, letter) => word.slice(0, at) + letter + word.slice(at),
  swap: (word, at) => (at + 1 < word.length ? word.slice(0, at) + word[at + 1] + word[at] + word.slice(at + 2) : slips.swap(word, at - 1)),
};

/** Queries by kind, each with the words that a right document has. The first letter is kept, as fingers mostly do. */
export function queries(documents, count) {
  const sets = documents.map(wordsOf);
  const number = new Map();
  for (const set of sets) for (const word of set) number.set(word, (number.get(word) ?? 0) + 1);
  const most = Math.max(2, documents.length / 10);
  const usual = [...number].filter(([word, n]) => word.length >= 5 && !EMPTY.has(word) && /^[a-z]+$/.test(word) && n >= 2 && n <= most).map(([word]) => word).sort();
  const long = usual.filter((word) => word.length >= 7);
  const below = random(7);
  const pick = (list) => list[below(list.length)];
  const all = { "whole word": [], "two words": [], "five letters": [] };
  for (let at = 0; at < count; at += 1) {
    const word = pick(usual);
    all["whole word"].push({ query: word, words: [word] });
    const set = [...sets[below(sets.length)]].filter((word) => usual.includes(word));
    if (set.length > 1) all["two words"].push({ query: `${pick(set)} ${pick(set)}`, words: null });
    const start = pick(long);
    all["five letters"].push({ query: start.slice(0, 5), words: long.concat(usual).filter((word) => word.startsWith(start.slice(0, 5))) });
  }
  for (const two of all["two words"]) two.words = two.query.split(" ");
  for (const [kind, slip] of Object.entries(slips)) {
    all[kind] = [];
    while (all[kind].length < Math.ceil(count / 3)) {
      const word = pick(usual);
      const typed = slip(word, 1 + below(word.length - 1), "abcdefghijklmnopqrstuvwxyz"[below(26)]);
      if (typed !== word) all[kind].push({ query: typed, words: [word] });
    }
  }
  return { all, sets };
}

/** True when a document among the hits is right: for a pair one with both words, else one with the word or any of them. */
export function hit(kind, { words }, hits, sets) {
  const has = (id) => (kind === "two words" ? words.every((word) => sets[id].has(word)) : words.some((word) => sets[id].has(word)));
  return hits.some(has);
}
