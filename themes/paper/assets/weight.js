// A start weight of one's own: every weight in a table follows it. The page is complete without this script.
(function () {
  'use strict';
  var form = document.querySelector('.mine');
  if (!form) return;
  var field = form.querySelector('input'), said = form.querySelector('[role=status]'), data = field.dataset;
  // Half a unit of the last printed digit rounds up, as on the page itself.
  function hundredths(value) { return Math.floor(value * 100 + 0.5 + 1e-7); }
  function show(cell, count) { cell.textContent = (count / 100).toFixed(2); }
  // Rows with figures, each with its low, typical and high share of the start in hundred-thousandths.
  function rows(table) {
    var shares = table.dataset.shares.trim().split(' ').map(Number), first = +(table.dataset.first || 0), at = 0, list = [];
    table.querySelectorAll('tbody tr').forEach(function (row) {
      var cells = row.querySelectorAll('td');
      if (cells.length < first + 3) return;
      list.push({ row: row, cells: [cells[first], cells[first + 1], cells[first + 2]], shares: shares.slice(at, at + 3) });
      at += 3;
    });
    return list;
  }
  // The typical column of a whole adds up to the start: what rounding leaves over goes to the largest remainders.
  function add(list, start) {
    var parts = list.filter(function (entry) { return !entry.row.classList.contains('sum'); });
    var whole = hundredths(start), left = whole, total = 0;
    parts.forEach(function (part) { total += part.shares[1]; });
    parts.forEach(function (part) {
      var exact = whole * part.shares[1] / total;
      part.count = Math.floor(exact + 1e-6);
      part.rest = exact - part.count;
      left -= part.count;
    });
    parts.slice().sort(function (a, b) { return b.rest - a.rest; }).slice(0, Math.max(0, left)).forEach(function (part) { part.count += 1; });
    list.forEach(function (entry) {
      var count = entry.count;
      if (entry.row.classList.contains('sum')) {
        count = 0;
        parts.forEach(function (part) { if (part.row.parentNode === entry.row.parentNode) count += part.count; });
      }
      show(entry.cells[1], count);
    });
  }
  function follow() {
    var start = parseFloat(field.value.replace(',', '.'));
    if (!(start > 0 && start < 1e5)) return;
    var whole = {};
    document.querySelectorAll('[data-shares]').forEach(function (table) {
      var list = rows(table), foot = table.querySelector('tfoot td + td');
      list.forEach(function (entry) {
        entry.cells.forEach(function (cell, at) { show(cell, hundredths(start * entry.shares[at] / 1e5)); });
      });
      if (foot) {
        add(list, start);
        show(foot, hundredths(start));
        list.forEach(function (entry) { whole[entry.shares.join()] = entry.cells[1].textContent; });
      } else {
        // A piece that one step alone gives stands in the whole too, and must not differ from it there.
        list.forEach(function (entry) { entry.cells[1].textContent = whole[entry.shares.join()] || entry.cells[1].textContent; });
      }
    });
    document.querySelectorAll('[data-start]').forEach(function (cell) { cell.textContent = start; });
    said.textContent = start < +data.low || start > +data.high ? data.outside : '';
  }
  form.hidden = false;
  form.addEventListener('submit', function (event) { event.preventDefault(); });
  field.addEventListener('input', follow);
})();
