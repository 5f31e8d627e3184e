// Enter a start weight of your own: every kilogram figure of the page follows. The page is complete without it.
(function () {
  'use strict';
  var form = document.querySelector('.mine');
  if (!form) return;
  var field = form.querySelector('input'), said = form.querySelector('[role=status]'), first = field.value;
  function kilos(v) { return (Math.round(v * 100 + 1e-6) / 100).toFixed(2); }
  // The typical column adds up to the start: what rounding leaves over goes to the largest remainders.
  function add(table) {
    var start = parseFloat(field.value.replace(',', '.')), left = Math.round(start * 100), parts = [];
    table.querySelectorAll('tbody tr:not(.sum) [data-share].mid').forEach(function (cell) {
      var exact = start * 100 * cell.dataset.share, down = Math.floor(exact + 1e-6);
      left -= down; parts.push({ cell: cell, down: down, rest: exact - down });
    });
    parts.slice().sort(function (a, b) { return b.rest - a.rest; }).slice(0, Math.max(0, left)).forEach(function (p) { p.down += 1; });
    parts.forEach(function (p) { p.cell.textContent = (p.down / 100).toFixed(2); });
    table.querySelectorAll('tbody .sum').forEach(function (row) {
      var sum = 0;
      parts.forEach(function (p) { if (p.cell.closest('tbody') === row.parentNode) sum += p.down; });
      row.querySelector('.mid').textContent = (sum / 100).toFixed(2);
    });
  }
  function show() {
    var start = parseFloat(field.value.replace(',', '.'));
    if (!(start > 0)) { said.textContent = 'Type the weight on your scale, for example ' + first + '.'; return; }
    document.querySelectorAll('[data-share]').forEach(function (cell) { cell.textContent = kilos(start * cell.dataset.share); });
    document.querySelectorAll('[data-between]').forEach(function (span) {
      var ends = span.dataset.between.split(' ').map(function (share) { return start * share; }), small = ends[ends.length - 1] < 0.1;
      span.textContent = ends.map(function (v) { return small ? Math.round(v * 1000) : kilos(v); }).join('–') + (small ? '\u00a0g' : '\u00a0kg');
    });
    document.querySelectorAll('[data-adds]').forEach(add);
    document.querySelectorAll('[data-start]').forEach(function (cell) { cell.textContent = start; });
    var low = parseFloat(field.dataset.low), high = parseFloat(field.dataset.high);
    said.textContent = start < low || start > high ? 'Outside the start weight of this guide, ' + field.dataset.low + '–' + field.dataset.high + ' kg. The shares may not hold.' : 'Kilograms are worked for ' + start + ' kg.';
  }
  form.hidden = false;
  form.addEventListener('submit', function (event) { event.preventDefault(); });
  field.addEventListener('input', show);
})();
