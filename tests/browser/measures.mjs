// What is measured inside a page: targets, widths, texts that are cut off or covered, contrast, cautions. Each function
// runs in the page, so it uses nothing from outside itself; tests hold what it gives against the bars, bars.mjs prints it.

/**
 * Every target that is shown: its words, its box, and whether it is part of a sentence, where WCAG 2.2 (2.5.5, 2.5.8) asks
 * for no size: words that are no links stand beside it. Sizes in CSS pixels.
 */
export const targets = () => {
  const shown = (element) => element.checkVisibility() && element.getBoundingClientRect().width > 0;
  const flows = (element) => ["inline", "inline-block"].includes(getComputedStyle(element).display);
  // The words of a block without those of its links and of blocks inside it.
  const beside = (block) => [...block.childNodes].map((node) => {
    if (node.nodeType === Node.TEXT_NODE) return node.data;
    return node.nodeType !== Node.ELEMENT_NODE || node.matches("a, button, svg") || !flows(node) ? "" : beside(node);
  }).join("");
  const inSentence = (element) => {
    if (element.closest(".skip")) return true;
    if (!element.matches("a") || !flows(element)) return false;
    let block = element.parentElement;
    while (flows(block)) block = block.parentElement;
    return /\p{L}{2}/u.test(beside(block));
  };
  return [...document.querySelectorAll("a[href], button, summary, input, select, textarea, [role=button]")].filter(shown).map((element) => {
    const box = element.getBoundingClientRect();
    const words = element.textContent.trim() || element.getAttribute("aria-label") || element.id;
    return { words: words.slice(0, 30), width: box.width, height: box.height, tool: !element.matches("a"), inline: inSentence(element) };
  });
};

/** What must be on any page: its first headings, the words of its content, and pictures that should show and do not. */
export const content = () => ({
  headings: document.querySelectorAll("h1").length,
  words: document.querySelector("main").innerText.length,
  broken: [...document.images].filter((image) => image.loading !== "lazy" && image.complete && image.naturalWidth === 0).map((image) => image.src),
});

/** How far the page can be moved sideways, as the width of all that is in it. */
export const wide = () => document.documentElement.scrollWidth;

/** Puts one style sheet beside those of the page; the policy of the page forbids a `style` element. */
export const restyle = (css) => {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(css);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets.filter(({ kept }) => kept), ...(css ? [sheet] : [])];
};

/**
 * Every visible text with its size, and which of them are cut off or covered by another text. A text in a box that can
 * be moved is not lost; in one that hides what leaves it, or outside of the page, it is.
 */
export const texts = () => {
  const hides = (value) => value === "hidden" || value === "clip";
  const moves = (value) => value === "auto" || value === "scroll";
  const known = new Map();
  // What holds for an element through all that lies round it, reckoned once: whether it is for screen readers alone, whether
  // it sticks to the window, and the boxes that hide or move what leaves them, the innermost first.
  const round = (element) => {
    if (known.has(element)) return known.get(element);
    const above = element.parentElement === null ? { forEars: false, sticks: false, frames: [] } : round(element.parentElement);
    const { clipPath, overflowX, overflowY, position } = getComputedStyle(element);
    const box = element.getBoundingClientRect();
    const framed = element !== document.body && element !== document.documentElement && (overflowX !== "visible" || overflowY !== "visible");
    const own = {
      forEars: above.forEars || clipPath !== "none" || (box.width <= 1 && box.height <= 1 && hides(overflowX)),
      sticks: above.sticks || position === "sticky" || position === "fixed",
      frames: framed ? [{ box, overflowX, overflowY }, ...above.frames] : above.frames,
    };
    known.set(element, own);
    return own;
  };
  // What of a box can be seen or moved into sight; `sideways` and `upright` are the pixels of it that cannot.
  const seen = (frames, rect) => {
    const box = { left: rect.left, right: rect.right, top: rect.top, bottom: rect.bottom };
    let sideways = 0;
    let upright = 0;
    for (const { box: frame, overflowX, overflowY } of frames) {
      if (hides(overflowX)) sideways += Math.max(0, frame.left - box.left) + Math.max(0, box.right - frame.right);
      if (hides(overflowY)) upright += Math.max(0, frame.top - box.top) + Math.max(0, box.bottom - frame.bottom);
      if (moves(overflowX) || hides(overflowX)) [box.left, box.right] = [Math.max(box.left, frame.left), Math.min(box.right, frame.right)];
      if (moves(overflowY) || hides(overflowY)) [box.top, box.bottom] = [Math.max(box.top, frame.top), Math.min(box.bottom, frame.bottom)];
    }
    sideways += Math.max(0, -box.left) + Math.max(0, box.right - document.documentElement.clientWidth);
    upright += Math.max(0, -(box.top + scrollY));
    return { box, sideways, upright };
  };
  const all = [];
  const lost = [];
  const boxes = [];
  const range = document.createRange();
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const element = node.parentElement;
    const words = node.data.trim().replace(/\s+/g, " ");
    if (!words || element.closest("script, style, noscript, option, title") || !element.checkVisibility({ visibilityProperty: true })) continue;
    const { forEars, sticks, frames } = round(element);
    if (forEars) continue;
    range.selectNodeContents(node);
    const size = Number.parseFloat(getComputedStyle(element).fontSize);
    const drawn = element.closest("svg") !== null;
    all.push({ words, size, drawn });
    const drawing = drawn ? element.closest("svg").getBoundingClientRect() : null;
    const cut = (rect) => {
      const { box, sideways, upright } = seen(frames, rect);
      const beside = sideways + (drawing ? Math.max(0, drawing.left - rect.left) + Math.max(0, rect.right - drawing.right) : 0);
      // The box of a line is higher than its letters; a fifth of the size can go without a letter being touched.
      return { box, beside, upright, off: beside > 1.5 || upright > Math.max(2, size / 5) };
    };
    const lines = [...range.getClientRects()].filter((rect) => rect.width > 0 && rect.height > 0).map(cut);
    if (lines.some((line) => line.off)) {
      // Spaces may hang out of a box; only words can be lost.
      for (const word of node.data.matchAll(/\S+/g)) {
        range.setStart(node, word.index);
        range.setEnd(node, word.index + word[0].length);
        const off = [...range.getClientRects()].map(cut).find((part) => part.off);
        if (off) lost.push(`${word[0]} in ${words.slice(0, 40)}: ${Math.round(off.beside)} px beside, ${Math.round(off.upright)} px above or below`);
      }
    }
    for (const { box } of lines) {
      if (!drawn && !sticks && box.right - box.left > 1 && box.bottom - box.top > 1) boxes.push({ ...box, words, element });
    }
  }
  boxes.sort((one, other) => one.top - other.top);
  const covered = [];
  for (const [at, one] of boxes.entries()) {
    for (let next = at + 1; next < boxes.length && boxes[next].top < one.bottom; next += 1) {
      const other = boxes[next];
      const high = Math.min(one.bottom, other.bottom) - other.top;
      const broad = Math.min(one.right, other.right) - Math.max(one.left, other.left);
      if (broad > 2 && high > 0.5 * Math.min(one.bottom - one.top, other.bottom - other.top)) covered.push(`${one.words.slice(0, 30)} and ${other.words.slice(0, 30)}`);
    }
  }
  const fields = [...document.querySelectorAll("input, select, textarea")].filter((element) => element.checkVisibility() && element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 0)
    .map((element) => `${element.id || element.textContent.trim().slice(0, 30)}: ${element.scrollWidth - element.clientWidth} px inside a field`);
  return { all, lost: [...lost, ...fields], covered };
};

