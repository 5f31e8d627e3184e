// Where one is in a guide, kept on the device under the guide and its revision. Where nothing can be kept, it lasts as
// long as the page. This file reads and writes the store and shows nothing.
window.seamwiseBench = {};
(function (bench) {
  'use strict';
  var PREFIX = 'seamwise bench ', CLOCKS = 'seamwise clocks';

  // Some browsers throw at the mere mention of a store that they refuse.
  function store() { try { return window.localStorage; } catch (refused) { return null; } }
  function get(key) { try { return store().getItem(key); } catch (refused) { return null; } }
  function set(key, text) { try { store().setItem(key, text); return true; } catch (refused) { return false; } }
  function drop(key) { try { store().removeItem(key); } catch (refused) { /* Nothing was kept. */ } }
  function keys() { try { return Object.keys(store()); } catch (refused) { return []; } }

  // What was kept may be of an older program, or no longer whole: what does not fit is left out.
  function sound(text) {
    var kept = null, place = bench.nowhere();
    try { kept = JSON.parse(text); } catch (broken) { return null; }
    if (!kept || typeof kept !== 'object') return null;
    ['at', 'name', 'running'].forEach(function (key) { if (typeof kept[key] === 'string') place[key] = kept[key]; });
    ['number', 'when', 'since'].forEach(function (key) { if (isFinite(kept[key]) && kept[key] !== null) place[key] = +kept[key]; });
    ['ticks', 'spent', 'paused'].forEach(function (key) {
      Object.keys(kept[key] && typeof kept[key] === 'object' ? kept[key] : {}).forEach(function (id) { if (isFinite(kept[key][id])) place[key][id] = +kept[key][id]; });
    });
    return place;
  }

  // A place: the screen, the number and name of its step; ticks, milliseconds and pauses by step; the clock that runs
  // and since when; when all of it was last true.
  bench.nowhere = function () { return { at: 'before', number: 0, name: '', when: 0, ticks: {}, spent: {}, paused: {}, running: '', since: 0 }; };

  bench.keeper = function (guide, revision) {
    var own = PREFIX + guide + ' ' + revision;
    return {
      read: function () { return sound(get(own)); },
      write: function (place) { return set(own, JSON.stringify(place)); },
      forget: function (other) { drop(PREFIX + guide + ' ' + other); },
      // The place in another revision that was true last, if there is one among the steps.
      other: function () {
        var start = PREFIX + guide + ' ', last = null;
        keys().forEach(function (key) {
          var revision = key.slice(start.length), place = key.indexOf(start) === 0 && key !== own && /^\d+$/.test(revision) ? sound(get(key)) : null;
          if (place && place.number && (!last || place.when > last.place.when)) last = { revision: +revision, place: place };
        });
        return last;
      },
    };
  };

  // Whether clocks are shown is a choice of the device, for all guides.
  bench.clocks = function (shown) {
    if (shown === undefined) return get(CLOCKS) === '1';
    if (shown) set(CLOCKS, '1'); else drop(CLOCKS);
    return shown;
  };
})(window.seamwiseBench);
