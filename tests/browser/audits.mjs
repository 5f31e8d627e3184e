// Lighthouse over pages, one after another, in a process of its own: it keeps state that two runs in one process would
// share. `node audits.mjs ADDRESS...` prints one line of JSON a page: its address, its scores and what is below full marks.
import lighthouse from "lighthouse";
import puppeteer from "puppeteer-core";

const categories = ["accessibility", "best-practices", "seo"];
const flags = {
  onlyCategories: categories,
  logLevel: "error",
  // A picture of the whole page costs two seconds and no audit of these categories looks at it.
  disableFullPageScreenshot: true,
  maxWaitForLoad: 120_000,
  // Lighthouse reads robots.txt on behalf of the page, whose policy forbids all connections; audits.test.mjs reads it itself.
  skipAudits: ["robots-txt"],
};

// A computer that is busy with other tests answers late; waiting longer changes no score of these categories.
const launch = () => puppeteer.launch({
  timeout: 180_000,
  protocolTimeout: 300_000,
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-component-update", "--disable-sync"],
});
for (const address of process.argv.slice(2)) {
  // A browser for each page: a service worker of the page before would hold the next one up.
  const browser = await launch();
  try {
    const page = await browser.newPage();
    const { lhr } = await lighthouse(address, flags, undefined, page);
    const counted = new Set(Object.values(lhr.categories).flatMap(({ auditRefs }) => auditRefs.map(({ id }) => id)));
    const below = Object.values(lhr.audits).filter(({ id, score }) => counted.has(id) && score !== null && score < 1)
      .map(({ id, title, details }) => `${id}: ${title} ${JSON.stringify(details?.items?.slice(0, 2) ?? []).slice(0, 300)}`);
    const scores = Object.fromEntries(Object.values(lhr.categories).map(({ id, score }) => [id, score]));
    const audits = Object.values(lhr.audits).filter(({ id, score }) => counted.has(id) && score !== null).length;
    console.log(JSON.stringify({ address, scores, audits, below, failed: lhr.runtimeError?.message ?? "" }));
  } finally {
    await browser.close();
  }
}
