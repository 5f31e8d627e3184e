// The button that prints sheets. Without this script there is none: the menu of the browser prints as well.
(function () {
  'use strict';
  var button = document.querySelector('.print');
  if (!button) return;
  if (typeof window.print !== 'function') { button.parentNode.remove(); return; }
  button.parentNode.hidden = false;
  button.addEventListener('click', function () { window.print(); });
})();
