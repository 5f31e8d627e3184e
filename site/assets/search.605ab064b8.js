// Search: reads the index, finds, and ranks. It knows nothing of the page; `search-box.js` shows what it finds. A classic
// script without fetch, so that it works over http and from a folder alike.
(function (global) {
  'use strict';
  // How well words agree; a word that only begins others, and few, may also be a slip, and such hits come far behind.
  var FEW = 10, FAR_BEHIND = 64, EXACT = 8, FORM = 7, PARTED = 6, BEGINNING = 6, SHORT_BEGINNING = 5, ERROR = 4, ERROR_AT_FIRST = 3;
  var WORD = /\d+(?:[.,]\d+)+|[\p{Alphabetic}\p{N}]+/gu, LETTERS = { 'ß': 'ss', 'æ': 'ae', 'œ': 'oe', 'ø': 'o', 'đ': 'd', 'ð': 'd', 'ł': 'l' };
  var VALUE = new Uint8Array(128), clz32 = Math.clz32;
  'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_'.split('').forEach(function (letter, value) { VALUE[letter.charCodeAt(0)] = value; });

  // Words as the index has them: compatibility forms apart, marks dropped, letters small, apostrophes inside dropped.
  function words(text) {
    var folded = text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase().replace(/[ßæœøđðł]/g, function (letter) { return LETTERS[letter]; });
    folded = folded.replace(/(\p{Alphabetic})['’ʼ](?=\p{Alphabetic})/gu, '$1');
    return (folded.match(WORD) || []).map(function (word) { return Array.from(word.replace(/,/g, '.')).slice(0, 40).join(''); });
  }

  // Bits of a text, six a character, read from a character on; up to 29 are held, so that runs are counted at once.
  function Bits(text, at) { this.text = text; this.at = at; this.held = 0; this.count = 0; }
  Bits.prototype.fill = function () { while (this.count < 24) { this.held = (this.held & (1 << this.count) - 1) << 6 | VALUE[this.text.charCodeAt(this.at++)]; this.count += 6; } };
  Bits.prototype.bits = function (width) {
    if (this.count < width) this.fill();
    this.count -= width;
    return this.held >>> this.count & (1 << width) - 1;
  };
  // How many ones come before a zero; the zero is read too.
  Bits.prototype.unary = function () {
    for (var ones = 0, run; ; ones += run) {
      this.fill();
      run = clz32(~(this.held << 32 - this.count));
      if (run < this.count) { this.count -= run + 1; return ones + run; }
      this.count = 0;
    }
  };
  Bits.prototype.gamma = function () { var width = 0; while (!this.bits(1)) width += 1; return 1 << width | this.bits(width); };
  // Where a word stands: text 0, text often 10, notes 110, else 111 and three bits.
  Bits.prototype.place = function () {
    this.fill();
    var run = clz32(~(this.held << 32 - this.count));
    if (run < 3) { this.count -= run + 1; return run; }
    this.count -= 3;
    return 3 + this.bits(3);
  };

  // What is read once, when the index arrives.
  function open(data) {
    if (data.form !== 1) throw new Error('an index of another form');
    if (data.opened) return data.opened;
    var list = [], text = data.words, before = '', from = 0, at, code;
    for (at = 1; at <= text.length; at += 1) {
      code = at < text.length ? text.charCodeAt(at) : 65;
      if (code > 64 && code < 91) {
        before = before.slice(0, text.charCodeAt(from) - 65) + text.slice(from + 1, at);
        list.push(before);
        from = at;
      }
    }
    var starts = [0], sizes = new Bits(data.blockSizes, 0), ends = [], part;
    for (at = 0; at * data.block < list.length; at += 1) starts.push(starts[at] + sizes.bits(24));
    for (part = 0; part < data.lists.length; part += 1) ends.push(part + 1 < data.lists.length ? data.lists[part + 1].from : starts.length);
    data.opened = { data: data, words: list, starts: starts, ends: ends, stop: data.stop.split(' '), pages: [] };
    return data.opened;
  }

  // Calls `use` with record and kind of place for each place of the words from `from` up to but without `to`.
  // Lists that are not there yet are put on `missing` by the name of their file.
  function places(index, from, to, missing, use) {
    var data = index.data, block = data.block, part = 0, first = from - from % block, at;
    for (at = first; at < to; at += block) {
      while (at / block >= index.ends[part]) part += 1;
      var list = data.lists[part];
      if (list.text === undefined) { missing[list.file] = true; continue; }
      var bits = new Bits(list.text, index.starts[at / block] - index.starts[list.from]);
      for (var word = at; word < to && word < at + block; word += 1) {
        var count = bits.gamma(), mean = Math.floor(data.records * 11 / (count * 16)), width = mean > 1 ? 31 - clz32(mean) : 0, record = -1;
        while (count--) {
          record += 1 + (bits.unary() << width | bits.bits(width));
          var place = bits.place();
          if (word >= from) use(record, place);
        }
      }
    }
  }

  // The first word that does not sort before this one.
  function lower(list, word) {
    var low = 0, high = list.length, middle;
    while (low < high) { middle = (low + high) >> 1; if (list[middle] < word) low = middle + 1; else high = middle; }
    return low;
  }

  var BASES = [10, 12, 4, 32, 64, 52, 64, 52, 64, 52], SIZES = [0, 0, 0, 0, 3, 3, 2, 2, 1, 1];

  // One query on its way: what each word was found to be, and which files are needed first.
  function Search(index) { this.index = index; this.missing = {}; this.count = 0; }
  Search.prototype.word = function (text, isOpen) { return { text: text, open: isOpen, values: new Map(), matched: new Set(), known: false, mended: false }; };
  Search.prototype.take = function (word, from, to, quality, farBehind) {
    var behind = farBehind || 1, count = this.count, lengths = this.index.data.lengths, values = word.values;
    places(this.index, from, to, this.missing, function (record, place) {
      var size = SIZES[place], weight = BASES[place] + (!size ? 0 : size <= count ? 32 : size === count + 1 ? 8 : 0);
      var value = weight * quality * (place < 3 ? 60 - lengths.charCodeAt(record) : 10) / behind | 0;
      if (!(values.get(record) >= value)) values.set(record, value);
    });
    for (; from < to; from += 1) word.matched.add(from);
  };
  Search.prototype.takeOne = function (word, text, quality) {
    var at = lower(this.index.words, text);
    if (this.index.words[at] !== text) return;
    this.take(word, at, at + 1, quality);
    word.known = true;
  };
  // All words that begin so; a run of words of one quality is read at once.
  Search.prototype.takeBeginning = function (word, near) {
    var list = this.index.words, from = lower(list, word.text), at = from, quality = 0;
    for (;;) {
      var fits = at < list.length && list[at].startsWith(word.text), next = fits ? (list[at].length <= word.text.length + 3 ? near : SHORT_BEGINNING) : 0;
      if (next !== quality && at > from) { this.take(word, from, at, quality); from = at; }
      if (!fits) return;
      quality = next;
      at += 1;
    }
  };
  Search.prototype.whole = function (word) {
    var text = word.text;
    if (word.open && text.length > 1) this.takeBeginning(word, BEGINNING);
    this.takeOne(word, text + 's', FORM);
    this.takeOne(word, text + 'es', FORM);
    if (text.length > 3 && /[^s]s$/.test(text)) this.takeOne(word, text.slice(0, -1), FORM);
    if (text.length > 4 && /es$/.test(text)) this.takeOne(word, text.slice(0, -2), FORM);
    this.takeOne(word, text, EXACT);
  };
  // Adds what other words came to.
  Search.prototype.add = function (word, values, others) {
    values.forEach(function (value, record) { if (!(word.values.get(record) >= value)) word.values.set(record, value); });
    others.forEach(function (other) { other.matched.forEach(function (at) { word.matched.add(at); }); });
  };
  // Two words written as one: a record must have both.
  Search.prototype.parted = function (word) {
    for (var at = 3; at <= word.text.length - 3; at += 1) {
      var left = this.word(word.text.slice(0, at)), right = this.word(word.text.slice(at));
      var list = this.index.words;
      if (list[lower(list, left.text)] !== left.text || list[lower(list, right.text)] !== right.text) continue;
      this.takeOne(left, left.text, PARTED);
      this.takeOne(right, right.text, PARTED);
      var both = new Map();
      left.values.forEach(function (value, record) { if (right.values.has(record)) both.set(record, Math.min(value, right.values.get(record))); });
      if (both.size) this.add(word, both, [left, right]);
    }
  };

  // One letter put in, left out or taken for another, or two neighbours swapped. `beginning`: `known` may go on.
  function oneError(typed, known, beginning) {
    var at = 0, a = typed.length, b = known.length;
    if (beginning ? b < a - 1 : a - b > 1 || b - a > 1) return false;
    while (at < a && at < b && typed.charCodeAt(at) === known.charCodeAt(at)) at += 1;
    function same(i, j) { var rest = typed.slice(i); return beginning ? known.startsWith(rest, j) : known.slice(j) === rest; }
    return at < b && same(at, at + 1) || at < a && same(at + 1, at) || at < a && at < b && same(at + 1, at + 1) ||
      at + 1 < a && at + 1 < b && typed[at] === known[at + 1] && typed[at + 1] === known[at] && same(at + 2, at + 2);
  }
  Search.prototype.fallBack = function (word) {
    var length = word.text.length, search = this;
    function open() { return !word.values.size && !search.waits(); }
    if (!word.open && length > 2) this.takeBeginning(word, SHORT_BEGINNING);
    if (open()) { this.slips(word, false, 1); word.mended = word.values.size > 0; }
    if (open() && length > 5) this.parted(word);
    if (open() && length > 4 && word.open) { this.slips(word, true, 1); word.mended = word.values.size > 0; }
  };
  // Words that are one error away, or begin so.
  Search.prototype.slips = function (word, beginning, behind) {
    var text = word.text, search = this;
    if (text.length < 4 || /[0-9]/.test(text)) return;
    this.index.words.forEach(function (known, at) {
      if (known.length < 4 || !oneError(text, known, beginning) || /[0-9]/.test(known)) return;
      search.take(word, at, at + 1, !beginning && known[0] === text[0] ? ERROR : ERROR_AT_FIRST, behind);
    });
  };
  Search.prototype.waits = function () { return Object.keys(this.missing).length > 0; };

  function asked(index, query) {
    var all = words(query), isOpen = /[\p{Alphabetic}\p{N}'’]$/u.test(query), kept = [];
    all.forEach(function (text, at) {
      var last = isOpen && at + 1 === all.length, begun = last && kept.length && text.length === 1 && !/[0-9]/.test(text);
      // One letter, while typing, says nothing yet beside other words.
      if (!begun && (index.stop.indexOf(text) < 0 || last && all.length === 1)) kept.push({ text: text, open: last });
    });
    return kept;
  }

  // Finds. Gives back `missing`, files to be read first, or `hits`, best first, with what was taken for what.
  function find(index, query, filters) {
    var search = new Search(index), said = asked(index, query), list = index.words, data = index.data;
    search.count = said.length;
    var each = said.map(function (one) { return search.word(one.text, one.open); });
    each.forEach(function (word) { search.whole(word); });
    each.forEach(function (word, at) {
      if (!at) return;
      var pair = [each[at - 1], word], joined = pair[0].text + word.text, both = search.word(joined, word.open && joined.length > 3);
      search.whole(both);
      both.values.forEach(function (value, record) { both.values.set(record, Math.floor(value * FORM / EXACT)); });
      pair.forEach(function (one) { search.add(one, both.values, [both]); if (both.matched.size) one.known = true; });
    });
    each.forEach(function (word) {
      if (search.waits()) return;
      if (!word.values.size) search.fallBack(word);
      else if (!word.known && word.values.size <= FEW) search.slips(word, false, FAR_BEHIND);
    });
    if (search.waits()) return { missing: Object.keys(search.missing) };
    var scores = new Map(), most = 0;
    each.forEach(function (word) {
      var rarity = word.values.size ? Math.round(16 * Math.log2(1 + data.records / word.values.size)) : 0;
      word.values.forEach(function (value, record) {
        var entry = scores.get(record);
        if (!entry) scores.set(record, entry = { record: record, words: 0, score: 0 });
        entry.words += 1;
        entry.score += value * rarity;
        if (entry.words > most) most = entry.words;
      });
    });
    var hits = [], total = 0;
    scores.forEach(function (entry) {
      if (most * 2 < each.length || entry.words < most) return;
      total += 1;
      if (passes(data, entry.record, filters)) hits.push(entry);
    });
    hits.sort(function (a, b) { return b.score - a.score || data.titleLengths.charCodeAt(a.record) - data.titleLengths.charCodeAt(b.record) || a.record - b.record; });
    function spelt(word) { return Array.from(word.matched).sort(function (a, b) { return a - b; }).map(function (at) { return list[at]; }); }
    return {
      hits: hits, total: total, all: most === each.length, short: each.length === 1 && !each[0].values.size && each[0].text.length === 1,
      words: each.map(function (word) { return { text: word.text, matched: new Set(spelt(word)) }; }),
      instead: each.filter(function (word) { return word.mended; }).map(function (word) { return [word.text, spelt(word).slice(0, 3)]; }),
    };
  }
  function passes(data, record, filters) {
    var species = filters && filters.species, kinds = filters && filters.kinds;
    return (!species || !species.length || species.indexOf(data.species[data.speciesOf.charCodeAt(record) - 49]) >= 0) &&
      (!kinds || !kinds.length || kinds.indexOf(data.kindOf.charCodeAt(record) - 48) >= 0);
  }
  // All records that pass, in the order of the index; for looking through a species without typing.
  function all(index, filters) {
    var hits = [];
    for (var record = 0; record < index.data.records; record += 1) if (passes(index.data, record, filters)) hits.push({ record: record, score: 0 });
    return { hits: hits, total: hits.length, all: true, words: [], instead: [] };
  }

  // What is shown of a record, or the file that must be read first.
  function shown(index, record) {
    var size = index.data.page, at = Math.floor(record / size), page = index.data.pages[at];
    if (page.text === undefined) return { missing: page.file };
    if (!index.pages[at]) {
      var before = ['', '', '', ''];
      index.pages[at] = page.text.split('\n').map(function (line) {
        var fields = line.split('\t');
        [0, 1, 3].forEach(function (field) { before[field] = before[field].slice(0, fields[field].charCodeAt(0) - 48) + fields[field].slice(1); });
        return {
          title: before[0], url: before[1], step: parseInt(fields[2], 10) || 0, state: fields[2].replace(/[0-9]/g, ''), context: before[3],
          names: fields.slice(4).map(function (name) { var colon = name.indexOf(':'); return { region: name.slice(0, colon), name: name.slice(colon + 1) }; }),
        };
      });
    }
    return index.pages[at][record % size];
  }
  // The other names that answer the query at least as well as the title does.
  function answering(item, found) {
    function score(text) {
      var has = words(text);
      return found.filter(function (word) { return has.some(function (one) { return word.matched.has(one); }); }).length;
    }
    var title = score(item.title), best = Math.max.apply(null, [title, 1].concat(item.names.map(function (name) { return score(name.name); })));
    return item.names.filter(function (name) { return score(name.name) === best && (name.region || name.name !== item.title); });
  }

  global.seamwiseSearch = { open: open, words: words, find: find, all: all, shown: shown, answering: answering };
})(typeof self === 'undefined' ? this : self);
