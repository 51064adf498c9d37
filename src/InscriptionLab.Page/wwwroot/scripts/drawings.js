// Drawings of the bench, made of a few shapes; they take their colours from the page.

import { s } from "./dom.js";

const tube = (x, y, w, d, letters = true) =>
  s(
    "g",
    { class: "d-tube" },
    s("rect", { x, y, width: w, height: d, rx: 3, class: "brass" }),
    s("rect", { x, y: y + d * 0.16, width: w, height: d * 0.1, class: "shine" }),
    s("rect", { x: x + w - d * 0.22, y: y - d * 0.07, width: d * 0.22, height: d * 1.14, rx: 2, class: "ring" }),
    letters && s("path", { class: "engraving", d: engraving(x + w * 0.2, y + d * 0.5, w * 0.42, d * 0.2) }),
  );

/** A line of strokes that looks like lettering from afar. */
function engraving(x, y, w, height) {
  const parts = [];
  for (let i = 0; i < 9; i++) {
    const at = x + (w * i) / 9;
    const top = i % 4 === 0 ? y - height : y - height * 0.62;
    parts.push(i % 3 === 1 ? `M${at} ${y}a${w / 30} ${height * 0.31} 0 1 1 ${w / 15} 0a${w / 30} ${height * 0.31} 0 1 1 ${-w / 15} 0` : `M${at} ${y}V${top}M${at + w / 18} ${y}V${y - height * 0.62}`);
  }
  return parts.join("");
}

const camera = (x, y) => s("g", { class: "d-camera" }, s("rect", { x: x - 22, y: y - 10, width: 44, height: 14, rx: 4, class: "body" }), s("circle", { cx: x + 10, cy: y + 5, r: 4, class: "lens" }));

const ray = (from, to) => s("path", { class: "ray", d: `M${from}L${to}` });

const lamp = (x, y, angle) => s("g", { class: "d-lamp", transform: `translate(${x} ${y}) rotate(${angle})` }, s("path", { d: "M-8 -7L8 -12V12L-8 7Z", class: "body" }), s("path", { d: "M14 -10L34 -16M14 0H36M14 10L34 16", class: "ray" }));

const cloth = (y) => s("path", { class: "cloth", d: `M10 ${y}q30 -5 60 0t60 0t60 0t60 0t60 0v14H10Z` });

const ends = (x, y, r) => s("g", { class: "d-tube" }, s("circle", { cx: x, cy: y, r, class: "brass" }), s("circle", { cx: x, cy: y, r: r * 0.86, class: "hollow" }));

const scenes = {
  lay: () => [cloth(118), tube(40, 66, 240, 54), camera(160, 18), ray("150 26", "60 62"), ray("172 26", "262 62")],
  edges: () => [s("rect", { x: 30, y: 20, width: 260, height: 120, class: "frame" }), tube(44, 48, 232, 62), s("path", { class: "guide", d: "M30 48H290M30 110H290" })],
  near: () => [s("rect", { x: 30, y: 20, width: 260, height: 120, class: "frame" }), tube(-60, 36, 470, 90, false), s("path", { class: "engraving", d: engraving(66, 92, 186, 34) }), s("path", { class: "guide", d: "M52 52V98M46 58l6 -6l6 6M46 92l6 6l6 -6" })],
  rake: () => [cloth(118), ends(160, 84, 34), camera(160, 18), lamp(44, 66, 12), s("path", { class: "guide", d: "M160 34V46" })],
  four: () => [tube(110, 62, 110, 40), lamp(30, 82, 0), lamp(298, 82, 180), lamp(164, 18, 90), lamp(164, 146, -90)],
  turn: () => [cloth(122), ends(160, 88, 34), camera(160, 18), s("path", { class: "guide", d: "M118 74a44 44 0 0 1 84 0M202 74l-10 -4M202 74l3 -11" }), s("path", { class: "engraving", d: "M150 54.5l5 3M160 53v4M170 54.5l-5 3" })],
  scale: () => [s("rect", { x: 30, y: 20, width: 260, height: 120, class: "frame" }), s("g", { class: "d-tube" }, s("circle", { cx: 118, cy: 80, r: 44, class: "brass" }), s("circle", { cx: 118, cy: 80, r: 34, class: "hollow" }), s("circle", { cx: 118, cy: 80, r: 24, class: "glass" })), board(186, 44)],
  level: () => [cloth(118), s("g", { class: "d-tube" }, s("rect", { x: 60, y: 84, width: 90, height: 34, class: "brass" })), s("rect", { x: 176, y: 96, width: 84, height: 22, class: "block" }), s("rect", { x: 170, y: 84, width: 96, height: 5, class: "card" }), s("path", { class: "guide", d: "M40 84H290" }), camera(160, 18)],
  never: () => [s("circle", { cx: 246, cy: 40, r: 17, class: "sun" }), s("path", { class: "ray", d: "M246 12V4M246 76v-8M218 40h-8M282 40h-8M226 20l-6 -6M272 66l-6 -6M266 20l6 -6M220 66l6 -6" }), s("g", { transform: "rotate(-28 120 100)" }, tube(50, 84, 150, 26, false)), s("path", { class: "forbidden", d: "M60 30L270 140" })],
};

function board(x, y) {
  const squares = [];
  for (let r = 0; r < 6; r++) for (let c = 0; c < 6; c++) if ((r + c) % 2 === 0) squares.push(s("rect", { x: x + c * 12, y: y + r * 12, width: 12, height: 12, class: "dark" }));
  return s("g", { class: "d-board" }, s("rect", { x, y, width: 72, height: 72, class: "card" }), squares);
}

/** A drawing; what it shows is said in the words beside it. */
export function drawing(name) {
  return s("svg", { class: "drawing", viewBox: "0 0 320 160", "aria-hidden": "true" }, scenes[name]());
}
