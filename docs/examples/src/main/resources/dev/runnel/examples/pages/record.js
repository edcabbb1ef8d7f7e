"use strict";
// The record over time. All readings are unpacked once; what is drawn is picked anew for each view, so that every column
// shows the lowest and the highest reading in it.
(async () => {
  const section = document.getElementById("record");
  const place = document.getElementById("charts");
  const shown = document.getElementById("shown");
  if (!("DecompressionStream" in window)) {
    section.querySelector(".still").style.display = "block";
    shown.textContent = "this browser cannot unpack the record: a still drawing instead";
    return;
  }
  const meta = JSON.parse(document.getElementById("rows").textContent);
  const letters = atob(document.getElementById("data").textContent);
  const packed = Uint8Array.from(letters, c => c.charCodeAt(0));
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"));
  const bytes = new Uint8Array(await new Response(stream).arrayBuffer());

  let at = 0;
  function number() {
    let value = 0, factor = 1, byte;
    do { byte = bytes[at++]; value += (byte & 127) * factor; factor *= 128; } while (byte > 127);
    return value;
  }
  const rows = meta.rows.map(row => {
    let size = 0;
    for (let i = 0; i < row.runs.length; i += 3) size += row.runs[i + 2];
    const times = new Float64Array(size), values = new Float64Array(size);
    let k = 0;
    for (let i = 0; i < row.runs.length; i += 3)
      for (let n = 0; n < row.runs[i + 2]; n++) times[k++] = row.runs[i] + n * row.runs[i + 1];
    let before = 0;
    for (let i = 0; i < size; i++) {
      const code = number();
      if (code === 0) { values[i] = NaN; continue; }
      const folded = code - 1;
      before += folded % 2 ? -(folded + 1) / 2 : folded / 2;
      values[i] = before * row.step;
    }
    return { ...row, times, values, usual: row.runs.length ? row.runs[1] : 1 };
  }).filter(row => row.times.length > 0);
  if (!rows.length) return;

  const first = Math.min(...rows.map(row => row.times[0]));
  const last = Math.max(...rows.map(row => row.times[row.times.length - 1] + row.usual));
  let from = first, to = last;

  // The clock of the site: seconds from UTC, by the turn of civil clocks.
  function offset(time) {
    let found = meta.clock[0][1];
    for (const [since, seconds] of meta.clock) if (time >= since) found = seconds;
    return found;
  }
  const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
  const two = n => String(n).padStart(2, "0");
  function parts(time) {
    const date = new Date((time + offset(time)) * 1000);
    return { y: date.getUTCFullYear(), m: date.getUTCMonth(), d: date.getUTCDate(), h: date.getUTCHours(), i: date.getUTCMinutes(), s: date.getUTCSeconds() };
  }
  const long = time => { const p = parts(time); return `${p.d} ${MONTHS[p.m]} ${p.y} ${two(p.h)}:${two(p.i)}`; };

  function index(times, time) {
    let low = 0, high = times.length;
    while (low < high) { const mid = (low + high) >> 1; if (times[mid] < time) low = mid + 1; else high = mid; }
    return low;
  }
  const BAR_STEPS = [60, 120, 300, 900, 3600, 21600, 86400];
  let barStep = 0;

  function pick(row, width) {
    const a = Math.max(0, index(row.times, from) - 1), b = Math.min(row.times.length, index(row.times, to) + 1);
    const xs = [], ys = [];
    if (row.bars) {
      barStep = BAR_STEPS.find(step => step >= row.usual && (to - from) / step <= width / 3) || 86400;
      barStep = Math.max(barStep, row.usual);
      let bar = NaN, sum = 0, known = false;
      for (let i = a; i < b; i++) {
        const shift = offset(row.times[i]);
        const mine = Math.floor((row.times[i] + shift) / barStep) * barStep - shift;
        if (mine !== bar) { if (known && sum > 0) { xs.push(bar + barStep / 2); ys.push(sum); } bar = mine; sum = 0; known = false; }
        if (!Number.isNaN(row.values[i])) { sum += row.values[i]; known = true; }
      }
      if (known && sum > 0) { xs.push(bar + barStep / 2); ys.push(sum); }
      return [xs, ys];
    }
    let bucket = 1;
    while ((b - a) / bucket > 3 * width && bucket < 1 << 20) bucket *= 2;
    if (bucket > 1) while ((b - a) / bucket > width) bucket *= 2;
    const gap = Math.max(2.5 * row.usual, 1);
    for (let i = a - a % bucket; i < b; i += bucket) {
      let low = -1, high = -1;
      for (let k = i; k < Math.min(i + bucket, row.times.length); k++) {
        const v = row.values[k];
        if (Number.isNaN(v)) continue;
        if (low < 0 || v < row.values[low]) low = k;
        if (high < 0 || v > row.values[high]) high = k;
      }
      if (low < 0) { xs.push(row.times[i]); ys.push(null); continue; }
      for (const k of low < high ? [low, high] : low > high ? [high, low] : [low]) {
        if (xs.length && row.times[k] - xs[xs.length - 1] > gap * bucket) { xs.push(row.times[k] - 1e-3); ys.push(null); }
        xs.push(row.times[k]); ys.push(row.values[k]);
      }
    }
    return [xs, ys];
  }

  let colours;
  function readColours() {
    const style = getComputedStyle(document.documentElement);
    const get = name => style.getPropertyValue("--" + name).trim();
    colours = { ink: get("ink"), mute: get("mute"), grid: get("grid"), rule: get("rule"), rain: get("rain"), law: get("law"), mark: get("mark"), paper: get("paper") };
  }
  function ticks(u, axis, min, max) {
    const span = max - min, room = u.bbox.width / devicePixelRatio / 80;
    const STEPS = [60, 300, 600, 1800, 3600, 7200, 10800, 21600, 43200, 86400, 172800, 604800, 1209600];
    const out = [];
    const step = STEPS.find(s => span / s <= room);
    if (step) {
      const shift = offset(min);
      for (let t = Math.ceil((min + shift) / step) * step - shift; t <= max; t += step) out.push(t);
      return out;
    }
    const p = parts(min);
    const each = Math.max(1, Math.ceil(span / (30.5 * 86400) / room));
    for (let m = p.m; ; m += each) {
      const t = Date.UTC(p.y, m, 1) / 1000 - offset(Date.UTC(p.y, m, 1) / 1000);
      if (t > max) return out;
      if (t >= min) out.push(t);
    }
  }
  function names(u, splits) {
    const fine = splits.length > 1 && splits[1] - splits[0] < 86400;
    return splits.map((t, i) => {
      const p = parts(t);
      if (t > to - (to - from) * .03) return "";
      if (fine) return p.h === 0 && p.i === 0 ? `${p.d} ${MONTHS[p.m]}` : `${two(p.h)}:${two(p.i)}`;
      return p.d === 1 ? MONTHS[p.m] + (p.m === 0 || i === 0 ? " " + p.y : "") : `${p.d} ${MONTHS[p.m]}`;
    });
  }
  function backdrop(u, row) {
    const c = u.ctx, r = devicePixelRatio;
    c.save();
    c.beginPath(); c.rect(u.bbox.left, u.bbox.top, u.bbox.width, u.bbox.height); c.clip();
    for (const mark of meta.marks) {
      if (mark.row && mark.row !== row.name) continue;
      if (mark.to < from || mark.from > to) continue;
      const a = u.valToPos(mark.from, "x", true), b = Math.max(a + r, u.valToPos(mark.to, "x", true));
      if (mark.kind === "GAP") { c.fillStyle = colours.rule; c.fillRect(a, u.bbox.top, b - a, u.bbox.height); }
      if (mark.kind === "BASELINE" && row === rows[0]) { c.fillStyle = colours.mute; c.fillRect(a, u.bbox.top, b - a, 3 * r); }
      if (mark.kind === "LEFT_OUT" || mark.kind === "CORRECTION") {
        c.strokeStyle = mark.kind === "LEFT_OUT" ? colours.mark : colours.law; c.globalAlpha = .45; c.lineWidth = r; c.beginPath();
        const low = u.bbox.top + u.bbox.height;
        c.save(); c.beginPath(); c.rect(a, u.bbox.top, b - a, u.bbox.height); c.clip(); c.beginPath();
        for (let x = a - u.bbox.height; x < b; x += 7 * r) { c.moveTo(x, low); c.lineTo(x + u.bbox.height, u.bbox.top); }
        c.stroke(); c.restore(); c.globalAlpha = 1;
      }
    }
    c.restore();
  }
  function overlay(u, row) {
    const c = u.ctx, r = devicePixelRatio;
    c.save();
    for (const mark of meta.marks) {
      if (mark.row && mark.row !== row.name) continue;
      if (mark.to < from || mark.from > to) continue;
      const a = Math.max(u.bbox.left, u.valToPos(mark.from, "x", true));
      const b = Math.min(u.bbox.left + u.bbox.width, Math.max(a + 2 * r, u.valToPos(mark.to, "x", true)));
      if (mark.kind === "FINDING" && (mark.row || !row.bars)) { c.fillStyle = colours.law; c.fillRect(a, u.bbox.top - 3 * r, b - a, 3 * r); }
      if (mark.kind === "ALARM" || mark.kind === "SURCHARGE" || mark.kind === "SPILL") {
        if (row.name.startsWith("Level")) { c.fillStyle = colours.mark; c.fillRect(a, u.bbox.top, b - a, (mark.kind === "ALARM" ? 2 : 4) * r); }
      }
      if (mark.kind === "VISIT" && row === rows[0]) {
        c.fillStyle = colours.ink; c.beginPath(); c.moveTo(a - 4 * r, u.bbox.top); c.lineTo(a + 4 * r, u.bbox.top); c.lineTo(a, u.bbox.top + 7 * r); c.fill();
        c.textAlign = "left"; c.textBaseline = "top"; c.font = `${11 * r}px sans-serif`; c.fillText("visit", a + 6 * r, u.bbox.top + 1);
      }
      if (mark.kind === "CORRECTION" && b - a > 60 * r) {
        c.fillStyle = colours.ink; c.textAlign = "left"; c.textBaseline = "top"; c.font = `${11 * r}px sans-serif`; c.fillText("corrected", a + 3 * r, u.bbox.top + 1);
      }
      if (mark.number && row === rows[0]) {
        c.fillStyle = colours.mark; c.beginPath(); c.arc(Math.max(u.bbox.left + 9 * r, a), u.bbox.top + 9 * r, 9 * r, 0, 7); c.fill();
        c.fillStyle = colours.paper; c.textAlign = "center"; c.textBaseline = "middle"; c.font = `600 ${11 * r}px sans-serif`;
        c.fillText(mark.number, Math.max(u.bbox.left + 9 * r, a), u.bbox.top + 9.5 * r);
      }
    }
    c.restore();
  }

  let charts = [];
  const HEIGHTS = { bars: 90, line: 140, end: 166 };
  function build() {
    readColours();
    charts.forEach(chart => chart.u.destroy());
    place.textContent = "";
    charts = rows.map((row, i) => {
      const holder = place.appendChild(document.createElement("div"));
      holder.className = "row";
      const value = holder.appendChild(document.createElement("span"));
      value.className = "value";
      const end = i === rows.length - 1;
      const width = Math.max(260, place.clientWidth);
      const font = "12px system-ui, sans-serif";
      const u = new uPlot({
        width, height: row.bars ? HEIGHTS.bars + (end ? 26 : 0) : end ? HEIGHTS.end : HEIGHTS.line,
        padding: [10, 14, 4, 0], legend: { show: false },
        cursor: { y: false, points: { show: false }, sync: { key: "record" }, drag: { x: true, y: false, setScale: false } },
        scales: { x: { time: false, range: () => [from, to] }, y: { range: (u, low, high) => [Math.min(0, low ?? 0), high > 0 ? high * 1.05 : 1] } },
        axes: [
          { show: end, splits: ticks, values: names, stroke: colours.mute, font, grid: { show: false }, ticks: { stroke: colours.grid, width: 1 }, size: 28 },
          { stroke: colours.mute, font, size: 56, label: row.name, labelSize: 18, labelFont: font, labelGap: 0, space: 34, grid: { stroke: colours.grid, width: 1 }, ticks: { show: false } },
        ],
        series: [{}, row.bars
          ? { stroke: colours.rain, fill: colours.rain, width: 0, paths: uPlot.paths.bars({ size: [.9, 20, 1] }), points: { show: false } }
          : { stroke: colours.ink, width: 1 / devicePixelRatio, spanGaps: false, points: { show: (u, s, a, b) => b - a < 200, size: 4 } }],
        hooks: {
          drawClear: [u => backdrop(u, row)], draw: [u => overlay(u, row)],
          setSelect: [u => { if (u.select.width > 4) { const a = u.posToVal(u.select.left, "x"), b = u.posToVal(u.select.left + u.select.width, "x"); u.setSelect({ left: 0, width: 0, top: 0, height: 0 }, false); view(a, b); } }],
          setCursor: [u => {
            const left = u.cursor.left;
            if (left == null || left < 0) { value.textContent = ""; return; }
            const time = u.posToVal(left, "x");
            let k = index(row.times, time);
            if (k > 0 && (k === row.times.length || time - row.times[k - 1] < row.times[k] - time)) k--;
            const v = row.values[k];
            value.textContent = Math.abs(row.times[k] - time) > Math.max(3 * row.usual, (to - from) / 100) || Number.isNaN(v)
              ? long(time) : `${long(row.times[k])}  ${+v.toPrecision(5)}`;
          }],
        },
      }, [[], []], holder);
      return { u, row };
    });
    draw();
  }
  function draw() {
    for (const { u, row } of charts) u.setData(pick(row, u.bbox.width / devicePixelRatio), true);
    const sum = barStep >= 86400 ? "day" : barStep >= 3600 ? barStep / 3600 + " h" : barStep / 60 + " min";
    shown.textContent = `${long(from)} to ${long(to)}` + (rows.some(row => row.bars) ? `, rain per ${sum}` : "");
    window.drawnAt = performance.now();
  }
  let waiting = false;
  function view(a, b) {
    const least = 600, span = Math.min(last - first, Math.max(least, b - a));
    from = Math.min(Math.max(first, a), last - span);
    to = from + span;
    if (!waiting) { waiting = true; requestAnimationFrame(() => { waiting = false; draw(); }); }
  }
  const zoom = factor => { const mid = (from + to) / 2, half = (to - from) / 2 * factor; view(mid - half, mid + half); };
  const move = share => view(from + share * (to - from), to + share * (to - from));
  const SPANS = { All: Infinity, Month: 31 * 86400, Week: 7 * 86400, Day: 86400, Hour: 3600 };
  section.querySelectorAll("button[data-span]").forEach(button => button.addEventListener("click", () => {
    const span = SPANS[button.dataset.span];
    if (span === Infinity) view(first, last); else { const mid = (from + to) / 2; view(mid - span / 2, mid + span / 2); }
  }));
  section.querySelectorAll("button[data-move]").forEach(button => button.addEventListener("click", () => move(.8 * button.dataset.move)));
  section.addEventListener("keydown", event => {
    const action = { "+": () => zoom(.5), "=": () => zoom(.5), "-": () => zoom(2), ArrowLeft: () => move(-.2), ArrowRight: () => move(.2), Home: () => view(first, last) }[event.key];
    if (action && !event.ctrlKey && !event.metaKey && !event.altKey) { event.preventDefault(); action(); }
  });
  place.addEventListener("wheel", event => {
    if (!event.ctrlKey && !event.shiftKey) return;
    event.preventDefault();
    const box = charts[0].u.over.getBoundingClientRect();
    const share = Math.min(1, Math.max(0, (event.clientX - box.left) / box.width));
    const mid = from + share * (to - from), factor = (event.deltaY || event.deltaX) > 0 ? 1.25 : .8;
    view(mid - (mid - from) * factor, mid + (to - mid) * factor);
  }, { passive: false });
  document.querySelectorAll("a[data-mark]").forEach(link => link.addEventListener("click", () => {
    const mark = meta.marks.find(each => each.number === +link.dataset.mark);
    if (mark) { const room = Math.max(86400, (mark.to - mark.from) * .5); view(mark.from - room, mark.to + room); section.focus(); }
  }));
  let width = 0;
  new ResizeObserver(() => { if (Math.abs(place.clientWidth - width) > 2) { width = place.clientWidth; build(); } }).observe(place);
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", build);
})();
