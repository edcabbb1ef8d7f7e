"use strict";
// Sections with more of the words come first; headings count more than text, beginnings of words more than their insides.
const sections = JSON.parse(document.getElementById("index").textContent).map(([place, page, heading, text]) =>
  ({ place, page, heading, text, inHeading: (page + " " + heading).toLowerCase(), inText: text.toLowerCase() }));
const asked = document.getElementById("asked"), found = document.getElementById("found"), count = document.getElementById("count");
function weight(section, word) {
  const begins = new RegExp("(^|[^\\p{L}\\p{N}])" + word.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"), "u");
  return (begins.test(section.inHeading) ? 8 : section.inHeading.includes(word) ? 3 : 0)
    + (begins.test(section.inText) ? 2 : section.inText.includes(word) ? 1 : 0);
}
function look() {
  const words = asked.value.toLowerCase().split(/\s+/).filter(word => word.length > 1);
  found.textContent = "";
  const hits = !words.length ? [] : sections
    .map(section => ({ section, weights: words.map(word => weight(section, word)) }))
    .map(hit => ({ ...hit, words: hit.weights.filter(each => each > 0).length, sum: hit.weights.reduce((x, y) => x + y) }))
    .filter(hit => hit.words > 0)
    .sort((a, b) => b.words - a.words || b.sum - a.sum);
  count.textContent = !words.length ? "" : hits.length ? `${hits.length} ${hits.length === 1 ? "place" : "places"}, the likeliest first` : "nothing; fewer or other words may do";
  for (const { section } of hits.slice(0, 30)) {
    const item = found.appendChild(document.createElement("li")), link = item.appendChild(document.createElement("a"));
    link.href = section.place;
    link.textContent = section.heading === section.page ? section.page : section.page + ": " + section.heading;
    const at = Math.max(0, section.inText.indexOf(words[0]) - 60);
    item.appendChild(document.createElement("p")).textContent = (at ? "... " : "") + section.text.slice(at, at + 180);
  }
}
asked.value = new URLSearchParams(location.search).get("q") || "";
asked.addEventListener("input", look);
asked.focus();
look();
