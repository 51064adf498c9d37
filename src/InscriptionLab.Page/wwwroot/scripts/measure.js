// Measuring a lens cell: circles and scale found by the program, moved by hand where they are wrong. The result moves with them.

import { api, pictures } from "./api.js";
import { chooser } from "./incoming.js";
import { h, replace } from "./dom.js";
import { handle, nudged, shape, cross } from "./marks.js";
import { settings } from "./settings.js";
import { attempt, current, onChange, store, update } from "./store.js";
import { t } from "./strings.js";
import { Viewer } from "./viewer.js";

const ROLES = ["outer", "clear", "stop"];
const STEPS = 72;

export class Measure {
  constructor() {
    this.circles = [];
    this.viewer = new Viewer(t("measure.photo"), { onPaint: () => this.mark(), onDrag: (name, p, end) => this.drag(name, p, end) });
    this.results = h("div", { class: "measure-results" });
    this.controls = h("div", { class: "measure-controls" });
    this.side = h("aside", { class: "panel", "aria-label": t("measure.results") }, this.controls, this.results);
    this.empty = h("div", { class: "empty" }, h("div", { class: "invitation" }, h("h1", {}, t("measure.empty")), h("p", {}, t("measure.empty.text")), h("div", { class: "row" }, chooser(t("drop.choose"), { className: "button strong" }))));
    this.element = h("div", { class: "measure" }, this.empty, this.viewer.element, this.side);
    onChange((what) => what !== "problem" && this.element.isConnected && this.opened());
    settings.onChange((name) => name === "units" && this.list());
  }

  opened() {
    const photo = current();
    const ready = Boolean(photo?.size);
    this.empty.hidden = ready;
    this.viewer.element.hidden = !ready;
    this.side.hidden = !ready;
    if (!ready || photo.id === this.photo?.id) return;
    this.photo = photo;
    this.take(null);
    this.viewer.show(photo.id, photo.size, photo.levels, (level, column, row) => pictures.tile(photo.id, level, column, row));
    this.control();
    this.fetch(photo.id);
  }

  async fetch(id) {
    const measured = await attempt(() => api.get(`/api/photos/${id}/measured`));
    if (measured && this.photo?.id === id) this.take(measured);
  }

  control() {
    const photos = store.piece?.photos ?? [];
    const field = (name, control) => h("label", { class: "choice" }, h("span", {}, t(`measure.${name}`)), control);
    this.kind = h("select", { "data-key": "measure-kind" }, [["", t("measure.any")], ["checkerboard", t("measure.checkerboard")], ["rule", t("measure.rule")], ["aruco", t("measure.aruco")], ["id1", t("measure.id1")], ["disc", t("measure.disc")]].map(([value, text]) => h("option", { value }, text)));
    this.size = h("input", { type: "number", min: "0", step: "any", class: "short", "data-key": "measure-size" });
    this.offset = h("input", { type: "number", step: "any", class: "short", "data-key": "measure-offset" });
    replace(
      this.controls,
      photos.length > 1 && field("of", h("select", { onchange: (event) => update({ photo: event.target.value }, "piece") }, photos.map((one) => h("option", { value: one.id, selected: one.id === this.photo.id }, one.name)))),
      field("kind", this.kind),
      field("size", this.size),
      field("offset", this.offset),
      h("div", { class: "row" }, (this.go = h("button", { type: "button", class: "button strong", "data-key": "measure-go", onclick: () => this.run() }, t("measure.go"))), h("button", { type: "button", class: "tool", "data-key": "measure-add", onclick: () => this.add() }, t("measure.add")), h("button", { type: "button", class: "tool", "data-key": "measure-scale", "aria-pressed": "false", onclick: (event) => this.byHand(event.target) }, t("measure.byhand"))),
      (this.scaleField = h("div", { hidden: true }, field("length", (this.length = h("input", { type: "number", min: "0", step: "any", value: "10", class: "short", "data-key": "measure-length", oninput: () => this.all() }))))),
    );
  }

