// Measuring a lens cell: circles and scale found by the program, moved by hand where they are wrong. The result moves with them.

import { api, pictures } from "./api.js";
import { chooser } from "./incoming.js";
import { h, replace } from "./dom.js";
import { ellipseHandles, ellipsePoints, movedEllipse } from "./geometry.js";
import { whoCorrects } from "./dialog.js";
import { handle, nudged, shape, cross } from "./marks.js";
import { settings } from "./settings.js";
import { attempt, currentPhoto, onChange, store, update } from "./store.js";
import { t } from "./strings.js";
import { Viewer } from "./viewer.js";

const ROLES = ["outer", "clear", "stop"];
const MOST_STEPS = 100; // that can be taken back

export class Measure {
  constructor() {
    this.circles = [];
    this.past = [];
    this.viewer = new Viewer(t("measure.photo"), { onPaint: () => this.mark(), onDrag: (name, p, end) => this.drag(name, p, end) });
    this.results = h("div", { class: "measure-results" });
    this.controls = h("div", { class: "measure-controls" });
    this.side = h("aside", { class: "panel", "aria-label": t("measure.results") }, this.controls, this.results);
    this.empty = h("div", { class: "empty" }, h("div", { class: "invitation" }, h("h1", {}, t("measure.empty")), h("p", {}, t("measure.empty.text")), h("div", { class: "row" }, chooser(t("drop.choose"), { className: "button strong" }))));
    this.element = h("div", { class: "measure" }, this.empty, this.viewer.element, this.side);
    onChange((what) => what !== "problem" && this.element.isConnected && this.opened());
    settings.onChange((name) => name === "units" && this.list());
    this.element.addEventListener("keydown", (event) => {
      if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z" || event.target.closest("input")) return;
      event.preventDefault();
      this.undo();
    });
  }

  opened() {
    const photo = currentPhoto();
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
    this.kind = h("select", { "data-key": "measure-kind" }, [["", t("measure.any")], ["card", t("measure.card")], ["checkerboard", t("measure.checkerboard")], ["rule", t("measure.rule")], ["aruco", t("measure.aruco")], ["id1", t("measure.id1")], ["disc", t("measure.disc")]].map(([value, text]) => h("option", { value }, text)));
    this.size = h("input", { type: "number", min: "0", step: "any", class: "short", "data-key": "measure-size" });
    this.offset = h("input", { type: "number", step: "any", class: "short", "data-key": "measure-offset" });
    replace(
      this.controls,
      photos.length > 1 && field("of", h("select", { onchange: (event) => update({ photo: event.target.value }, "piece") }, photos.map((one) => h("option", { value: one.id, selected: one.id === this.photo.id }, one.name)))),
      field("kind", this.kind),
      field("size", this.size),
      field("offset", this.offset),
      h("div", { class: "row" }, (this.go = h("button", { type: "button", class: "button strong", "data-key": "measure-go", onclick: () => this.run() }, t("measure.go"))), h("button", { type: "button", class: "tool", "data-key": "measure-add", onclick: () => this.add() }, t("measure.add")), (this.scaleButton = h("button", { type: "button", class: "tool", "data-key": "measure-scale", "aria-pressed": "false", onclick: () => this.byHand() }, t("measure.byhand")))),
      (this.scaleField = h("div", { hidden: true }, field("length", (this.length = h("input", { type: "number", min: "0", step: "any", value: "10", class: "short", "data-key": "measure-length", oninput: () => this.all() }))))),
    );
  }

  async run() {
    const kind = this.kind.value;
    if (kind && kind !== "id1" && this.size.value === "") {
      update({ problem: t("measure.size.needed") }, "problem");
      this.size.focus();
      return;
    }
    this.go.disabled = true;
    this.go.textContent = t("measure.working");
    const scale = kind && kind !== "id1" ? `${kind}:${this.size.value}mm` : kind;
    const measured = await attempt(() => api.post(`/api/photos/${this.photo.id}/measure`, { scale, offsetMm: this.offset.value === "" ? null : Number(this.offset.value) }));
    this.go.disabled = false;
    this.go.textContent = t("measure.go");
    if (measured) this.take(measured);
  }

  take(measured) {
    this.measured = measured;
    this.past = [];
    this.circles = (measured?.circles ?? []).map((one) => ({ ...one, hand: false }));
    this.ends = null;
    this.list();
    this.viewer.draw();
  }

