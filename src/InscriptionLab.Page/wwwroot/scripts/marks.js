// Marks over a picture: drawn in screen places, so that lines keep their width at every zoom.

import { s } from "./dom.js";

const place = (viewer, points) => points.map((p) => viewer.toScreen(p).map((v) => v.toFixed(1)).join(",")).join(" ");

/** A closed shape; the class says what it shows. A dark line under the bright one keeps it visible on any metal. */
export function shape(viewer, points, kind, closed = true) {
  const at = place(viewer, points);
  const tag = closed ? "polygon" : "polyline";
  return s("g", { class: `mark ${kind}` }, s(tag, { class: "under", points: at }), s(tag, { class: "over", points: at }));
}

export function cross(viewer, point) {
  const [x, y] = viewer.toScreen(point);
  const d = `M${x - 9} ${y}H${x - 3}M${x + 3} ${y}H${x + 9}M${x} ${y - 9}V${y - 3}M${x} ${y + 3}V${y + 9}`;
  return s("g", { class: "mark cross" }, s("path", { class: "under", d }), s("path", { class: "over", d }));
}

/** Something to drag, large enough for a finger and reached with the Tab key. */
export function handle(viewer, point, name, label, onkeydown) {
  const [x, y] = viewer.toScreen(point);
  return s(
    "g",
    { class: "handle", "data-handle": name, "data-key": `handle-${name}`, tabindex: "0", role: "slider", "aria-label": label, "aria-valuetext": `${Math.round(point[0])}, ${Math.round(point[1])}`, "aria-valuenow": Math.round(point[0]), onkeydown },
    s("circle", { class: "reach", cx: x, cy: y, r: 22 }),
    s("circle", { class: "under", cx: x, cy: y, r: 8 }),
    s("circle", { class: "over", cx: x, cy: y, r: 8 }),
    s("circle", { class: "dot", cx: x, cy: y, r: 1.5 }),
  );
}

/** Moves a point with the arrow keys; Shift makes small steps. */
export function nudged(event, point, scale) {
  const step = (event.shiftKey ? 0.5 : 5) / Math.max(0.05, scale);
  const moves = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step] };
  const move = moves[event.key];
  if (!move) return null;
  event.preventDefault();
  event.stopPropagation();
  return [point[0] + move[0], point[1] + move[1]];
}

export function inside([x, y], quad) {
  let within = false;
  for (let i = 0, j = quad.length - 1; i < quad.length; j = i++) {
    const [a, b] = [quad[i], quad[j]];
    if (a[1] > y !== b[1] > y && x < ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]) + a[0]) within = !within;
  }
  return within;
}
