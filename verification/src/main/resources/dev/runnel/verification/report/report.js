"use strict";
// Rows are unpacked when the first source is opened; each source then gets its table once.
let unpacked = null;
function rows() {
  if (!unpacked) {
    const letters = atob(document.getElementById("data").textContent);
    const bytes = Uint8Array.from(letters, c => c.charCodeAt(0));
    const text = new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"))).text();
    unpacked = text.then(all => {
      const groups = new Map();
      for (const line of all.split("\n")) {
        if (!line) continue;
        const cells = line.split("\u001f");
        const group = cells.shift();
        if (!groups.has(group)) groups.set(group, []);
        groups.get(group).push(cells);
      }
      return groups;
    });
  }
  return unpacked;
}
const HEAD = ["check", "calculation", "locator", "input", "expected", "computed", "deviation", "tolerance", "unit", "status"];
const NUMBERS = new Set([4, 5, 6, 7]);
async function fill(details) {
  const place = details.querySelector(".rows");
  if (place.firstChild) return;
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