  async run() {
    this.go.disabled = true;
    this.go.textContent = t("measure.working");
    const scale = this.kind.value === "id1" ? "id1" : this.kind.value && this.size.value ? `${this.kind.value}:${this.size.value}mm` : "";
    const measured = await attempt(() => api.post(`/api/photos/${this.photo.id}/measure`, { scale, offsetMm: this.offset.value === "" ? null : Number(this.offset.value) }));
    this.go.disabled = false;
    this.go.textContent = t("measure.go");
    if (measured) this.take(measured);
  }

  take(measured) {
    this.measured = measured;
    this.circles = (measured?.circles ?? []).map((one) => ({ ...one, hand: false }));
    this.ends = null;
    this.list();
    this.viewer.draw();
  }

  add() {
    const [w, t2] = this.photo.size;
    const r = Math.min(w, t2) / 6;
    this.circles.push({ role: ROLES[Math.min(2, this.circles.length)], ellipse: [w / 2, t2 / 2, r, r, 0], hand: true, budget: [] });
    this.ask(this.circles.length - 1);
    this.list();
    this.viewer.draw();
  }

  byHand(button) {
    const [w, t2] = this.photo.size;
    this.ends = this.ends ? null : [[w * 0.35, t2 * 0.85], [w * 0.65, t2 * 0.85]];
    button.setAttribute("aria-pressed", String(Boolean(this.ends)));
    this.scaleField.hidden = !this.ends;
    this.all();
    this.viewer.draw();
  }

  /** With another scale every circle is another size, those found by the program too: they count as placed by hand from then on. */
  all() {
    this.circles.forEach((circle, i) => {
      if (this.ends) circle.hand = true;
      if (circle.hand) this.ask(i);
    });
  }

  places(i) {
    const [x, y, a, b, turn] = this.circles[i].ellipse;
    const [c, n] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
    return { centre: [x, y], major: [x + a * c, y + a * n], minor: [x - b * n, y + b * c] };
  }

  mark() {
    const { layer } = this.viewer;
    const key = layer.contains(document.activeElement) ? document.activeElement.dataset.key : null;
    const marks = [];
    this.circles.forEach((circle, i) => {
      const [x, y, a, b, turn] = circle.ellipse;
      const [c, n] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
      const points = Array.from({ length: STEPS }, (_, k) => {
        const [u, v] = [a * Math.cos((2 * Math.PI * k) / STEPS), b * Math.sin((2 * Math.PI * k) / STEPS)];
        return [x + u * c - v * n, y + u * n + v * c];
      });
      marks.push(shape(this.viewer, points, circle.hand ? "letter by-hand" : "letter"));
      for (const [name, at] of Object.entries(this.places(i))) marks.push(handle(this.viewer, at, `${name}-${i}`, t(`measure.${name}`, { role: t(`role.${circle.role}`) }), (event) => this.nudge(event, `${name}-${i}`, at)));
    });
    (this.measured?.points ?? []).slice(0, 400).forEach((point) => marks.push(cross(this.viewer, point)));
    if (this.ends) {
      marks.push(shape(this.viewer, this.ends, "edge", false));
      this.ends.forEach((at, i) => marks.push(handle(this.viewer, at, `end-${i}`, t("measure.end", { n: i + 1 }), (event) => this.nudge(event, `end-${i}`, at))));
    }
    layer.replaceChildren(...marks);
    if (key) layer.querySelector(`[data-key="${CSS.escape(key)}"]`)?.focus({ preventScroll: true });
  }

  nudge(event, name, at) {
    const next = nudged(event, at, this.viewer.view.scale);
    if (next) this.drag(name, next, true);
  }

