"use strict";
// Rows are unpacked when the first source is opened; each source then gets its table once.
let unpacked = null;
// The rows stand column by column, and what repeats from the row above is left out (PackedRows).
function unpack(text) {
  const columns = text.split("\u001e").map(column => column.split("\n"));
  const [counts, names, calculations, locators, inputs, expected, computed, deviations, tolerances, ...rest] = columns;
  const groups = new Map();
  let table = "", line = -1, input = "", at = 0;
  counts.forEach((count, group) => {
    const cells = [];
    for (let i = 0; i < Number(count); i++, at++) {
      let name = names[at].slice(1);
      const sign = names[at][0];
      if (sign !== " ") name = table + ":" + (line += sign === "+" ? 1 : 0) + ":" + name;
      const parts = /^(.*):(\d{1,9}):/.exec(name);
      if (parts) { table = parts[1]; line = Number(parts[2]); }
      const bar = inputs[at].indexOf("|");
      input = input.slice(0, Number(inputs[at].slice(0, bar))) + inputs[at].slice(bar + 1);
      // So a tolerance of a share of the expected value is written.
      const allowed = tolerances[at][0] === "*"
        ? String(Number((Number(tolerances[at].slice(1)) * Math.abs(Number(expected[at]))).toPrecision(3)))
        : tolerances[at];
      const found = computed[at] || String(Number(Number(expected[at]).toPrecision(9)));
      cells.push([name, calculations[at], locators[at], input, expected[at], found, deviations[at],
        allowed, ...rest.map(column => column[at])]);
    }
    groups.set(String(group), cells);
  });
  return groups;
}
function rows() {
  if (!unpacked) {
    const letters = atob(document.getElementById("data").textContent);
    const bytes = Uint8Array.from(letters, c => c.charCodeAt(0));
    const text = new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"))).text();
    unpacked = text.then(unpack);
  }
  return unpacked;
}
const HEAD = ["check", "calculation", "locator", "input", "expected", "computed", "deviation", "tolerance", "unit", "status"];
const NUMBERS = new Set([4, 5, 6, 7]);
async function fill(details) {
  if (details.querySelector(".rows")) return;
  const place = details.appendChild(document.createElement("div"));
  place.className = "rows";
  const table = place.appendChild(document.createElement("table"));
  const head = table.insertRow();
  HEAD.forEach((name, i) => {
    const cell = head.appendChild(document.createElement("th"));
    cell.textContent = name;
    cell.scope = "col";
    if (NUMBERS.has(i)) cell.className = "n";
  });
  for (const cells of (await rows()).get(details.dataset.group) || []) {
    const row = table.insertRow();
    HEAD.forEach((name, i) => {
      const cell = row.insertCell();
      cell.textContent = cells[i];
      if (NUMBERS.has(i)) cell.className = "n";
      if (i === 3) cell.className = "in";
      if (i === 9) {
        cell.className = cells[9];
        if (cells[10]) cell.append(document.createElement("br"), cells[10]);
      }
    });
  }
}
const groups = [...document.querySelectorAll("details[data-group]")];
for (const details of groups) {
  details.addEventListener("toggle", () => { if (details.open) fill(details); });
  if (details.open) fill(details);
}
// The frame of every drawing is the same, so it is drawn here once for all.
const FRAME = '<rect x="-100" y="-15" width="200" height="30"/><path class="zero" d="M0-15V15"/>';
// Failures are taller, exclusions shorter: the colour does not stand alone.
const HALF = { pass: 9, fail: 16, excluded: 4 };
function marks(places, half) {
  return places.split(" ").flatMap(part => {
    const [from, to = from] = part.split("..").map(Number);
    return Array.from({ length: to - from + 1 }, (_, k) => "M" + (from + k) + "-" + half + "v" + 2 * half);
  }).join("");
}
for (const strip of document.querySelectorAll(".strip")) {
  strip.setAttribute("viewBox", "-130 -17 260 34");
  strip.setAttribute("preserveAspectRatio", "none");
  strip.setAttribute("role", "img");
  strip.setAttribute("aria-label", "deviations between minus and plus the tolerance");
  const drawn = Object.keys(HALF).filter(status => strip.dataset[status] !== undefined)
    .map(status => '<path class="' + status + '" d="' + marks(strip.dataset[status], HALF[status]) + '"/>');
  strip.insertAdjacentHTML("afterbegin", FRAME + drawn.join(""));
}
const find = document.getElementById("find");
const found = document.getElementById("found");
const lines = [...document.querySelectorAll(".index tr")].filter(row => row.querySelector("td"));
async function search() {
  const wanted = find.value.trim().toLowerCase();
  const all = wanted ? await rows() : null;
  let shown = 0;
  for (const details of groups) {
    const asked = !wanted || details.querySelector("summary").textContent.toLowerCase().includes(wanted)
      || (all.get(details.dataset.group) || []).some(cells => cells[1].toLowerCase().includes(wanted));
    details.hidden = !asked;
    shown += asked ? 1 : 0;
  }
  for (const row of lines) row.hidden = wanted && !row.textContent.toLowerCase().includes(wanted);
  found.textContent = wanted ? shown + " sources, " + lines.filter(row => !row.hidden).length + " lines" : "";
}
find.addEventListener("input", search);
addEventListener("beforeprint", () => { for (const details of groups) if (details.hidden) details.open = false; });
