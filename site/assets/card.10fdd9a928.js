// A card that was scanned on the wall names its revision behind the address: #card-3. This says whether it is current.
// Without this script the same address leads to the revision of the guide, to be compared by eye.
(function () {
  'use strict';
  var control = document.querySelector('.control[id^=card-]'), main = document.querySelector('main');
  if (!control || !main) return;
  var line = document.createElement('p');
  line.className = 'back';
  line.setAttribute('role', 'status');
  // What the page says of itself.
  var now = +control.id.slice(5), day = control.querySelector('time'), all = control.querySelectorAll('.full dd');
  var change = all.length > 1 ? all[1].textContent.trim() : '';
  function state(name) { return document.querySelector('.state.' + name); }
  function said(card) {
    if (card > now) return "The card is newer than this page: load the page again.";
    if (state('withdrawn')) return "This guide is withdrawn. Take the card down.";
    if (state('draft')) return "Revision [n] is a draft of [date], not for use. Ask which card counts.";
    if (card === now) return "Card revision [n] is current.";
    return change ? "This card is out of date since [date]. Revision [n]: [change]" : "This card is out of date since [date]. The guide is at revision [n].";
  }
  function look() {
    var found = /^#card-([1-9]\d{0,8})$/.exec(location.hash);
    if (!found) { line.remove(); return; }
    var values = { n: now, date: day ? day.textContent : '', change: change };
    main.insertBefore(line, main.firstChild);
    line.textContent = said(+found[1]).replace(/\[(n|date|change)\]/g, function (_, name) { return values[name]; });
    // The answer stands at the top, also where the browser went to the place that the address names.
    scrollTo(0, 0);
    requestAnimationFrame(function () { scrollTo(0, 0); });
  }
  look();
  if (location.hash) addEventListener('load', look);
  addEventListener('hashchange', look);
})();
