// A picture to look into: drag, wheel, two fingers, keys. Large pictures come in tiles; only what is seen is loaded.

import { h, s } from "./dom.js";

const TILE = 512;
const MOST_TILES = 240;
const LARGEST_SCALE = 24;
const KEY_STEP = 60;

export class Viewer {
  /**
   * @param label what the picture is, for who does not see it
   * @param options onView: called after every move; onHover: called with the picture point under the pointer
   */
  constructor(label, options = {}) {
    this.options = options;
    this.canvas = h("canvas", { class: "viewer-picture", "aria-hidden": "true" });
    this.layer = s("svg", { class: "viewer-marks" });
    this.element = h("div", { class: "viewer", tabindex: "0", role: "application", "aria-roledescription": "picture", "aria-label": label }, this.canvas, this.layer);
    this.view = { x: 0, y: 0, scale: 1, turn: 0, flip: 1 };
    this.size = [1, 1];
    this.levels = 0;
    this.tiles = new Map();
    this.draws = [];
    this.pointers = new Map();
    this.element.addEventListener("pointerdown", (e) => this.down(e));
    this.element.addEventListener("pointermove", (e) => this.move(e));
    for (const kind of ["pointerup", "pointercancel"]) this.element.addEventListener(kind, (e) => this.up(e));
    this.element.addEventListener("pointerleave", () => this.options.onHover?.(null));
    this.element.addEventListener("wheel", (e) => this.wheel(e), { passive: false });
    this.element.addEventListener("dblclick", (e) => this.zoom(2, this.place(e)));
    this.element.addEventListener("keydown", (e) => this.key(e));
    new ResizeObserver(() => this.resized()).observe(this.element);
  }

  /** Shows a picture: its size, its number of levels (1 for a single file), and where to find a tile. */
  show(name, size, levels, address) {
    if (this.name === name) return false;
    const first = this.name === undefined || size[0] !== this.size[0] || size[1] !== this.size[1];
    [this.name, this.size, this.levels, this.address] = [name, size, levels, address];
    this.tiles.clear();
    if (first) this.fit();
    this.draw();
    return true;
  }

  clear() {
    this.name = undefined;
    this.levels = 0;
    this.tiles.clear();
    this.draw();
  }

  get width() {
    return this.element.clientWidth;
  }

  get height() {
    return this.element.clientHeight;
  }

  /** Leads from a picture point to the place on the screen. */
  toScreen([x, y]) {
    const { scale, turn, flip } = this.view;
    const [dx, dy] = [x - this.view.x, y - this.view.y];
    const [c, n] = [Math.cos(turn), Math.sin(turn)];
    return [this.width / 2 + flip * scale * (dx * c - dy * n), this.height / 2 + scale * (dx * n + dy * c)];
  }

  toPicture([px, py]) {
    const { scale, turn, flip } = this.view;
    const [u, v] = [(flip * (px - this.width / 2)) / scale, (py - this.height / 2) / scale];
    const [c, n] = [Math.cos(turn), Math.sin(turn)];
    return [this.view.x + u * c + v * n, this.view.y - u * n + v * c];
  }

  place(event) {
    const box = this.element.getBoundingClientRect();
    return [event.clientX - box.left, event.clientY - box.top];
  }

  fitScale() {
    const [c, n] = [Math.abs(Math.cos(this.view.turn)), Math.abs(Math.sin(this.view.turn))];
    const [w, t] = this.size;
    return Math.min(this.width / (w * c + t * n), this.height / (w * n + t * c)) || 1;
  }

  fit() {
    this.set({ x: (this.size[0] - 1) / 2, y: (this.size[1] - 1) / 2, scale: this.fitScale() });
  }

  set(view, quiet = false) {
    const next = { ...this.view, ...view };
    next.scale = Math.min(LARGEST_SCALE, Math.max(this.fitScale() / 4, next.scale));
    this.view = next;
    this.draw();
    if (!quiet) this.options.onView?.(this.view);
  }

  zoom(factor, at = [this.width / 2, this.height / 2]) {
    const fixed = this.toPicture(at);
    const scale = Math.min(LARGEST_SCALE, Math.max(this.fitScale() / 4, this.view.scale * factor));
    this.view = { ...this.view, scale };
    const now = this.toPicture(at);
    this.set({ x: this.view.x + fixed[0] - now[0], y: this.view.y + fixed[1] - now[1] });
  }

  pan(dx, dy) {
    const [a, b] = [this.toPicture([0, 0]), this.toPicture([dx, dy])];
    this.set({ x: this.view.x - (b[0] - a[0]), y: this.view.y - (b[1] - a[1]) });
  }

  down(event) {
    if (event.target.closest(".viewer-tools") || event.button > 0) return;
    const at = this.place(event);
    const handle = event.target.closest("[data-handle]");
    this.element.setPointerCapture(event.pointerId);
    this.pointers.set(event.pointerId, at);
    if (this.pointers.size === 1) {
      this.grip = handle ? handle.dataset.handle : this.options.onPress?.(this.toPicture(at), event) ? "press" : null;
      this.gripAt = at;
      this.moved = false;
    }
    if (handle) event.preventDefault();
  }

  move(event) {
    const at = this.place(event);
    const before = this.pointers.get(event.pointerId);
    if (!before) {
      this.options.onHover?.(this.toPicture(at));
      return;
    }
    if (this.pointers.size === 2) this.pinch(event.pointerId, before, at);
    else if (this.grip) {
      this.moved ||= Math.hypot(at[0] - this.gripAt[0], at[1] - this.gripAt[1]) > 2;
      this.options.onDrag?.(this.grip, this.toPicture(at), false);
    } else {
      this.moved ||= Math.hypot(at[0] - this.gripAt[0], at[1] - this.gripAt[1]) > 3;
      this.pan(at[0] - before[0], at[1] - before[1]);
    }
    this.pointers.set(event.pointerId, at);
  }

