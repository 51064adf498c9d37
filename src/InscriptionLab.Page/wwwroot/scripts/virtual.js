// Thousands of rows of which only those in sight are built. One key of the keyboard leads from row to row.

import { h } from "./dom.js";

const SIZES = { table: { width: 0, height: 40 }, wall: { width: 184, height: 118 } };
const SPARE = 6;

export class VirtualRows {
  constructor({ label, render, chosen }) {
    Object.assign(this, { render, chosen, rows: [], built: new Map(), at: -1, wall: false });
    this.space = h("div", { class: "virtual-space", role: "presentation" });
    this.element = h("div", { class: "virtual", role: "listbox", tabindex: "0", "aria-label": label, onkeydown: (event) => this.key(event), onclick: (event) => this.click(event) }, this.space);
    this.element.addEventListener("scroll", () => this.draw(), { passive: true });
    new ResizeObserver(() => this.draw(true)).observe(this.element);
  }

  as(wall) {
    this.wall = wall;
    this.element.classList.toggle("wall", wall);
    this.draw(true);
  }

  show(rows) {
    this.rows = rows;
    this.at = -1;
    this.element.removeAttribute("aria-activedescendant");
    this.element.scrollTop = 0;
    this.draw(true);
  }

  get columns() {
    return this.wall ? Math.max(1, Math.floor(this.element.clientWidth / SIZES.wall.width)) : 1;
  }

  get height() {
    return SIZES[this.wall ? "wall" : "table"].height;
  }

  draw(anew = false) {
    if (anew) {
      this.space.replaceChildren();
      this.built.clear();
      this.across = this.columns;
      this.space.style.height = `${Math.ceil(this.rows.length / this.across) * this.height}px`;
    }
    const { scrollTop, clientHeight } = this.element;
    const first = Math.max(0, Math.floor(scrollTop / this.height) - SPARE) * this.across;
    const last = Math.min(this.rows.length, (Math.ceil((scrollTop + clientHeight) / this.height) + SPARE) * this.across);
    for (const [i, element] of this.built) {
      if (i < first || i >= last) {
        element.remove();
        this.built.delete(i);
      }
    }
    for (let i = first; i < last; i++) if (!this.built.has(i)) this.build(i);
  }

  build(i) {
    const element = h("div", { class: this.wall ? "virtual-tile" : "virtual-row", role: "option", id: `row-${i}`, "aria-selected": String(i === this.at), "aria-posinset": i + 1, "aria-setsize": this.rows.length, "data-row": i }, this.render(this.rows[i], this.wall));
    const column = i % this.across;
    element.style.transform = `translate(${column * SIZES.wall.width}px, ${Math.floor(i / this.across) * this.height}px)`;
    this.built.set(i, element);
    this.space.append(element);
  }

  click(event) {
    const row = event.target.closest("[data-row]");
    if (row) this.choose(Number(row.dataset.row), true);
  }

  key(event) {
    const page = Math.max(1, Math.floor(this.element.clientHeight / this.height) - 1) * this.across;
    const step = { ArrowDown: this.across, ArrowUp: -this.across, ArrowRight: this.wall ? 1 : 0, ArrowLeft: this.wall ? -1 : 0, PageDown: page, PageUp: -page, Home: -Infinity, End: Infinity }[event.key];
    if (event.key === "Enter" && this.at >= 0) this.chosen(this.rows[this.at]);
    if (!step || this.rows.length === 0) return;
    event.preventDefault();
    this.choose(Math.min(this.rows.length - 1, Math.max(0, this.at + step)), false);
  }

  choose(i, open) {
    this.built.get(this.at)?.setAttribute("aria-selected", "false");
    this.at = i;
    const top = Math.floor(i / this.across) * this.height;
    if (top < this.element.scrollTop) this.element.scrollTop = top;
    else if (top + this.height > this.element.scrollTop + this.element.clientHeight) this.element.scrollTop = top + this.height - this.element.clientHeight;
    this.draw();
    this.built.get(i)?.setAttribute("aria-selected", "true");
    this.element.setAttribute("aria-activedescendant", `row-${i}`);
    if (open) this.chosen(this.rows[i]);
  }
}
