// The search box of a page: asks `search.js`, shows what it finds, and keeps the search in the address. The page is
// complete without it. The index is read on first use, by script elements, which work from a folder too.
(function () {
  'use strict';
  var search = window.seamwiseSearch;

  // The box on a page. What it says stands in the form's data, in the language of the page.
  function start(form) {
    var FIRST = 6, MANY = 30, said = form.dataset, field = form.querySelector('input'), status = form.querySelector('[role=status]'), list = form.querySelector('.found'), clear = form.querySelector('.clear');
    var folder = said.index.replace(/[^/]*$/, ''), asking = {}, index = null, failed = false, opens = false, widened = {}, chosen = { species: '', kind: '' }, later = 0;

    function fill(text, values) { return text.replace(/\[(\w+)\]/g, function (all, name) { return values[name]; }); }
    function make(tag, text, name) { var element = document.createElement(tag); if (text) element.textContent = text; if (name) element.className = name; return element; }
    function add(parent, children) { children.forEach(function (child) { if (child) parent.appendChild(child); }); return parent; }
    function button(text, act) { var element = make('button', text); element.type = 'button'; element.addEventListener('click', act); return element; }

    // Reads a file of the index once, then shows again.
    function read(url) {
      if (asking[url]) return;
      asking[url] = true;
      var script = make('script');
      script.src = url;
      script.onload = function () {
        try { index = search.open(window.seamwiseIndex); } catch (error) { failed = true; }
        show();
      };
      script.onerror = function () { failed = true; asking[url] = false; show(); };
      document.head.appendChild(script);
    }
    function begin() { if (!index) { failed = false; read(said.index); } }

    function filters() {
      return { species: chosen.species ? [chosen.species] : [], kinds: chosen.kind ? [index.data.kinds.indexOf(chosen.kind)] : [] };
    }
    function idle() { return !field.value.trim() && !chosen.species && !chosen.kind; }
    function say(text) { if (status.textContent !== text) status.textContent = text; }

    function show() {
      clear.hidden = !field.value;
      form.querySelectorAll('.narrow details').forEach(function (details) {
        var by = details.dataset.by, shownChoice = '';
        details.querySelectorAll('button').forEach(function (one) {
          var on = one.value === chosen[by];
          one.setAttribute('aria-pressed', String(on));
          if (on && one.value) shownChoice = one.textContent;
        });
        details.querySelector('summary b').textContent = shownChoice;
      });
      if (idle()) { list.textContent = ''; say(''); return; }
      if (failed) { list.textContent = ''; say(said.failed); return; }
      if (!index) { say(said.reading); begin(); return; }
      var answer = field.value.trim() ? search.find(index, field.value, filters()) : search.all(index, filters());
      var groups = answer.missing ? null : grouped(answer), missing = answer.missing || groups.missing;
      if (missing.length) { say(said.reading); missing.forEach(function (file) { read(folder + file); }); return; }
      list.textContent = '';
      say(told(answer));
      if (!answer.hits.length) list.appendChild(nothing(answer));
      add(list, groups.sections);
      if (opens) { opens = false; go(); }
    }

    function told(answer) {
      var count = answer.hits.length, text = fill(count === 1 ? said.one : said.many, { n: count });
      if (answer.short) return said.short;
      if (!count) return answer.total ? fill(said.elsewhere, { n: answer.total }) : fill(said.none, { query: field.value.trim() });
      if (!answer.all) return said.some + ' ' + text;
      answer.instead.forEach(function (pair) { text = fill(said.instead, { typed: pair[0], found: pair[1].join(', ') }) + ' ' + text; });
      return text;
    }

    // Where nothing was found: the filters away, or a look through a species.
    function nothing(answer) {
      var ways = make('div', '', 'choices');
      if (answer.total) ways.appendChild(button(said.everywhere, function () { chosen = { species: '', kind: '' }; change(); }));
      else if (!answer.short) form.querySelectorAll('[data-by=species] button').forEach(function (one) {
        if (one.value) ways.appendChild(button(one.textContent, function () { field.value = ''; chosen = { species: one.value, kind: '' }; change(); }));
      });
      return ways;
    }

    // Hits by kind, the kind of the best hit first.
    function grouped(answer) {
      var groups = [], byKind = {}, missing = {};
      answer.hits.forEach(function (hit) {
        var kind = index.data.kinds[index.data.kindOf.charCodeAt(hit.record) - 48];
        if (!byKind[kind]) groups.push(byKind[kind] = { kind: kind, hits: [] });
        byKind[kind].hits.push(hit);
      });
      var sections = groups.map(function (group) {
        var name = form.querySelector('[data-by=kind] button[value="' + group.kind + '"]'), section = make('section'), hits = make('ol');
        var first = chosen.kind ? MANY : FIRST, whole = widened[group.kind] || group.hits.length <= first + 2;
        add(section, [add(make('h3', name ? name.textContent : group.kind), [make('small', ' ' + group.hits.length)]), hits]);
        group.hits.slice(0, whole ? group.hits.length : first).forEach(function (hit) {
          var item = search.shown(index, hit.record);
          if (item.missing) missing[item.missing] = true; else hits.appendChild(line(item, answer.words));
        });
        if (!whole) section.appendChild(button(fill(said.all, { n: group.hits.length }), function () {
          widened[group.kind] = true;
          show();
          var next = form.querySelectorAll('.found section')[groups.indexOf(group)].querySelectorAll('a')[first];
          if (next) next.focus();
        }));
        return section;
      });
      return { sections: sections, missing: Object.keys(missing) };
    }

    function line(item, found) {
      var link = make('a'), names = search.answering(item, found).map(function (other) {
        return other.region ? other.name + ' (' + (other.region.length < 4 ? other.region.toUpperCase() : other.region) + ')' : other.name;
      });
      link.href = said.root + item.url;
      var place = [item.step ? fill(said.step, { n: item.step }) : '', item.context].filter(Boolean).join(', ');
      var state = item.state === 'd' ? said.draft : item.state === 'w' ? said.withdrawn : '';
      add(link, [make('b', item.title), names.length ? make('span', names.join(', ')) : null, place ? make('small', place) : null, state ? make('em', state) : null]);
      return add(make('li'), [link]);
    }

    function links() { return Array.from(list.querySelectorAll('a')); }
    function go() { var first = links()[0]; if (first) { keep(); first.click(); } }

    // The search stands in the address, so that Back returns to it; it is written at rest, for some browsers limit how often.
    function keep() {
      var parts = new URLSearchParams();
      clearTimeout(later);
      if (field.value.trim()) parts.set('q', field.value.trim());
      ['species', 'kind'].forEach(function (by) { if (chosen[by]) parts.set(by, chosen[by]); });
      var hash = parts.toString() ? '#' + parts : '';
      if (hash !== location.hash && (hash || asked())) history.replaceState(history.state, '', hash || location.pathname + location.search);
    }
    function asked() { return /^#(q|species|kind)=/.test(location.hash); }
    function recall() {
      if (!asked()) return;
      var parts = new URLSearchParams(location.hash.slice(1));
      field.value = parts.get('q') || '';
      chosen = { species: parts.get('species') || '', kind: parts.get('kind') || '' };
      begin();
      show();
    }
    // Brings the box to the top where what is found would lie under the keyboard of a phone.
    function lift() {
      var height = window.visualViewport ? window.visualViewport.height : window.innerHeight;
      if (!idle() && status.getBoundingClientRect().top > 0.6 * height) window.scrollBy(0, field.getBoundingClientRect().top - 8);
    }
    function change() { widened = {}; clearTimeout(later); later = setTimeout(keep, 400); show(); }

    form.addEventListener('submit', function (event) {
      event.preventDefault();
      if (list.querySelector('a')) go(); else opens = !idle();
    });
    clear.addEventListener('click', function () { field.value = ''; change(); field.focus(); });
    field.addEventListener('focus', begin);
    field.addEventListener('input', function () { opens = false; change(); lift(); });
    form.querySelectorAll('.narrow button').forEach(function (one) {
      one.addEventListener('click', function () {
        var details = one.closest('details'), by = details.dataset.by;
        chosen[by] = chosen[by] === one.value ? '' : one.value;
        details.open = false;
        details.querySelector('summary').focus();
        change();
      });
    });
    form.addEventListener('keydown', function (event) {
      var all = links(), at = all.indexOf(document.activeElement), inField = document.activeElement === field;
      if (event.key === 'ArrowDown' && (inField || at >= 0)) { if (all[at + 1]) all[at + 1].focus(); } else if (event.key === 'ArrowUp' && at >= 0) (all[at - 1] || field).focus();
      else if (event.key === 'Escape' && (inField || at >= 0)) { if (inField) { field.value = ''; change(); } field.focus(); } else return;
      event.preventDefault();
    });
    document.addEventListener('keydown', function (event) {
      if (event.key !== '/' || event.ctrlKey || event.metaKey || event.altKey || /^(INPUT|TEXTAREA|SELECT)$/.test(event.target.nodeName)) return;
      event.preventDefault();
      field.focus();
    });
    list.addEventListener('click', keep);
    window.addEventListener('pagehide', keep);
    window.addEventListener('hashchange', recall);
    form.hidden = false;
    recall();
  }

  document.querySelectorAll('form.find').forEach(start);
})();