  up(event) {
    if (!this.pointers.delete(event.pointerId)) return;
    const at = this.toPicture(this.place(event));
    if (this.grip) this.options.onDrag?.(this.grip, at, true);
    else if (!this.moved) this.options.onPick?.(at);
    this.grip = null;
  }

  pinch(id, before, at) {
    const other = [...this.pointers].find(([key]) => key !== id)[1];
    const factor = Math.hypot(at[0] - other[0], at[1] - other[1]) / Math.max(1, Math.hypot(before[0] - other[0], before[1] - other[1]));
    this.zoom(factor, [(at[0] + other[0]) / 2, (at[1] + other[1]) / 2]);
    this.pan((at[0] - before[0]) / 2, (at[1] - before[1]) / 2);
    this.grip = null;
    this.moved = true;
  }

  wheel(event) {
    event.preventDefault();
    const lines = event.deltaMode === 1 ? 16 : 1;
    this.zoom(Math.exp((-event.deltaY * lines) / 400), this.place(event));
  }

  key(event) {
    if (event.target !== this.element || event.ctrlKey || event.metaKey || event.altKey) return;
    if (this.options.onKey?.(event)) {
      event.preventDefault();
      return;
    }
    const steps = { ArrowLeft: [KEY_STEP, 0], ArrowRight: [-KEY_STEP, 0], ArrowUp: [0, KEY_STEP], ArrowDown: [0, -KEY_STEP] };
    if (steps[event.key]) this.pan(...steps[event.key]);
    else if (event.key === "+" || event.key === "=") this.zoom(1.4);
    else if (event.key === "-") this.zoom(1 / 1.4);
    else if (event.key === "0") this.fit();
    else return;
    event.preventDefault();
  }

  resized() {
    const ratio = window.devicePixelRatio || 1;
    const [w, t] = [Math.round(this.width * ratio), Math.round(this.height * ratio)];
    if (this.canvas.width === w && this.canvas.height === t) return;
    const wasFit = !this.seen || Math.abs(this.view.scale - this.seen) < 1e-9;
    [this.canvas.width, this.canvas.height] = [w, t];
    if (wasFit) this.fit();
    this.seen = this.fitScale();
    this.draw();
    this.options.onResize?.();
  }

  /** Draws once before the next frame, however often it is asked. */
  draw() {
    if (this.pending) return;
    this.pending = requestAnimationFrame(() => {
      this.pending = 0;
      this.paint();
      this.options.onPaint?.(this);
    });
  }

  paint() {
    const context = this.canvas.getContext("2d");
    const ratio = window.devicePixelRatio || 1;
    context.setTransform(1, 0, 0, 1, 0, 0);
    context.clearRect(0, 0, this.canvas.width, this.canvas.height);
    if (!this.levels) return;
    const { x, y, scale, turn, flip } = this.view;
    const [c, n] = [Math.cos(turn) * scale * ratio, Math.sin(turn) * scale * ratio];
    // A pixel's centre has integer coordinates, so the picture begins half a pixel before zero.
    context.setTransform(flip * c, n, -flip * n, c, this.canvas.width / 2 - flip * (c * (x + 0.5) - n * (y + 0.5)), this.canvas.height / 2 - (n * (x + 0.5) + c * (y + 0.5)));
    context.imageSmoothingQuality = "high";
    context.imageSmoothingEnabled = scale * ratio < 4;
    const wanted = Math.min(this.levels - 1, Math.max(0, Math.floor(Math.log2(1 / (scale * ratio)) + 0.25)));
    for (let level = this.levels - 1; level >= wanted; level--) {
      if (level === wanted || level === this.levels - 1) this.paintLevel(context, level, level === wanted);
    }
    this.forget();
  }

  paintLevel(context, level, load) {
    const step = TILE * 2 ** level;
    const single = this.levels === 1;
    const [columns, rows] = single ? [1, 1] : [Math.ceil(this.size[0] / step), Math.ceil(this.size[1] / step)];
    const corners = [[0, 0], [this.width, 0], [this.width, this.height], [0, this.height]].map((p) => this.toPicture(p));
    const range = (k, most) => [Math.max(0, Math.floor(Math.min(...corners.map((p) => p[k])) / step)), Math.min(most - 1, Math.floor(Math.max(...corners.map((p) => p[k])) / step))];
    const [[left, right], [top, bottom]] = single ? [[0, 0], [0, 0]] : [range(0, columns), range(1, rows)];
    for (let row = top; row <= bottom; row++) {
      for (let column = left; column <= right; column++) {
        const tile = this.tile(level, column, row, load);
        if (!tile?.complete || !tile.naturalWidth) continue;
        const [w, t] = single ? this.size : [Math.min(step, this.size[0] - column * step), Math.min(step, this.size[1] - row * step)];
        context.drawImage(tile, single ? 0 : column * step, single ? 0 : row * step, w, t);
      }
    }
  }

  tile(level, column, row, load) {
    const key = `${level}/${column}/${row}`;
    let tile = this.tiles.get(key);
    if (!tile && (load || level === this.levels - 1)) {
      tile = new Image();
      tile.onload = () => this.draw();
      tile.src = this.address(level, column, row);
    }
    if (tile) {
      this.tiles.delete(key);
      this.tiles.set(key, tile);
    }
    return tile;
  }

  forget() {
    for (const key of this.tiles.keys()) {
      if (this.tiles.size <= MOST_TILES) break;
      if (!key.startsWith(`${this.levels - 1}/`)) this.tiles.delete(key);
    }
  }
}