  drag(name, [px, py], end) {
    const [part, index] = name.split("-");
    const i = Number(index);
    if (part === "end") {
      this.ends[i] = [px, py];
      this.all();
    } else {
      const circle = this.circles[i];
      const [x, y, a, b, turn] = circle.ellipse;
      const [dx, dy] = [px - x, py - y];
      const far = Math.max(2, Math.hypot(dx, dy));
      if (part === "centre") circle.ellipse = [px, py, a, b, turn];
      else if (part === "major") circle.ellipse = [x, y, far, (b / a) * far, (Math.atan2(dy, dx) * 180) / Math.PI];
      else circle.ellipse = far <= a ? [x, y, a, far, turn] : [x, y, far, a, turn + 90];
      circle.hand = true;
      this.ask(i);
    }
    this.viewer.draw();
    if (end) this.list();
  }

  /** One question at a time for each circle; the newest place is asked for next. The program on this machine answers within a frame. */
  async ask(i) {
    const circle = this.circles[i];
    if (circle.asking) {
      circle.again = true;
      return;
    }
    circle.asking = true;
    do {
      circle.again = false;
      const scale = this.ends ? { scalePixels: Math.hypot(this.ends[0][0] - this.ends[1][0], this.ends[0][1] - this.ends[1][1]), scaleMm: Number(this.length.value) || 0 } : { scalePixels: null, scaleMm: null };
      const answer = await attempt(() => api.post(`/api/photos/${this.photo.id}/circle`, { role: circle.role, ellipse: circle.ellipse, ...scale }));
      if (answer) Object.assign(circle, { millimetres: answer.millimetres, expandedMillimetres: answer.expandedMillimetres, statement: answer.statement, budget: answer.budget });
      else Object.assign(circle, { millimetres: undefined, budget: [] });
      this.tell(i);
    } while (circle.again);
    circle.asking = false;
    this.list();
  }

  tell(i) {
    const cell = this.results.querySelector(`[data-size="${i}"]`);
    if (cell) cell.textContent = size(this.circles[i]);
  }

  list() {
    const remove = (i) => () => {
      this.circles.splice(i, 1);
      this.list();
      this.viewer.draw();
    };
    replace(
      this.results,
      h("h2", {}, t("measure.results")),
      this.measured?.scale && h("p", { class: "soft" }, this.measured.scale),
      this.circles.length === 0 && h("p", { class: "soft" }, t("measure.none")),
      this.circles.map((circle, i) =>
        h(
          "section",
          { class: "measure-circle" },
          h(
            "div",
            { class: "row" },
            h("select", { "aria-label": t("measure.role"), "data-key": `role-${i}`, onchange: (event) => (circle.role = event.target.value) }, ROLES.map((role) => h("option", { value: role, selected: role === circle.role }, t(`role.${role}`)))),
            h("strong", { class: "number", "data-size": i }, size(circle)),
            h("span", { class: "soft" }, circle.hand ? t("measure.hand") : ""),
            h("span", { class: "space" }),
            h("button", { type: "button", class: "tool", "aria-label": t("measure.remove", { role: t(`role.${circle.role}`) }), onclick: remove(i) }, "\u00d7"),
          ),
          circle.statement && h("p", { class: "soft" }, circle.statement),
          circle.budget?.length > 0 && h("details", {}, h("summary", {}, t("measure.budget")), h("table", {}, circle.budget.map((row) => h("tr", {}, h("th", { scope: "row" }, row[0]), h("td", { class: "number" }, row[1]), h("td", { class: "number" }, `${row[2]} mm`))))),
        ),
      ),
      (this.measured?.warnings ?? []).length > 0 && h("ul", {}, this.measured.warnings.map((text) => h("li", {}, text))),
      this.ends && h("p", { class: "soft" }, t("measure.plane")),
    );
  }
}

function size({ millimetres, expandedMillimetres }) {
  if (millimetres === undefined) return "\u2013";
  const inch = settings.get("units") === "in";
  const [factor, digits, unit] = inch ? [25.4, 4, "in"] : [1, 3, "mm"];
  return `${(millimetres / factor).toFixed(digits)} \u00b1 ${(expandedMillimetres / factor).toFixed(digits)} ${unit}`;
}
