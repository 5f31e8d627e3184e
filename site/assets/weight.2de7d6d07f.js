// A start weight of one's own: every weight on the page follows it. The page is complete without this script.
(function () {
  'use strict';
  var form = document.querySelector('.mine');
  if (!form) return;
  var field = form.querySelector('input'), said = form.querySelector('[role=status]'), data = field.dataset;
  // Half a unit of the last printed digit rounds up, as on the page itself.
  function round(value, decimals) { var power = Math.pow(10, decimals); return (Math.floor(value * power + 0.5 + 1e-7) / power).toFixed(decimals); }
  // The typical column adds up to the start: what rounding leaves over goes to the largest remainders.
  function add(table, start) {
    var left = Math.floor(start * 100 + 0.5 + 1e-7), parts = [], total = 0;
    table.querySelectorAll('tbody tr:not(.sum)').forEach(function (row) {
      var cell = row.cells[2];
      if (!cell || !cell.dataset.share) return;
      total += +cell.dataset.share;
      parts.push({ cell: cell, share: +cell.dataset.share, body: row.parentNode });
    });
    var whole = left;
    parts.forEach(function (part) {
      var exact = whole * part.share / total;
      part.down = Math.floor(exact + 1e-6);
      part.rest = exact - part.down;
      left -= part.down;
    });
    parts.slice().sort(function (a, b) { return b.rest - a.rest; }).slice(0, Math.max(0, left)).forEach(function (part) { part.down += 1; });
    parts.forEach(function (part) { part.cell.textContent = (part.down / 100).toFixed(2); });
    table.querySelectorAll('tbody .sum').forEach(function (row) {
      var sum = 0;
      parts.forEach(function (part) { if (part.body === row.parentNode) sum += part.down; });
      row.cells[2].textContent = (sum / 100).toFixed(2);
    });
  }
  function show() {
    var start = parseFloat(field.value.replace(',', '.'));
    if (!(start > 0 && start < 1e5)) {  return; }
    document.querySelectorAll('[data-share]').forEach(function (cell) { cell.textContent = round(start * cell.dataset.share, 2); });
    document.querySelectorAll('[data-adds]').forEach(function (table) { add(table, start); });
    document.querySelectorAll('[data-start]').forEach(function (cell) { cell.textContent = start; });
    said.textContent = start < data.low || start > data.high ? data.outside : '';
  }
  form.hidden = false;
  form.addEventListener('submit', function (event) { event.preventDefault(); });
  field.addEventListener('input', show);
})();
