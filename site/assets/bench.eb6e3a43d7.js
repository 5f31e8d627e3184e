// The bench view: shows one screen, keeps the place, ticks steps, listens to keys. The page is complete without it: then
// the screens stand one after another, and the bands are links between them.
(function (bench) {
  'use strict';
  var page = document.querySelector('.bench');
  if (!page) return;
  // Longer than a shift: then the work has most likely begun anew. Sooner than a knuckle comes twice on purpose: then
  // the second touch is a bounce or a drop of water. Both are own judgement.
  var SHIFT = 8 * 3600 * 1000, BOUNCE = 400;
  var said = page.dataset, screens = Array.from(page.querySelectorAll('.screen')), steps = screens.filter(function (screen) { return screen.classList.contains('step'); });
  var keeper = bench.keeper(said.guide, said.revision), place = bench.nowhere(), shown = null, touched = -BOUNCE, title = document.title, bring = null, news = '';
  var status = page.querySelector('.said'), count = page.querySelector('.count'), offer = page.querySelector('.offer'), stitches = page.querySelectorAll('.seam i'), more = page.querySelector('.more-below'), strip = document.querySelector('.state');

  function fill(text, values) { return text.replace(/\[(\w+)\]/g, function (all, name) { return name in values ? values[name] : all; }); }
  function number(screen) { return steps.indexOf(screen) + 1; }
  function heading(screen) { return screen.querySelector('h2'); }
  function name(screen) { return number(screen) ? screen.querySelector('h2 span').textContent : heading(screen).textContent; }
  function lead(link, screen) { link.setAttribute('href', '#' + encodeURIComponent(screen.id)); }
  function find(id) { return screens.find(function (screen) { return screen.id === id; }) || null; }
  function step(screen) { return fill(said.step, { n: number(screen), all: steps.length }); }
  function at(hash) {
    try { return find(decodeURIComponent(hash.slice(1))); } catch (broken) { return null; }
  }
  // Where one is stands on the screen already and is only heard; what happened is seen too.
  function tell(message, where) {
    var heard = document.createElement('span');
    heard.className = 'hear';
    heard.textContent = where ? where + '. ' : '';
    status.replaceChildren(heard, message || '');
    status.classList.toggle('quiet', !message);
  }
  function save() {
    place.when = Date.now();
    page.querySelectorAll('.keeps').forEach(function (line) { if (!keeper.write(place)) line.textContent = said.forgets; });
  }

  var clock = bench.clock(function () { return place; }, save, said);
  var aloud = bench.aloud(page.querySelector('.aloud'), function () { return shown; }, said, tell);

  // What ticks change: the steps themselves, the list, the seam, and what the last screen says.
  function mark() {
    var open = steps.filter(function (one) { return !place.ticks[one.id]; });
    steps.forEach(function (one, at) {
      var ticked = !!place.ticks[one.id];
      one.querySelector('.ticked').hidden = !ticked;
      one.querySelector('.next b').textContent = ticked ? said.next : said.done;
      stitches[at].className = (ticked ? 'ticked' : '') + (one === shown ? ' here' : '');
    });
    page.querySelectorAll('.all a').forEach(function (link) {
      var to = at(link.hash), line = link.parentNode;
      var ticked = to && place.ticks[to.id], word = link.querySelector('.hear');
      line.className = (ticked ? 'ticked' : '') + (to && to.id === place.at ? ' here' : '');
      if (ticked && !word) { word = document.createElement('span'); word.className = 'hear'; word.textContent = ' ' + said.ticked; link.appendChild(word); } else if (!ticked && word) word.remove();
    });
    var left = page.querySelector('.left'), took = page.querySelector('.took'), total = clock.total();
    left.hidden = open.length === steps.length;
    left.textContent = open.length ? fill(said.some, { steps: open.map(number).join(', ') }) : said.all;
    took.hidden = !total;
    took.textContent = fill(said.took, { time: bench.time(total) });
  }

  function show(screen, message) {
    if (shown !== screen) aloud.stop();
    shown = screen;
    screens.forEach(function (one) { one.classList.toggle('now', one === screen); });
    document.documentElement.dataset.at = screen.id;
    var where = number(screen) ? step(screen) : name(screen);
    count.textContent = number(screen) ? where : count.dataset.word;
    document.title = where + (number(screen) ? ', ' + name(screen) : '') + ': ' + title;
    // The list of steps is a look aside: it keeps the place and leads back to it.
    if (screen.id !== 'steps') {
      place.at = screen.id;
      place.number = number(screen);
      place.name = number(screen) ? name(screen) : '';
      clock.enter(screen);
      save();
    } else {
      var back = find(place.at) || screens[0], bands = screen.querySelectorAll('.bands a');
      lead(bands[0], back);
      bands[0].querySelector('b').textContent = number(back) ? fill(said.return, { n: number(back) }) : name(back);
      bands[1].hidden = true;
    }
    mark();
    tell(message, where);
    screen.querySelector('.bands').prepend(more);
    peek();
  }
  function move() {
    var screen = at(location.hash);
    if (!screen || screen === shown) return;
    show(screen, news);
    news = '';
    window.scrollTo(0, 0);
    peek();
    heading(screen).focus({ preventScroll: true });
  }

  // An earlier place is offered, never taken: of another revision, of another shift, or one that was just cleared.
  function propose(text, at, go, taken, dropped) {
    var target = find(at), link = offer.querySelector('.go'), changed = offer.querySelector('.changed');
    offer.querySelector('p').textContent = text + (target ? '' : ' ' + said.gone);
    if (changed) changed.hidden = !dropped;
    link.hidden = !target;
    link.textContent = go;
    if (target) lead(link, target);
    bring = { taken: taken, dropped: dropped };
    offer.hidden = false;
  }
  function settle(how) {
    var done = bring && bring[how];
    offer.hidden = true;
    bring = null;
    if (done) done();
    mark();
  }
  function begin() {
    var own = keeper.read(), other = keeper.other(), screen = at(location.hash);
    var fresh = own && Date.now() - own.when < SHIFT, idle = !own || (!own.number && !Object.keys(own.ticks).length);
    if (own && fresh) place = own;
    else if (own && own.number) propose(fill(said.long, { n: own.number, name: own.name }), own.at, fill(said.go, { n: own.number }), function () { place = own; save(); });
    if (idle && other) {
      var forget = function () { keeper.forget(other.revision); };
      propose(fill(other.revision > +said.revision ? said.newer : said.older, { n: other.place.number, name: other.place.name, revision: other.revision }), other.place.at,
        fill(said.go, { n: number(find(other.place.at)) || other.place.number }), forget, forget);
    }
    var kept = !screen && fresh && own.at !== 'done' ? find(own.at) : null;
    screen = screen || kept || screens[0];
    history.scrollRestoration = 'manual';
    history.replaceState(history.state, '', '#' + encodeURIComponent(screen.id));
    show(screen, kept && number(kept) ? said.resumed : '');
    window.scrollTo(0, 0);
  }
  function again() {
    var before = place;
    clock.stop();
    place = bench.nowhere();
    propose(said.cleared, before.at, said.undo, function () { place = before; save(); });
    news = said.cleared;
    location.hash = screens[0].id;
  }

  page.addEventListener('click', function (event) {
    var band = event.target.closest('.bands a'), byHand = band && event.detail > 0;
    if (byHand && event.timeStamp - touched < BOUNCE) { event.preventDefault(); return; }
    if (byHand) touched = event.timeStamp;
    if (band && band.classList.contains('next') && number(shown)) {
      place.ticks[shown.id] = 1;
      clock.stop();
      save();
    }
    if (event.target.closest('.untick')) {
      delete place.ticks[shown.id];
      save();
      show(shown);
      heading(shown).focus({ preventScroll: true });
    }
    if (event.target.closest('.again')) again();
    if (event.target.closest('.offer .go')) settle('taken');
    if (event.target.closest('.offer .drop')) { settle('dropped'); heading(shown).focus({ preventScroll: true }); }
  });

  // A finger in a wet glove taps but does not drag: what lies below the bands comes up at a tap.
  function below() { return document.documentElement.scrollHeight - window.innerHeight - window.scrollY > 8; }
  function peek() { more.hidden = !below(); }

  // A remote has two keys, and a step may be longer than the screen: its keys read on first. What was cut off at the
  // lower edge comes whole to the upper one; what is longer than the screen goes on two lines before.
  var PARTS = 'h2,h3,h4,.law,.caution>b,.caution li,.kit>div,.say>div,figure,.do>*,.back,.comes>li,summary,details>div,.ways,.all>li';
  function way(down) {
    var bands = shown.querySelector('.bands'), edge = (more.hidden ? bands : more).getBoundingClientRect();
    // A strip that says that the guide is not in force stands over the head of the screen.
    var top = strip ? strip.offsetHeight : 0, lower = edge.left < 80 ? edge.top : window.innerHeight, whole = Math.max(80, lower - top - 64);
    if (!down) return -whole;
    var cut = Array.from(shown.querySelectorAll(PARTS)).find(function (part) { var box = part.getBoundingClientRect(); return box.height && box.bottom > lower + 1; });
    var step = cut ? cut.getBoundingClientRect().top - top - 12 : whole;
    return step < 80 || step > lower - top ? whole : step;
  }
  function press(which) {
    var band = shown.querySelector('.bands .' + which);
    // No key leaves the page.
    if (band && !band.hidden && band.getAttribute('href').charAt(0) === '#') band.click();
  }
  function further(down) {
    var goes = down > 0 ? below() : window.scrollY > 8;
    if (goes) window.scrollBy(0, way(down > 0)); else press(down > 0 ? 'next' : 'prev');
  }
  document.addEventListener('keydown', function (event) {
    var on = event.target.closest ? event.target : document.body;
    if (event.ctrlKey || event.metaKey || event.altKey || on.closest('input,select,textarea,.scroll')) return;
    if (event.key === ' ' && on.closest('button,summary')) return;
    var act = { ArrowRight: ['press', 'next'], ArrowLeft: ['press', 'prev'], PageDown: ['further', 1], PageUp: ['further', -1], ' ': ['further', event.shiftKey ? -1 : 1] }[event.key];
    if (!act) return;
    event.preventDefault();
    // A key that is held down moves on once.
    if (event.repeat) return;
    if (act[0] === 'press') press(act[1]); else further(act[1]);
  });
  document.querySelector('.skip').addEventListener('click', function (event) { event.preventDefault(); heading(shown).focus(); });
  more.addEventListener('click', function () { further(1); });
  window.addEventListener('scroll', peek, { passive: true });
  window.addEventListener('resize', peek);
  window.addEventListener('load', peek);
  page.addEventListener('toggle', peek, true);
  window.addEventListener('hashchange', move);

  document.documentElement.classList.add('one');
  count.dataset.word = count.textContent;
  page.querySelectorAll('.device').forEach(function (part) { part.hidden = false; });
  begin();
  bench.awake(function (on) { page.querySelectorAll('.awake').forEach(function (line) { line.textContent = on ? said.awake : said.dark; }); });
})(window.seamwiseBench);