  add() {
    this.remember();
    const [w, t2] = this.photo.size;
    const r = Math.min(w, t2) / 6;
    this.circles.push({ role: ROLES[Math.min(2, this.circles.length)], ellipse: [w / 2, t2 / 2, r, r, 0], hand: true, budget: [] });
    this.ask(this.circles.length - 1);
    this.list();
    this.viewer.draw();
  }

  byHand() {
    this.remember();
    const [w, t2] = this.photo.size;
    this.ends = this.ends ? null : [[w * 0.35, t2 * 0.85], [w * 0.65, t2 * 0.85]];
    this.showScale();
    this.all();
    this.viewer.draw();
  }

  showScale() {
    this.scaleButton.setAttribute("aria-pressed", String(Boolean(this.ends)));
    this.scaleField.hidden = !this.ends;
  }

  /** With another scale every circle is another size, those found by the program too: they count as placed by hand from then on. */
  all() {
    this.circles.forEach((circle, i) => {
      if (this.ends) circle.hand = true;
      if (circle.hand) this.ask(i);
    });
  }

  mark() {
    const { layer } = this.viewer;
    const key = layer.contains(document.activeElement) ? document.activeElement.dataset.key : null;
    const marks = [];
    this.circles.forEach((circle, i) => {
      marks.push(shape(this.viewer, ellipsePoints(circle.ellipse), circle.hand ? "letter by-hand" : "letter"));
      for (const [name, at] of Object.entries(ellipseHandles(circle.ellipse))) marks.push(handle(this.viewer, at, `${name}-${i}`, t(`measure.${name}`, { role: t(`role.${circle.role}`) }), (event) => this.nudge(event, `${name}-${i}`, at)));
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
    if (this.dragged !== name) this.remember();
    this.dragged = end ? null : name;
    if (part === "end") {
      this.ends[i] = [px, py];
      this.all();
    } else {
      const circle = this.circles[i];
      circle.ellipse = movedEllipse(circle.ellipse, part, [px, py]);
      circle.hand = true;
      this.ask(i);
    }
    this.viewer.draw();
    if (end) this.list();
  }

  /** Remembers circles and scale as they are, so that the next step can be taken back. */
  remember() {
    this.past.push({ circles: this.circles.map((circle) => ({ ...circle, asking: false, again: false })), ends: this.ends?.map((end) => [...end]) ?? null });
    if (this.past.length > MOST_STEPS) this.past.shift();
  }

  undo() {
    const before = this.past.pop();
    if (!before) return;
    this.circles = before.circles;
    this.ends = before.ends;
    this.showScale();
    this.all();
    this.list();
    this.viewer.draw();
  }

  /** Keeps the circles as they stand, with the name of who placed them, for the report. */
  async keep() {
    const person = await whoCorrects();
    if (!person) return;
    const circles = this.circles.map((circle) => ({ role: circle.role, ellipse: circle.ellipse, ...this.scale() }));
    const kept = await attempt(() => api.post(`/api/photos/${this.photo.id}/circles`, { person, circles }).then(() => true));
    this.kept = kept === true;
    this.list();
    this.kept = false;
  }

  /** The scale that was laid by hand; nothing where the one found in the photo counts. */
  scale() {
    return this.ends ? { scalePixels: Math.hypot(this.ends[0][0] - this.ends[1][0], this.ends[0][1] - this.ends[1][1]), scaleMm: Number(this.length.value) || 0 } : { scalePixels: null, scaleMm: null };
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
      const answer = await attempt(() => api.post(`/api/photos/${this.photo.id}/circle`, { role: circle.role, ellipse: circle.ellipse, ...this.scale() }));
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
      this.remember();
      this.circles.splice(i, 1);
      this.list();
      this.viewer.draw();
    };
    replace(
      this.results,
      h("div", { class: "row" }, h("h2", {}, t("measure.results")), h("span", { class: "space" }), h("button", { type: "button", class: "tool", "data-key": "measure-undo", disabled: this.past.length === 0, onclick: () => this.undo() }, t("edit.undo"))),
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
      this.circles.length > 0 && h("div", { class: "row" }, h("button", { type: "button", class: "button", "data-key": "measure-keep", onclick: () => this.keep() }, t("measure.keep")), this.kept && h("span", { role: "status" }, t("measure.kept"))),
    );
  }
}

function size({ millimetres, expandedMillimetres }) {
  if (millimetres === undefined) return "\u2013";
  const inch = settings.get("units") === "in";
  const [factor, digits, unit] = inch ? [25.4, 4, "in"] : [1, 3, "mm"];
  return `${(millimetres / factor).toFixed(digits)} \u00b1 ${(expandedMillimetres / factor).toFixed(digits)} ${unit}`;
}
