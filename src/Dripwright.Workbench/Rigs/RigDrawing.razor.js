// The drawing: tap, zoom, pan, arrow keys between pots, and the marks of what changed.

let page = null;
let watcher = null;
let zoomed = 1;
let centre = null;
let marks = 0;
const narrow = matchMedia("(max-width: 700px)");
const calm = matchMedia("(prefers-reduced-motion: reduce)");

const paper = () => document.getElementById("paper");
const svg = () => paper()?.querySelector("svg[viewBox]");

function whole(drawing) {
  const [x, y, width, height] = (drawing.dataset.whole ??= drawing.getAttribute("viewBox")).split(" ").map(Number);
  return { x, y, width, height };
}

function show() {
  const drawing = svg();
  if (!drawing) {
    return;
  }
  const all = whole(drawing);
  if (zoomed <= 1) {
    centre = null;
    drawing.setAttribute("viewBox", drawing.dataset.whole);
  } else {
    const [width, height] = [all.width / zoomed, all.height / zoomed];
    centre ??= { x: 0.5, y: 0.5 };
    const within = (share, size, of) => Math.min(Math.max(share * of - size / 2, 0), of - size);
    drawing.setAttribute(
      "viewBox",
      [all.x + within(centre.x, width, all.width), all.y + within(centre.y, height, all.height), width, height].join(" "),
    );
  }
  paper().classList.toggle("zoomed", zoomed > 1);
}

function change(factor, at) {
  const before = zoomed;
  zoomed = Math.min(Math.max(before * factor, 1), 12);
  if (at && zoomed > 1) {
    const from = centre ?? { x: 0.5, y: 0.5 };
    // What lies under the finger stays there.
    const shift = 1 / before - 1 / zoomed;
    centre = { x: from.x + (at.x - 0.5) * shift, y: from.y + (at.y - 0.5) * shift };
  }
  show();
  page?.invokeMethodAsync("Zoomed", Math.round(zoomed * 100));
}

export const zoom = (way) => change(way === 0 ? 1 / zoomed : way > 0 ? 1.4 : 1 / 1.4);

const partOf = (event) => (event.target instanceof Element ? event.target.closest("#paper [data-part]") : null);

// Pipes are drawn over the pots, and with a wide reach: where both lie under the finger, the pot is meant.
function partAt(event) {
  const under = document.elementsFromPoint(event.clientX, event.clientY).map((one) => one.closest("#paper [data-part]"));
  return under.find((part) => part?.dataset.pot) ?? partOf(event);
}
let dragged = false;

// The drawing is one stop for Tab, at the part that was entered last; the arrow keys go on from there.
let entered = null;
function oneStop() {
  const here = svg()?.querySelector(`[data-part="${CSS.escape(entered ?? "")}"]`) ?? svg()?.querySelector("[data-part]");
  svg()?.querySelectorAll('[data-part][tabindex="0"]').forEach((one) => one.setAttribute("tabindex", "-1"));
  here?.setAttribute("tabindex", "0");
}
function enter(event) {
  const part = partOf(event);
  if (part) {
    entered = part.dataset.part;
    oneStop();
  }
}

function click(event) {
  const part = partOf(event) && partAt(event);
  if (part && !dragged) {
    choose(part);
  }
}

function choose(part) {
  svg()?.querySelectorAll(".chosen").forEach((one) => one.classList.remove("chosen"));
  part.classList.add("chosen");
  page?.invokeMethodAsync("Tapped", part.dataset.part);
}

function key(event) {
  const part = partOf(event);
  if (!part) {
    return;
  }
  if (event.key === "Enter" || event.key === " ") {
    event.preventDefault();
    choose(part);
    return;
  }
  const way = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
  if (way) {
    event.preventDefault();
    const all = [...svg().querySelectorAll("[data-part]")];
    all[(all.indexOf(part) + way + all.length) % all.length].focus();
  }
}

function wheel(event) {
  if ((event.ctrlKey || event.metaKey) && event.target instanceof Element && event.target.closest("#paper")) {
    event.preventDefault();
    const box = svg().getBoundingClientRect();
    change(event.deltaY < 0 ? 1.15 : 1 / 1.15, {
      x: (event.clientX - box.left) / box.width,
      y: (event.clientY - box.top) / box.height,
    });
  }
}

let held = null;
function down(event) {
  dragged = false;
  if (zoomed > 1 && event.target instanceof Element && event.target.closest("#paper")) {
    held = { x: event.clientX, y: event.clientY, from: centre ?? { x: 0.5, y: 0.5 } };
  }
}
function move(event) {
  if (!held || !svg()) {
    return;
  }
  const box = svg().getBoundingClientRect();
  const [dx, dy] = [event.clientX - held.x, event.clientY - held.y];
  dragged ||= Math.hypot(dx, dy) > 5;
  const edge = 0.5 / zoomed;
  const keep = (share) => Math.min(Math.max(share, edge), 1 - edge);
  centre = { x: keep(held.from.x - dx / box.width / zoomed), y: keep(held.from.y - dy / box.height / zoomed) };
  show();
}
const up = () => (held = null);
const width = () => page?.invokeMethodAsync("Narrowed", narrow.matches);

const heard = [
  ["click", click],
  ["focusin", enter],
  ["keydown", key],
  ["wheel", wheel, { passive: false }],
  ["pointerdown", down],
  ["pointermove", move],
  ["pointerup", up],
  ["pointercancel", up],
];

export function open(reference) {
  page = reference;
  zoomed = 1;
  for (const [name, handle, options] of heard) {
    document.addEventListener(name, handle, options);
  }
  narrow.addEventListener("change", width);
  // A new drawing comes in the place of the old one: it keeps the part in sight, and the choice.
  watcher = new MutationObserver((all) => {
    if (all.some((one) => [...one.addedNodes].some((node) => node instanceof SVGSVGElement))) {
      show();
      oneStop();
    }
  });
  watcher.observe(document.body, { childList: true, subtree: true });
  return narrow.matches;
}

export function close() {
  for (const [name, handle, options] of heard) {
    document.removeEventListener(name, handle, options);
  }
  narrow.removeEventListener("change", width);
  watcher?.disconnect();
  page = null;
}

export function mark(changes) {
  if (calm.matches) {
    return;
  }
  for (const { part, kind } of changes) {
    document.querySelectorAll(`#paper [data-part="${CSS.escape(part)}"]`).forEach((one) => one.classList.add(kind));
  }
  clearTimeout(marks);
  marks = setTimeout(() => {
    document.querySelectorAll("#paper :is(.added, .moved, .changed)").forEach((one) => one.classList.remove("added", "moved", "changed"));
  }, 1600);
}
