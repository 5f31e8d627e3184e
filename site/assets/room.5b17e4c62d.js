// The room view: shows one picture, and splits what does not fit over several instead of making letters smaller. It never
// moves by itself, and shows an answer only when asked. The page is complete without it.
(function () {
  'use strict';
  var page = document.querySelector('.room');
  if (!page) return;
  var root = document.documentElement, said = page.dataset, moves = page.querySelector('.moves'), status = page.querySelector('[role=status]'), title = document.title, seam = page.querySelector('.seam');
  var whole = Array.from(page.querySelectorAll('.pic')), pictures = [], ready = [], shown = null, words = null, steps = page.querySelectorAll('.step').length;

  function fill(text, values) { return text.replace(/\[(\w+)\]/g, function (all, name) { return name in values ? values[name] : all; }); }
  function atoms(picture) { return picture.querySelector('.atoms,.kit'); }
  // The anchor under which a picture lies: of its step, of the end, or its own; the opening for what has none.
  function home(picture) { return picture.closest('[id].step,[id].end,[id].pic') || whole[0]; }
  function number(picture) { var step = picture.closest('.step'); return step ? +step.dataset.number : 0; }
  function mates(picture) { return pictures.filter(function (one) { return home(one) === home(picture); }); }

  // Splitting. What was split before is put together first, so that it can be done again for another size.
  function spills(picture) { return picture.scrollHeight > picture.clientHeight + 2; }
  // What holds the parts of a thing: the list of its tools, or itself.
  function inner(thing) { return thing.querySelector('dd ul') || thing; }
  // Moves what comes last to the list of the next picture; of one caution alone, how to avoid it; of tools alone, the last.
  function shift(list, rest) {
    var last = list.lastElementChild, part = inner(last).lastElementChild;
    if (list.children.length > 1) { rest.prepend(last); return; }
    if (!rest.firstElementChild) {
      rest.append(last.cloneNode(last !== inner(last)));
      inner(rest.firstElementChild).textContent = '';
      rest.firstElementChild.dataset.cut = '1';
    }
    inner(rest.firstElementChild).prepend(part);
  }
  function splits(list) {
    var only = list.children.length === 1 && list.firstElementChild;
    return list.children.length > 1 || (only && (list.closest('.caution') || inner(only) !== only) && inner(only).children.length > 1);
  }
  function part(picture, text) {
    var head = picture.querySelector('h2'), mark = head && (head.querySelector('i') || head.appendChild(document.createElement('i')));
    if (mark && text) mark.textContent = text; else if (mark) mark.remove();
  }
  function halves(picture) {
    var list = atoms(picture);
    picture.classList.add('now');
    if (!list || !spills(picture) || !splits(list)) { picture.classList.remove('now'); return [picture]; }
    // The number of the part takes room too.
    part(picture, fill(said.part, { n: 8, all: 8 }));
    var next = picture.cloneNode(true), rest = atoms(next), parts = list.children.length === 1;
    rest.textContent = '';
    next.dataset.more = '1';
    next.classList.remove('now');
    next.removeAttribute('id');
    next.querySelectorAll('[id]').forEach(function (part) { part.removeAttribute('id'); });
    // Either whole things go over, or parts of the one that is left, but not both: a thing that was cut comes first.
    while (spills(picture) && splits(list) && (parts || list.children.length > 1)) shift(list, rest);
    picture.classList.remove('now');
    picture.after(next);
    return halves(picture).concat(halves(next));
  }
  function split(picture) {
    var made = halves(picture);
    if (!atoms(picture)) return made;
    made.forEach(function (one, index) { part(one, made.length > 1 ? fill(said.part, { n: index + 1, all: made.length }) : ''); });
    return made;
  }
  // The pictures of one step are split when the first of them is wanted: all at once would take a second.
  function fit(picture) {
    var anchor = home(picture);
    if (ready.indexOf(anchor) >= 0) return;
    ready.push(anchor);
    if (shown) shown.classList.remove('now');
    mates(picture).forEach(function (one) { pictures.splice.apply(pictures, [pictures.indexOf(one), 1].concat(split(one))); });
  }
  function arrange() {
    pictures.forEach(function (picture) { picture.classList.remove('now'); });
    page.querySelectorAll('[data-more]').forEach(function (more) {
      var before = more.previousElementSibling, list = atoms(before);
      Array.from(atoms(more).children).forEach(function (atom) {
        if (!atom.dataset.cut) list.appendChild(atom);
        else Array.from(inner(atom).childNodes).forEach(function (part) { inner(list.lastElementChild).appendChild(part); });
      });
      more.remove();
    });
    pictures = whole.slice();
    ready = [];
    // The words at which one arrived stay in sight.
    fit(words ? words.closest('.pic') : pictures[0]);
    shown = words ? words.closest('.pic') : pictures[0];
    show(shown, true);
  }

  function show(picture, still) {
    fit(picture);
    var step = number(picture), mine = mates(picture), at = mine.indexOf(picture) + 1, head = picture.querySelector('h2');
    if (picture !== shown) page.querySelectorAll('.ask[open]').forEach(function (answer) { answer.open = false; });
    pictures.forEach(function (one) { one.classList.toggle('now', one === picture); });
    shown = picture;
    if (!still) { picture.scrollTop = 0; window.scrollTo(0, 0); }
    var where = step ? fill(said.place, { n: step, all: steps }) : said.index, place = (step ? where : head.textContent) + ', ' + fill(said.part, { n: at, all: mine.length });
    moves.querySelector('.place').textContent = where;
    // A stitch for each picture of the step, up to this one in ink.
    seam.replaceChildren.apply(seam, mine.map(function (one, index) { var stitch = document.createElement('i'); stitch.className = index < at ? 'seen' : ''; return stitch; }));
    moves.querySelector('.prev').disabled = picture === pictures[0];
    moves.querySelector('.next').disabled = picture === pictures[pictures.length - 1];
    page.querySelectorAll('.index li').forEach(function (line) { line.classList.toggle('here', line.querySelector('a').getAttribute('href') === '#' + encodeURIComponent(home(picture).id)); });
    document.title = place + ': ' + title;
    if (still) return;
    words = (atoms(picture) && atoms(picture).firstElementChild) || head;
    history.replaceState(history.state, '', '#' + encodeURIComponent(home(picture).id) + (at > 1 ? '/' + at : ''));
    status.textContent = place;
    head.focus({ preventScroll: true });
  }
  function beside(by) {
    var next = pictures[pictures.indexOf(shown) + by];
    if (next) fit(next);
    return pictures[pictures.indexOf(shown) + by];
  }
  function go(by) {
    // One thing alone may be too long for a picture: then it scrolls, the letters stay, and it is read to its end first.
    var box = shown.scrollHeight > shown.clientHeight + 2 ? shown : document.scrollingElement;
    if (by > 0 ? box.scrollTop + box.clientHeight < box.scrollHeight - 4 : box.scrollTop > 4) { box.scrollBy(0, by * 0.7 * box.clientHeight); return; }
    var next = beside(by);
    if (next) show(next);
  }
  // To the first picture of the next step, or of this one, or of the one before.
  function leap(by) {
    var at = pictures.indexOf(shown), homes = pictures.map(home), from = homes.indexOf(homes[at]);
    if (by > 0) { while (at < pictures.length && homes[at] === homes[from]) at += 1; } else if (at > from) at = from; else at = from ? homes.indexOf(homes[from - 1]) : 0;
    if (pictures[at]) show(pictures[at]);
  }
  function recall() {
    var asked = location.hash.slice(1).split('/'), id = asked[0], found;
    try { id = decodeURIComponent(id); } catch (broken) { return false; }
    found = pictures.find(function (picture) { return home(picture).id === id; });
    if (!found) return false;
    fit(found);
    found = mates(found);
    show(found[Math.min(found.length, Math.max(1, +asked[1] || 1)) - 1]);
    return true;
  }

  // The room: kept on the device, and as the device is set until one is chosen.
  function keep(room) { try { if (room) window.localStorage.setItem('seamwise room', room); else return window.localStorage.getItem('seamwise room'); } catch (refused) { /* Nothing is kept then. */ } return room; }
  function choose(room) {
    ['dark', 'bright'].forEach(function (one) {
      root.classList.toggle(one, one === room);
      page.querySelectorAll('.choose .' + one).forEach(function (button) { button.setAttribute('aria-pressed', String(one === room)); });
    });
  }

  // The index lies over the picture while it is open.
  var dialog = document.createElement('dialog'), close = document.createElement('button'), index = page.querySelector('.index');
  close.type = 'button';
  close.className = 'close';
  close.textContent = said.close;
  index.replaceWith(dialog);
  dialog.append(index);
  index.querySelector('.choose').prepend(close);
  dialog.setAttribute('aria-label', index.getAttribute('aria-label'));
  function open() { if (dialog.showModal) dialog.showModal(); else dialog.setAttribute('open', ''); var here = index.querySelector('.here a'); if (here) here.focus(); }
  function shut() { if (dialog.close) dialog.close(); else dialog.removeAttribute('open'); }

  page.addEventListener('click', function (event) {
    var link = event.target.closest('.index li a'), button = event.target.closest('button');
    if (link && link.getAttribute('href').charAt(0) === '#') {
      event.preventDefault();
      shut();
      history.replaceState(history.state, '', link.getAttribute('href'));
      recall();
    }
    if (!button) return;
    if (button === close) shut();
    else if (button.matches('.prev')) go(-1);
    else if (button.matches('.next')) go(1);
    else if (button.matches('.place')) open();
    else if (button.matches('.full')) { if (document.fullscreenElement) document.exitFullscreen(); else root.requestFullscreen().then(shut, function () { button.hidden = true; }); }
    else if (button.matches('.dark,.bright')) choose(keep(button.matches('.dark') ? 'dark' : 'bright'));
  });
  document.addEventListener('fullscreenchange', function () { page.querySelector('.full').textContent = document.fullscreenElement ? said.leave : said.full; });
  document.addEventListener('keydown', function (event) {
    var on = event.target.closest ? event.target : document.body, control = on.closest('button,a,summary');
    if (event.ctrlKey || event.metaKey || event.altKey || dialog.open || event.repeat) return;
    if (control && (event.key === ' ' || event.key === 'Enter')) return;
    var answer = shown.querySelector('.ask');
    var act = { ArrowRight: [go, 1], PageDown: [go, 1], ' ': [go, event.shiftKey ? -1 : 1], ArrowLeft: [go, -1], PageUp: [go, -1], ArrowDown: [leap, 1], ArrowUp: [leap, -1] }[event.key];
    if (event.key === 'Home') show(pictures[0]);
    else if (event.key === 'End') { fit(pictures[pictures.length - 1]); show(pictures[pictures.length - 1]); }
    else if (event.key === 'Enter' && answer) answer.open = !answer.open;
    else if (act) act[0](act[1]);
    else return;
    event.preventDefault();
  });
  document.querySelector('.skip').addEventListener('click', function (event) { event.preventDefault(); shown.querySelector('h2').focus(); });
  window.addEventListener('hashchange', recall);
  var later = 0;
  function resized() { clearTimeout(later); later = setTimeout(arrange, 120); }
  window.addEventListener('resize', resized);
  // Letters can grow without the window, and a notice can stand above the picture: then the bar grows, or the room shrinks.
  if (window.ResizeObserver) [moves, page].forEach(function (part) { new ResizeObserver(resized).observe(part); });

  page.querySelectorAll('.choose,.keys').forEach(function (part) { part.hidden = false; });
  page.querySelector('.full').hidden = !document.fullscreenEnabled;
  moves.hidden = false;
  root.classList.add('one');
  choose(keep());
  arrange();
  recall();
})();