/**
 * The contrast of every visible text with the colours laid below it (WCAG 2.2, definition of contrast ratio), least first.
 * Words in drawings are left out: their letters carry a rim of their own.
 */
export const contrasts = () => {
  const canvas = new OffscreenCanvas(1, 1).getContext("2d", { willReadFrequently: true });
  const known = new Map();
  const colour = (text) => {
    if (!known.has(text)) {
      canvas.clearRect(0, 0, 1, 1);
      canvas.fillStyle = text;
      canvas.fillRect(0, 0, 1, 1);
      const [red, green, blue, alpha] = canvas.getImageData(0, 0, 1, 1).data;
      known.set(text, [red, green, blue, alpha / 255]);
    }
    return known.get(text);
  };
  const over = ([...top], alpha, below) => top.slice(0, 3).map((value, at) => value * alpha + below[at] * (1 - alpha));
  const luminance = (rgb) => {
    const [red, green, blue] = rgb.map((value) => (value / 255 <= 0.04045 ? value / 255 / 12.92 : ((value / 255 + 0.055) / 1.055) ** 2.4));
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  };
  const canvasColour = colour("Canvas").slice(0, 3);
  const grounds = new Map();
  // The colour below the texts of an element, and how opaque they are, through all that lies round it.
  const below = (element) => {
    if (element === null) return { ground: canvasColour, opaque: 1 };
    if (!grounds.has(element)) {
      const around = below(element.parentElement);
      const { backgroundColor, opacity } = getComputedStyle(element);
      const layer = colour(backgroundColor);
      grounds.set(element, { ground: over(layer, layer[3] * Number(opacity), around.ground), opaque: around.opaque * Number(opacity) });
    }
    return grounds.get(element);
  };
  const found = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const element = node.parentElement;
    if (!node.data.trim() || element.closest("svg, script, style, noscript, option") || !element.checkVisibility({ visibilityProperty: true })) continue;
    const { ground, opaque } = below(element);
    const ink = colour(getComputedStyle(element).color);
    const [light, dark] = [luminance(ground), luminance(over(ink, ink[3] * opaque, ground))].sort((one, other) => other - one);
    found.push({ words: node.data.trim().slice(0, 40), ratio: (light + 0.05) / (dark + 0.05) });
  }
  return found.sort((one, other) => one.ratio - other.ratio);
};

/** Every caution of a step: whether it stands before the act in the text and on the screen, in the same block, and its four parts. */
export const cautions = () => [...document.querySelectorAll(".caution")].flatMap((caution) => {
  const block = caution.closest("li.step, .step, [id^='step-']");
  const act = block?.querySelector(".do");
  if (!act || !caution.checkVisibility() || !act.checkVisibility()) return [];
  const [one, other] = [caution.getBoundingClientRect(), act.getBoundingClientRect()];
  return [{
    step: block.id,
    before: Boolean(caution.compareDocumentPosition(act) & Node.DOCUMENT_POSITION_FOLLOWING),
    above: one.bottom <= other.top + 1,
    between: other.top - one.bottom,
    signal: caution.querySelector("b")?.textContent.trim() ?? "",
    // Hazard and what comes of it stand in one paragraph, each in a sentence of its own.
    items: [...caution.querySelectorAll("li")].map((item) => ({
      sentences: (item.querySelector("p")?.firstChild?.textContent.match(/[.!?](\s|$)/g) ?? []).length,
      avoid: item.querySelector("strong")?.textContent.trim().length ?? 0,
    })),
  }];
});
