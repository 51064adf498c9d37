// A surface under a lamp that can be moved: normals (red: to the right, green: upward) and albedo (blue, half of it), matt metal with a broad highlight.

import { h } from "./dom.js";
import { t } from "./strings.js";

const SLIDERS = [["side", 0, 360, 225], ["height", 3, 90, 25], ["shine", 0, 100, 30], ["stains", 0, 100, 100]];
const LOWEST = 3;
const KEYS = { ArrowLeft: [-5, 0], ArrowRight: [5, 0], ArrowUp: [0, 3], ArrowDown: [0, -3] };

export class Relight {
  constructor(address, [columns, rows]) {
    this.values = Object.fromEntries(SLIDERS.map(([name, , , value]) => [name, value]));
    this.canvas = h("canvas", { class: "relight-picture", tabindex: "0", role: "img", "data-key": "relight", "aria-label": t("relight.label"), width: columns, height: rows });
    this.inputs = {};
    this.outputs = {};
    const sliders = SLIDERS.map(([name, from, to, value]) => {
      this.outputs[name] = h("output", { class: "number" });
      this.inputs[name] = h("input", { type: "range", min: from, max: to, value, "data-key": `relight-${name}`, oninput: (event) => this.change({ [name]: Number(event.target.value) }) });
      return h("label", { class: "choice" }, h("span", {}, t(`relight.${name}`)), this.inputs[name], this.outputs[name]);
    });
    this.element = h("figure", { class: "relight" }, h("div", { class: "relight-ground" }, this.canvas), h("div", { class: "relight-lamp" }, sliders), h("figcaption", { class: "soft" }, t("relight.note")));
    this.canvas.addEventListener("pointermove", (event) => this.point(event));
    this.canvas.addEventListener("keydown", (event) => this.key(event));
    const picture = new Image();
    picture.addEventListener("load", () => this.take(picture), { once: true });
    picture.src = address;
    this.change({});
  }

  take(picture) {
    [this.canvas.width, this.canvas.height] = [picture.naturalWidth, picture.naturalHeight];
    const pen = this.canvas.getContext("2d", { willReadFrequently: true });
    pen.drawImage(picture, 0, 0);
    this.packed = pen.getImageData(0, 0, this.canvas.width, this.canvas.height).data;
    this.lit = pen.createImageData(this.canvas.width, this.canvas.height);
    this.change({});
  }

  /** The lamp stands where the pointer is: over the middle it is high, at the edge it rakes. */
  point(event) {
    const box = this.canvas.getBoundingClientRect();
    const fit = Math.min(box.width / this.canvas.width, box.height / this.canvas.height);
    const [x, y] = [(event.clientX - box.left - box.width / 2) / (this.canvas.width * fit), (event.clientY - box.top - box.height / 2) / (this.canvas.height * fit)];
    this.change({ side: Math.round(((Math.atan2(y, x) * 180) / Math.PI + 360) % 360), height: Math.round(90 - (90 - LOWEST) * Math.min(1, 2 * Math.max(Math.abs(x), Math.abs(y)))) });
  }

  key(event) {
    const step = KEYS[event.key];
    if (!step) return;
    event.preventDefault();
    event.stopPropagation();
    this.change({ side: (this.values.side + step[0] + 360) % 360, height: Math.min(90, Math.max(LOWEST, this.values.height + step[1])) });
  }

  change(values) {
    Object.assign(this.values, values);
    for (const [name, input] of Object.entries(this.inputs)) {
      input.value = this.values[name];
      this.outputs[name].textContent = t(`relight.${name}.unit`, { n: this.values[name] });
    }
    if (!this.packed || this.asked) return;
    this.asked = true;
    requestAnimationFrame(() => {
      this.asked = false;
      this.light();
    });
  }

  light() {
    const side = (this.values.side * Math.PI) / 180;
    const height = (this.values.height * Math.PI) / 180;
    const [shine, stains] = [this.values.shine / 100, this.values.stains / 100];
    const [lx, ly, lz] = [Math.cos(side) * Math.cos(height), Math.sin(side) * Math.cos(height), Math.sin(height)];
    const norm = Math.hypot(lx, ly, lz + 1);
    const [hx, hy, hz] = [lx / norm, ly / norm, (lz + 1) / norm];
    const bare = Math.max(0.25, lz);
    const [from, out] = [this.packed, this.lit.data];
    for (let i = 0; i < from.length; i += 4) {
      const x = from[i] / 127.5 - 1;
      const y = 1 - from[i + 1] / 127.5;
      const z = Math.sqrt(Math.max(0, 1 - x * x - y * y));
      const albedo = 1 + stains * (from[i + 2] / 127.5 - 1);
      const matt = Math.max(0, x * lx + y * ly + z * lz) / bare;
      const gloss = shine * Math.max(0, x * hx + y * hy + z * hz) ** 24;
      const level = 25 + 105 * albedo * matt + 150 * gloss;
      out[i] = level * 1.06;
      out[i + 1] = level * 0.97;
      out[i + 2] = level * 0.78;
      out[i + 3] = 255;
    }
    this.canvas.getContext("2d").putImageData(this.lit, 0, 0);
  }
}
