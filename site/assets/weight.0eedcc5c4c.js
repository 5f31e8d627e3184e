// A start weight of one's own: every weight in a table follows it. The page is complete without this script.
(function () {
  'use strict';
  var form = document.querySelector('.mine');
  if (!form) return;
  var field = form.querySelector('input'), told = form.querySelector('[role=status]'), data = field.dataset, range = data.range.split(' '), worked = +field.defaultValue;
  // Half a unit of the last printed digit rounds up, as on the page itself.
  function hundredths(value) { return Math.floor(value * 100 + 0.5 + 1e-7); }
  function show(cell, count) { cell.textContent = (count / 100).toFixed(2); }
  // Rows with figures: what each says at the worked start, and its low, typical and high weight there in hundredths of
  // the unit. The table holds two more digits of each: what its rounding left over, of half a hundredth for a bound and
  // of a whole one for a typical weight.
  function rows(table) {
    var next = table.dataset.next, first = +(table.dataset.first || 0), at = 0, list = [];
    table.querySelectorAll('tbody tr').forEach(function (row) {
      var cells = [].slice.call(row.querySelectorAll('td'), first, first + 3);
      if (cells.length < 3) return;
      var said = cells.map(function (cell) { return cell.textContent; });
      var exact = said.map(function (text, part) {
        return Math.round(text * 100) + ((+next.substr(at + 2 * part, 2) + 0.5) / 50 - 1) * (part === 1 ? 1 : 0.5);
      });
      list.push({ row: row, cells: cells, said: said, exact: exact });
      at += 6;
    });
    return list;
  }
  // The typical column of a whole adds up to the start: what rounding leaves over goes to the largest remainders.
  function add(list, start) {
    var parts = list.filter(function (entry) { return !entry.row.classList.contains('sum'); });
    var whole = hundredths(start), left = whole, total = 0;
    parts.forEach(function (part) { total += part.exact[1]; });
    parts.forEach(function (part) {
      var exact = whole * part.exact[1] / total;
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
    tables.forEach(function (table) {
      var list = table.rows, foot = table.foot;
      list.forEach(function (entry) {
        entry.cells.forEach(function (cell, at) { show(cell, hundredths(start / worked * entry.exact[at] / 100)); });
      });
      if (foot) {
        add(list, start);
        show(foot, hundredths(start));
        list.forEach(function (entry) { whole[entry.exact.join()] = entry.cells[1].textContent; });
      } else {
        // A piece that one step alone gives stands in the whole too, and must not differ from it there.
        list.forEach(function (entry) { entry.cells[1].textContent = whole[entry.exact.join()] || entry.cells[1].textContent; });
      }
      // At the worked start the page itself says it best.
      if (start === worked) list.forEach(function (entry) { entry.cells.forEach(function (cell, at) { cell.textContent = entry.said[at]; }); });
    });
    document.querySelectorAll('[data-start]').forEach(function (cell) { cell.textContent = start; });
    told.textContent = start < +range[0] || start > +range[1] ? data.outside : '';
  }
  var tables = [].map.call(document.querySelectorAll('[data-next]'), function (table) {
    return { rows: rows(table), foot: table.querySelector('tfoot td + td') };
  });
  form.hidden = false;
  form.addEventListener('submit', function (event) { event.preventDefault(); });
  field.addEventListener('input', follow);
})();
