const site = { edition: "ef1e533219dd", all: true, revisions: "offline/revisions.json", offline: "offline/index.html", shell: [
["assets/bench-clock.383dbca69b.js","1899ed66275c",3978],
["assets/bench-device.64689699cd.js","7b3f59b5bc3b",3647],
["assets/bench-place.f82c1f2e79.js","ba44df45a882",3128],
["assets/bench.eb6e3a43d7.js","a696b4b13cda",11434],
["assets/card.10fdd9a928.js","b5b47f4ee867",1966],
["assets/course.eeeee89976.js","ddf2f17cb79b",1670],
["assets/guide-apart.19c635151c.css","350799a5cdba",1409],
["assets/guide-below.9e75567c4a.css","1979c2ef85c3",5168],
["assets/icon-192.32cf894577.png","0ff64fad2101",2205],
["assets/icon-512.3e0eccd7b4.png","6ff2df9e6034",5616],
["assets/icon.0d399125f4.svg","91ac01727e13",188],
["assets/offline-page.693b77f159.js","6d30bcea1c1f",4898],
["assets/offline.2ed0c2724c.js","82c7a8b07b0f",7622],
["assets/print.9dc58ca920.js","47cd060abdfc",405],
["assets/room.5b17e4c62d.js","73a228cab154",12131],
["assets/search-box.654b5a496c.js","00bddba8e24f",10173],
["assets/search.605ab064b8.js","3961d09839f1",15737],
["assets/weight.0eedcc5c4c.js","81dc64e124bf",4135],
["courses/first-six-months.html","02fb229f899a",22274],
["index.html","94e964c9f3dd",21007],
["limits/index.html","d6456c9fd35a",34646],
["offline/index.html","30d23a5bb640",10385],
["offline/revisions.json","310d93624b20",3248],
["pieces/index.html","1273a16c6a1b",45770],
["search/search-index.7776b75953.js","0fe83f23e2f9",41650],
["site.webmanifest","85ae618e65ac",683]
], parts: [
{ id: "species/beef", list: ["offline/species/beef.json","a9e0ed45b080",1587], bytes: 604457 },
{ id: "species/chicken", list: ["offline/species/chicken.json","87c8e5450540",1589], bytes: 408765 },
{ id: "species/lamb", list: ["offline/species/lamb.json","55dc4666aba1",1503], bytes: 501823 },
{ id: "species/pork", list: ["offline/species/pork.json","7e978b0465e8",2518], bytes: 943277 },
{ id: "species/salmon", list: ["offline/species/salmon.json","2bdf7561bf93",2309], bytes: 633276 },
{ id: "species/venison", list: ["offline/species/venison.json","ed8582128436",1606], bytes: 467620 },
{ id: "courses/first-six-months", list: ["offline/courses/first-six-months.json","a4f36fb59303",7708], bytes: 2626170 },
{ id: "rest", list: ["offline/rest.json","4f7c11ab89d8",143], bytes: 151135 }
] };
// Keeps the site on a device. `site` stands above: the edition, the files that every reader keeps, and the parts, each
// with a list of its files. A file is [path, mark, bytes]; the mark is the beginning of its SHA-256 digest.
//
// An edition lies in a cache of its own and is complete when its index lies in it, which is written last. What is served
// is the edition that the reader has taken, however new this worker is: a newer one is told by the page, and taken only
// when the reader says so.
(function () {
  'use strict';
  const scope = new URL('./', self.location.href).href;
  // A blank cannot stand in a path, so no other site of this host can have names that begin so.
  const prefix = 'seamwise ' + new URL(scope).pathname + ' ';
  const stateName = prefix + 'state', stateAddress = scope + '?state', indexAddress = scope + '?index';
  const AT_A_TIME = 6;

  function nameOf(edition) { return prefix + edition; }
  function address(path) { return scope + path.split('/').map(encodeURIComponent).join('/'); }
  async function read(name, url) { const found = await caches.match(url, { cacheName: name }); return found ? found.json() : null; }
  async function write(name, url, value) { await (await caches.open(name)).put(url, new Response(JSON.stringify(value), { headers: { 'content-type': 'application/json' } })); }

  // The edition that is served, and earlier ones of which a page may still be open.
  async function state() { return (await read(stateName, stateAddress)) || { edition: '', earlier: [] }; }
  function index(edition) { return edition ? read(nameOf(edition), indexAddress) : null; }
  async function editions() { return (await caches.keys()).filter((name) => name.startsWith(prefix) && name !== stateName).map((name) => name.slice(prefix.length)); }

  async function windows() { return (await clients.matchAll({ type: 'window', includeUncontrolled: true })).filter((client) => client.url.startsWith(scope)); }
  async function tell(message) { for (const client of await windows()) client.postMessage(message); }

  // What went wrong, in a word that the page knows.
  function trouble(why, path) { const error = new Error(why + (path ? ' ' + path : '')); error.told = { trouble: why, path: path || '' }; return error; }
  function told(error) { return error.told || { trouble: error.name === 'QuotaExceededError' ? 'space' : 'network', path: '' }; }

  async function markOf(bytes) {
    const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
    return Array.from(digest.slice(0, 6), (byte) => byte.toString(16).padStart(2, '0')).join('');
  }

  // Fetches a file. What the browser holds already is good when it has the right mark; else the server is asked again.
  async function fetched(path, mark) {
    for (const cache of ['default', 'reload']) {
      const response = await fetch(address(path), { cache });
      if (!response.ok) continue;
      const bytes = await response.arrayBuffer();
      if ((await markOf(bytes)) !== mark) continue;
      const headers = new Headers();
      for (const name of ['content-type', 'content-security-policy']) if (response.headers.has(name)) headers.set(name, response.headers.get(name));
      return new Response(bytes, { headers });
    }
    throw trouble('changed', path);
  }

  // Fills the cache of this edition with the shell and these parts. What an earlier edition has under the same mark is
  // taken from there, and what was brought before this was cut off is there already.
  async function keep(ids) {
    const name = nameOf(site.edition), cache = await caches.open(name), earlier = [];
    const there = new Set((await cache.keys()).map((request) => request.url));
    for (const edition of await editions()) {
      const other = edition === site.edition ? null : await index(edition);
      if (other) earlier.push([nameOf(edition), new Map(files(other).map(([path, mark]) => [path, mark]))]);
    }
    async function bring([path, mark]) {
      const url = address(path);
      if (there.has(url)) return;
      const from = earlier.find(([, marks]) => marks.get(path) === mark);
      const known = from && (await caches.match(url, { cacheName: from[0] }));
      await cache.put(url, known || (await fetched(path, mark)));
      there.add(url);
    }
    const made = { since: Date.now(), shell: site.shell, parts: {} };
    for (const part of site.parts) {
      if (!ids.includes(part.id)) continue;
      await bring(part.list);
      made.parts[part.id] = [part.list, ...(await read(name, address(part.list[0])))];
    }
    const wanted = files(made), total = sum(wanted);
    let done = 0, next = 0, broken = null, spoken = 0;
    async function work() {
      while (next < wanted.length && !broken) {
        const file = wanted[next++];
        try { await bring(file); } catch (error) { broken = broken || error; return; }
        done += file[2];
        if (done - spoken > total / 50) { spoken = done; await tell({ keeping: done, total }); }
      }
    }
    await Promise.all(Array.from({ length: AT_A_TIME }, work));
    if (broken) throw broken;
    await write(name, indexAddress, made);
    await tell({ kept: true });
  }

  // All files of an index, each once.
  function files(index) {
    const all = new Map();
    for (const list of [index.shell, ...Object.values(index.parts)]) for (const file of list) all.set(file[0], file);
    return [...all.values()];
  }
  function sum(list) { return list.reduce((bytes, file) => bytes + file[2], 0); }

  // A new edition is brought beside the one that is served, with the parts that were chosen there.
  async function install() {
    const now = await state(), before = await index(now.edition);
    try {
      await keep(site.parts.map((part) => part.id).filter((id) => site.all || (before && before.parts[id])));
    } catch (error) {
      await tell(told(error));
      throw error;
    }
    // Editions that were brought and never taken are overtaken now; so is what a run left that was cut off.
    for (const edition of await editions()) if (![site.edition, now.edition, ...now.earlier].includes(edition)) await caches.delete(nameOf(edition));
  }

  // The first edition is served at once, to the page that is open too; any other waits for the reader.
  async function activate() {
    if (await index((await state()).edition)) return;
    await write(stateName, stateAddress, { edition: site.edition, earlier: [] });
    await clients.claim();
  }

  // Earlier editions go when no other page can be of them.
  async function tidy() {
    const now = await state();
    if (!now.earlier.length || (await windows()).length > 1) return;
    for (const edition of now.earlier) if (edition !== now.edition) await caches.delete(nameOf(edition));
    await write(stateName, stateAddress, { edition: now.edition, earlier: [] });
  }

  // The file of the site that an address means: a folder is its index, and what some hosts leave off is put back.
  function paths(url) {
    const rest = url.split(/[?#]/)[0].slice(scope.length);
    let path;
    try { path = decodeURIComponent(rest); } catch { return []; }
    return path === '' || path.endsWith('/') ? [path + 'index.html'] : [path, path + '.html'];
  }
  async function find(url, edition) {
    for (const path of paths(url)) {
      const found = await caches.match(address(path), { cacheName: nameOf(edition) });
      if (found) return found;
    }
    return null;
  }

  async function answer(request) {
    const now = await state(), served = now.edition || site.edition;
    const known = await find(request.url, served);
    if (known) return known;
    let response = null;
    try { response = await fetch(request); } catch { /* no network */ }
    if (response && response.status !== 404) return response;
    // A page of another edition that is still open asks for what only that edition has.
    for (const edition of await editions()) {
      const found = edition !== served && (await find(request.url, edition));
      if (found) return found;
    }
    if (response) return response;
    if (request.mode !== 'navigate' || !(await find(address(site.offline), served))) return Response.error();
    return Response.redirect(address(site.offline) + '#' + encodeURIComponent(paths(request.url)[0] || ''));
  }

  const acts = {
    // What is newer than what is served, for the page at `path`.
    async news({ path }) {
      const now = await state();
      if (!now.edition || now.edition === site.edition || !(await index(site.edition))) return { newer: false };
      const [was, is] = await Promise.all([now.edition, site.edition].map((edition) => read(nameOf(edition), address(site.revisions))));
      if (!was || !is) return { newer: false };
      const before = new Map(was.guides.map((guide) => [guide.id, guide])), after = new Map(is.guides.map((guide) => [guide.id, guide]));
      const changed = is.guides.filter((guide) => JSON.stringify(guide) !== JSON.stringify(before.get(guide.id)));
      const gone = was.guides.filter((guide) => !after.has(guide.id)).map((guide) => Object.assign({}, guide, { state: 'gone' }));
      const bare = '/' + path.replace(/\.html$/, ''), all = [...changed, ...gone], here = all.find((guide) => bare.endsWith('/' + guide.id));
      return { newer: true, words: is.words, here: here || null, others: all.filter((guide) => guide !== here) };
    },
    // The reader takes this edition.
    async take() {
      const now = await state();
      if (!(await index(site.edition))) throw trouble('network');
      const earlier = [...now.earlier, now.edition].filter((edition) => edition && edition !== site.edition);
      await write(stateName, stateAddress, { edition: site.edition, earlier });
      await self.skipWaiting();
      const own = await read(nameOf(site.edition), address(site.revisions));
      await tell({ taken: true, words: own && own.words });
      return {};
    },
    // What is kept of the edition that is served.
    async kept() {
      const made = await index((await state()).edition || site.edition), parts = {};
      if (!made) return { complete: false };
      for (const id of Object.keys(made.parts)) parts[id] = sum(made.parts[id]);
      parts.shell = sum(made.shell);
      const all = files(made);
      return { complete: true, since: made.since, files: all.length, bytes: sum(all), parts };
    },
    // A file as it is served, for a page that saves it.
    async file({ url }) {
      const found = await find(url, (await state()).edition || site.edition);
      return found ? { bytes: await found.arrayBuffer(), type: found.headers.get('content-type') } : {};
    },
    // Keeps a part, or all that should be kept where something is missing.
    async keep({ part }) {
      const now = await state(), made = await index(now.edition);
      // A newer edition is brought with what is chosen by then; what is chosen later would be missing in it.
      if (self.registration.installing || self.registration.waiting || (now.edition && now.edition !== site.edition)) throw trouble('newer');
      const chosen = made ? Object.keys(made.parts) : [];
      await keep(site.parts.map((one) => one.id).filter((id) => site.all || id === part || chosen.includes(id)));
      return acts.kept();
    },
    // Removes a part from every edition; files that another part needs stay.
    async remove({ part }) {
      for (const edition of await editions()) {
        const made = await index(edition);
        if (!made || !made.parts[part]) continue;
        const going = made.parts[part];
        delete made.parts[part];
        await write(nameOf(edition), indexAddress, made);
        const staying = new Set(files(made).map((file) => file[0])), cache = await caches.open(nameOf(edition));
        for (const [path] of going) if (!staying.has(path)) await cache.delete(address(path));
      }
      return acts.kept();
    },
  };

  self.addEventListener('install', (event) => event.waitUntil(install()));
  self.addEventListener('activate', (event) => event.waitUntil(activate()));
  self.addEventListener('fetch', (event) => {
    if (event.request.method !== 'GET' || !event.request.url.startsWith(scope)) return;
    event.respondWith(answer(event.request));
    if (event.request.mode === 'navigate') event.waitUntil(tidy());
  });
  self.addEventListener('message', (event) => {
    const act = event.data && Object.hasOwn(acts, event.data.ask) && acts[event.data.ask], port = event.ports[0];
    if (act && port) event.waitUntil(act(event.data).catch(told).then((answer) => port.postMessage(answer)));
  });
})();
