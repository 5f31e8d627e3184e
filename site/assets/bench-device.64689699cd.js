// What the device does for the bench view: it keeps its screen on and reads a step aloud, where the browser can.
(function (bench) {
  'use strict';

  // Keeps the screen on while the page is seen. `tell(true or false)` says whether it stays on.
  bench.awake = function (tell) {
    var lock = null, asking = false;
    function ask() {
      if (document.hidden || lock || asking) return;
      asking = true;
      navigator.wakeLock.request('screen').then(function (got) {
        asking = false;
        lock = got;
        // The browser takes it back when the page is hidden or the battery is low.
        got.addEventListener('release', function () { lock = null; tell(document.hidden); });
        tell(true);
      }, function () { asking = false; tell(false); });
    }
    if (!('wakeLock' in navigator)) { tell(false); return; }
    document.addEventListener('visibilitychange', ask);
    ask();
  };

  // What is read of a screen, in the order in which it stands: nothing folded, no controls, no codes of signs.
  var READ = 'h2,h3,h4,.law,.caution>b,.caution p,.caution strong,dl>div,.do p,.do li,.back,.comes>li,figcaption,.left';
  function sentences(screen, to) {
    var all = [];
    screen.querySelectorAll(READ).forEach(function (element) {
      if (element.closest('[hidden],.device,details:not([open])') || !element.getClientRects().length) return;
      if (element.parentNode.closest('dl>div,.do li,.comes>li')) return;
      var copy = element.cloneNode(true);
      copy.querySelectorAll('.caution .soft,svg').forEach(function (part) { part.remove(); });
      if (element.closest('.caution')) copy.querySelectorAll('.soft').forEach(function (part) { part.remove(); });
      // A blank between parts that stand side by side, so that words do not run together.
      copy.querySelectorAll('dt,b,li,p,dd,span').forEach(function (part) { part.after(' '); });
      var text = copy.textContent.replace(/(\d)\s*\u2013\s*(\d)/g, '$1 ' + to + ' $2').replace(/\s+/g, ' ').trim();
      // Some voices fall silent in a long text: one sentence at a time.
      (text.match(/[^.!?]+(?:[.!?](?!\s|$)[^.!?]*)*[.!?]*/g) || []).forEach(function (part) { if (part.trim()) all.push(part.trim()); });
    });
    return all;
  }

  // Brings a button to life that reads the screen which `screen()` gives. Where the browser has no voice it stays hidden.
  bench.aloud = function (button, screen, said, tell) {
    var voice = window.speechSynthesis, reading = false;
    if (!button || !voice || !window.SpeechSynthesisUtterance) return { stop: function () {} };
    function show(on) {
      reading = on;
      button.textContent = on ? said.quiet : said.aloud;
    }
    function stop() {
      if (reading) { show(false); voice.cancel(); }
    }
    function read() {
      var parts = sentences(screen(), said.to);
      // What another page still says would come first.
      voice.cancel();
      show(true);
      parts.forEach(function (part, at) {
        var utterance = new window.SpeechSynthesisUtterance(part);
        utterance.lang = document.documentElement.lang;
        if (at === parts.length - 1) utterance.onend = function () { show(false); };
        utterance.onerror = function (event) {
          if (!reading || event.error === 'canceled' || event.error === 'interrupted') return;
          stop();
          tell(said.mute);
        };
        voice.speak(utterance);
      });
    }
    button.hidden = false;
    button.addEventListener('click', function () { if (reading) stop(); else read(); });
    window.addEventListener('pagehide', stop);
    return { stop: stop };
  };
})(window.seamwiseBench);
