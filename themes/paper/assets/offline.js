// Has the site kept on the device, and tells of a newer edition. The page is complete without it. It asks at load, and
// when the page is looked at again after a while; it never changes what is read before the reader says so.
(function () {
  'use strict';
  var AGAIN = 600000, SETTLED = 3000;
  var RULES = '.news{width:min(72rem,100% - 2rem);margin:.5rem auto 1rem;padding:.6rem .75rem;border:2px solid var(--ink)}.news p{margin:0 0 .5rem;max-width:44em}.news div{display:flex;flex-wrap:wrap;gap:.5rem}' +
    '.news button{font:inherit;font-weight:650;min-height:max(64px,3em);min-width:6em;padding:.2em 1em;border:2px solid var(--ink);border-radius:0;background:var(--paper);color:var(--ink);cursor:pointer}.news button:first-child{background:var(--ink);color:var(--paper)}' +
    '.brief p{margin:0}.brief div{margin-top:.5rem}.far{display:flex;flex-wrap:wrap;align-items:center;gap:.5em 1em;font-size:.6em}.far div{margin:0 0 0 auto}' +
    '@media(min-width:64rem){.news{width:min(72rem,100% - 4rem)}}@media(forced-colors:active){.news button:first-child{background:ButtonFace;color:ButtonText}}@media print{.news{display:none}}';
  var workers = location.protocol === 'file:' ? null : navigator.serviceWorker;
  if (!workers) return;
  var root = new URL('../', document.currentScript.src).href, path = location.href.slice(root.length).split(/[?#]/)[0] || 'index.html';
  // Where one step fills the screen, little room is taken.
  var atWork = /^(bench|room)\//.test(path), box = null, registration = null, taking = false, put = false, used = false, later = null, asked = Date.now();

  // Asks a worker; its answer, or what went wrong, comes through a channel of its own.
  function ask(worker, message) {
    return new Promise(function (answer) {
      var line = new MessageChannel();
      line.port1.onmessage = function (event) { answer(event.data); };
      worker.postMessage(message, [line.port2]);
    });
  }

  function fill(text, values) { return text.replace(/\[(\w+)\]/g, function (all, name) { return values[name] === undefined ? all : values[name]; }); }
  function make(tag, text) { var element = document.createElement(tag); if (text) element.textContent = text; return element; }
  function button(text, act) { var element = make('button', text); element.type = 'button'; element.addEventListener('click', act); return element; }

  function look() {
    var worker = registration.waiting || registration.active;
    if (worker) ask(worker, { ask: 'news', path: decodeURIComponent(path) }).then(function (news) { if (news.newer) show(told(news), news.words, worker); });
  }

  // What is said of a newer edition: of this guide, or a few guides by name.
  function told(news) {
    var words = news.words, here = news.here, FEW = 3, lines = [make('b', words.newer)];
    if (here && (here.state === 'withdrawn' || here.state === 'gone')) lines.push(make('b', words[here.state]));
    else if (here) lines.push(make('span', fill(here.state === 'draft' ? words.draft : words.here, here) + (atWork ? '' : ' ' + short(here.change || ''))));
    if (here) return lines.concat(news.others.length && !atWork ? make('span', words.too) : []);
    var named = news.others.slice(0, FEW).map(function (guide) { return fill(guide.state === 'withdrawn' ? words.otherWithdrawn : guide.state === 'gone' ? words.otherGone : words.other, guide); });
    if (news.others.length > FEW) named.push(fill(words.more, { n: news.others.length - FEW }));
    return lines.concat(make('span', named.length ? fill(words.others, { guides: named.join('; ') }) : words.none));
  }
  function short(text) { return text.length > 160 ? text.slice(0, 160).replace(/\s+\S*$/, ' …') : text; }

  // Nothing on the page may move under a finger: where it is in use, this waits until the page is looked at again.
  function show(lines, words, worker) {
    if (taking || put) return;
    if (used && performance.now() > SETTLED) { later = function () { used = false; show(lines, words, worker); }; return; }
    if (!box) {
      try { var sheet = new CSSStyleSheet(); sheet.replaceSync(RULES); document.adoptedStyleSheets = document.adoptedStyleSheets.concat(sheet); } catch (error) { /* plain, where a browser has no such sheets */ }
      box = make('div');
      box.className = 'news' + (atWork ? ' brief' : '') + (/^room\//.test(path) ? ' far' : '');
      box.setAttribute('role', 'status');
      document.querySelector('main').before(box);
    }
    box.textContent = '';
    lines.forEach(function (line) { var paragraph = make('p'); paragraph.appendChild(line); box.appendChild(paragraph); });
    var buttons = make('div'), load = button(words.load, function () {
      taking = true;
      load.textContent = words.loading;
      if (!worker) return location.reload();
      ask(worker, { ask: 'take' }).then(function (answer) {
        if (!answer.trouble) return location.reload();
        taking = false;
        load.textContent = words.load;
      });
    });
    buttons.appendChild(load);
    buttons.appendChild(button(words.later, function () { put = true; box.remove(); box = null; }));
    box.appendChild(buttons);
  }

  // Pages that are short of room leave the link to the manifest to this script.
  if (!document.querySelector('link[rel=manifest]')) {
    var manifest = make('link');
    manifest.rel = 'manifest';
    // Relative, as every link of a page is.
    manifest.setAttribute('href', path.split('/').slice(1).map(function () { return '../'; }).join('') + 'site.webmanifest');
    document.head.appendChild(manifest);
  }

  function watch(worker) { if (worker) worker.addEventListener('statechange', function () { if (worker.state === 'installed') look(); }); }

  // Browsers ask the network for a file to save, whatever is kept; so it is given from what is kept, under its own name.
  document.addEventListener('click', function (event) {
    var link = event.target.closest && event.target.closest('a[download]'), worker = workers.controller;
    if (!link || !worker || link.href.indexOf(root) || event.defaultPrevented) return;
    event.preventDefault();
    ask(worker, { ask: 'file', url: link.href }).then(function (file) {
      var copy = make('a');
      copy.href = file.bytes ? URL.createObjectURL(new Blob([file.bytes], { type: file.type })) : link.href;
      copy.download = link.download || link.pathname.split('/').pop();
      copy.click();
      setTimeout(function () { URL.revokeObjectURL(copy.href); }, 60000);
    });
  });
  window.seamwiseOffline = { ask: ask };
  workers.addEventListener('message', function (event) {
    if (event.data.taken && !taking && event.data.words) { put = false; show([make('b', event.data.words.elsewhere)], event.data.words, null); }
  });
  ['pointerdown', 'keydown', 'wheel', 'touchmove'].forEach(function (kind) { window.addEventListener(kind, function () { used = true; }, { passive: true }); });
  document.addEventListener('visibilitychange', function () {
    if (document.hidden || !registration) return;
    if (later) later();
    later = null;
    if (Date.now() - asked < AGAIN) return;
    asked = Date.now();
    registration.update().catch(function () { /* no network, or no room: what is kept stays */ });
  });
  window.addEventListener('load', function () {
    workers.register(root + 'service-worker.js', { updateViaCache: 'none' }).then(function (made) {
      registration = made;
      look();
      watch(made.installing);
      made.addEventListener('updatefound', function () { watch(made.installing); });
    }).catch(function () { /* a browser that refuses: the page works as it is */ });
  });
})();
