// What is done of a course, lesson by lesson, kept on the device; the page is complete without this script.
(function () {
  'use strict';
  var line = document.querySelector('.next');
  if (!line) return;
  var key = 'seamwise.course.' + line.dataset.course, buttons = [].slice.call(document.querySelectorAll('.tick button'));
  // Lessons are kept by their names, so that a new lesson between them moves none.
  function read() {
    try {
      var kept = JSON.parse(localStorage.getItem(key));
      return Array.isArray(kept) ? kept : [];
    } catch (error) { return []; }
  }
  function write(done) {
    try { localStorage.setItem(key, JSON.stringify(done)); } catch (error) { /* A device that keeps nothing still shows it. */ }
  }
  var done = read();
  function show() {
    var next = null;
    buttons.forEach(function (button) {
      var ticked = done.indexOf(button.dataset.lesson) >= 0;
      button.setAttribute('aria-pressed', String(ticked));
      if (!ticked && !next) next = button.closest('.lesson');
    });
    line.textContent = '';
    if (!next) { line.textContent = line.dataset.all; return; }
    var link = document.createElement('a');
    link.href = '#' + next.id;
    link.textContent = next.querySelector('h2').textContent;
    line.append(line.dataset.next + '\u00a0', link);
  }
  buttons.forEach(function (button) {
    button.parentNode.hidden = false;
    button.addEventListener('click', function () {
      var at = done.indexOf(button.dataset.lesson);
      if (at < 0) done.push(button.dataset.lesson); else done.splice(at, 1);
      write(done);
      show();
    });
  });
  line.hidden = !buttons.length;
  show();
})();
