// The clock of a step: it counts up beside the usual time, survives a lock, and can be paused and hidden. It moves
// nothing on and takes nothing away.
(function (bench) {
  'use strict';
  bench.time = function (milliseconds) {
    var seconds = Math.max(0, Math.floor(milliseconds / 1000)), hours = Math.floor(seconds / 3600), minutes = Math.floor(seconds / 60) % 60;
    function two(number) { return number < 10 ? '0' + number : '' + number; }
    return (hours ? hours + ':' + two(minutes) : minutes) + ':' + two(seconds % 60);
  };

  // `place()` gives the place, `save()` keeps it, `said` holds the words.
  bench.clock = function (place, save, said) {
    var shown = bench.clocks(), screen = null, beat = 0;

    function spent(id) {
      var now = place();
      return (now.spent[id] || 0) + (now.running === id ? Math.max(0, Date.now() - now.since) : 0);
    }
    function stop() {
      var now = place();
      if (!now.running) return;
      now.spent[now.running] = spent(now.running);
      now.running = '';
      save();
    }
    function run(id) {
      var now = place();
      if (now.running === id) return;
      stop();
      now.running = id;
      now.since = Date.now();
      save();
    }
    function draw() {
      var box = screen && screen.querySelector('.clock');
      clearTimeout(beat);
      if (!box || box.hidden) return;
      var low = +box.dataset.low, high = +box.dataset.high, whole = Math.max(high * 1.5, 1), seconds = spent(screen.id) / 1000, runs = place().running === screen.id;
      function part(value) { return Math.min(100, 100 * value / whole) + '%'; }
      box.querySelector('.may').setAttribute('width', part(high));
      box.querySelector('.low').setAttribute('width', part(low));
      box.querySelector('use').setAttribute('x', part(seconds));
      box.querySelector('[role=timer]').textContent = bench.time(seconds * 1000);
      var usual = box.querySelector('p span');
      usual.dataset.usual = usual.dataset.usual || usual.textContent;
      usual.textContent = usual.dataset.usual + (seconds > high ? ', ' + said.over : '');
      box.querySelector('.pause').textContent = runs ? said.pause : said.run;
      // The next full second, so that none is skipped; nothing beats while nothing is seen.
      if (runs && !document.hidden) beat = setTimeout(draw, 1000 - spent(screen.id) % 1000 + 5);
    }
    function arrange() {
      var box = screen && screen.querySelector('.clock');
      if (!box) return;
      box.hidden = !shown;
      if (shown && !place().paused[screen.id] && !place().ticks[screen.id]) run(screen.id);
      draw();
    }
    function choose(on) {
      shown = bench.clocks(on);
      if (!shown) stop();
      document.querySelectorAll('.clocks').forEach(function (button) { button.setAttribute('aria-pressed', String(shown)); });
      arrange();
    }

    document.querySelectorAll('.clocks').forEach(function (button) { button.addEventListener('click', function () { choose(!shown); }); });
    document.querySelectorAll('.clock').forEach(function (box) {
      var id = box.closest('.screen').id;
      box.querySelector('.pause').addEventListener('click', function () {
        if (place().running === id) { place().paused[id] = 1; stop(); } else { delete place().paused[id]; run(id); }
        save();
        draw();
      });
      box.querySelector('.hide').addEventListener('click', function () { choose(false); });
    });
    document.addEventListener('visibilitychange', draw);
    choose(shown);

    return {
      // A screen is shown: the clock of the one before stops.
      enter: function (next) {
        if (place().running && place().running !== next.id) stop();
        screen = next;
        arrange();
      },
      stop: stop,
      // All clocks together; 0 when none has run.
      total: function () { return Object.keys(place().spent).reduce(function (sum, id) { return sum + place().spent[id]; }, 0); },
    };
  };
})(window.seamwiseBench);
