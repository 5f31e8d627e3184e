// The page of what is kept on this device: says how much is kept and since when, and lets parts be chosen and removed.
// What it says stands in the data of its status line, in the language of the page.
(function () {
  'use strict';
  var status = document.querySelector('[data-kept]'), said = status.dataset, parts = Array.from(document.querySelectorAll('li[data-part]'));
  var stay = document.getElementById('persist'), install = document.getElementById('install'), again = document.getElementById('again'), missing = document.getElementById('missing'), failed = document.getElementById('failed');
  var workers = navigator.serviceWorker, offline = window.seamwiseOffline, active = null, busy = '', shown = {};

  function say(text) { if (status.textContent !== text) status.textContent = text; }
  function fill(text, values) { return text.replace(/\[(\w+)\]/g, function (all, name) { return values[name] === undefined ? all : values[name]; }); }
  function size(bytes) { return bytes < 1e3 ? bytes + '\u00a0bytes' : bytes < 1e6 ? (bytes / 1e3).toFixed(1) + '\u00a0kB' : (bytes / 1e6).toFixed(1) + '\u00a0MB'; }
  // Day before month, as everywhere on the site.
  function date(time) { var lang = document.documentElement.lang; return new Date(time).toLocaleString(lang === 'en' ? 'en-GB' : lang, { dateStyle: 'long', timeStyle: 'short' }); }

  // A reader who was sent here because a page is not kept is told which.
  function asked() {
    var name = '';
    try { name = decodeURIComponent(location.hash.slice(1)); } catch (error) { /* an address of somebody else */ }
    missing.hidden = !/\.html$/.test(name);
    missing.textContent = missing.hidden ? '' : fill(missing.dataset.text, { page: name });
  }

  function trouble(answer) {
    var words = { space: said.space, changed: said.changed, newer: said.newer };
    failed.hidden = false;
    failed.textContent = fill(words[answer.trouble] || said.network, { page: answer.path });
    again.hidden = answer.trouble === 'newer';
  }

  function show(answer) {
    busy = '';
    if (answer.trouble || !answer.complete) trouble(answer);
    else {
      shown = answer.parts;
      say(fill(said.kept, { files: answer.files, size: size(answer.bytes), since: date(answer.since) }));
    }
    parts.forEach(function (part) {
      var id = part.dataset.part, kept = shown[id] !== undefined, button = part.querySelector('button');
      part.querySelector('.is').textContent = kept ? said.is : said.not;
      part.classList.toggle('kept', kept);
      if (!button) return;
      button.hidden = false;
      button.textContent = kept ? button.dataset.remove : button.dataset.keep;
    });
  }

  function ask(message) {
    if (busy || !active) return;
    busy = message.ask;
    if (busy !== 'kept') failed.hidden = again.hidden = true;
    offline.ask(active, message).then(show);
  }

  function begin(registration) {
    active = registration.active;
    ask({ ask: 'kept' });
    parts.forEach(function (part) {
      var button = part.querySelector('button');
      if (button) button.addEventListener('click', function () { ask({ ask: shown[part.dataset.part] === undefined ? 'keep' : 'remove', part: part.dataset.part }); });
    });
  }

  function promise() {
    if (!navigator.storage || !navigator.storage.persist) return;
    var told = document.getElementById('promised');
    function tell(granted, when) { told.textContent = granted ? told.dataset.yes : when ? told.dataset.no : ''; stay.hidden = granted; }
    navigator.storage.persisted().then(function (granted) { tell(granted, false); });
    stay.addEventListener('click', function () { navigator.storage.persist().then(function (granted) { tell(granted, true); }); });
  }

  document.getElementById('told').hidden = false;
  asked();
  window.addEventListener('hashchange', asked);
  if (location.protocol === 'file:') return say(said.folder);
  if (!workers || !offline) return say(window.isSecureContext ? said.unable : said.insecure);
  workers.addEventListener('message', function (event) {
    // A newer edition is brought in silence: what is kept is whole all the while.
    if (event.data.total && (!shown.shell || busy === 'keep')) say(fill(said.keeping, { done: size(event.data.keeping), total: size(event.data.total) }));
    if (event.data.trouble) trouble(event.data);
    if (event.data.kept && active && !busy) ask({ ask: 'kept' });
  });
  // Where nothing is kept yet, and for a newer edition, loading the page tries again; else what is missing is brought.
  again.addEventListener('click', function () { if (active && !shown.shell) ask({ ask: 'keep' }); else location.reload(); });
  workers.ready.then(begin);
  promise();
  window.addEventListener('beforeinstallprompt', function (event) {
    event.preventDefault();
    install.hidden = false;
    install.onclick = function () { install.hidden = true; event.prompt(); };
  });
})();
