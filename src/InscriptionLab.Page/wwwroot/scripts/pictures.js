// The photo above and the surface laid flat below, looking at the same place; marks on both, and what can be dragged.

import { api, pictures } from "./api.js";
import { whoCorrects } from "./dialog.js";
import { h, replace } from "./dom.js";
import { ellipsePoints, StripWay } from "./geometry.js";
import { Joint } from "./joint.js";
import { cross, handle, inside, nudged, shape } from "./marks.js";
import { RingEdit } from "./ring.js";
import { attempt, current, store, take, update } from "./store.js";
import { t } from "./strings.js";
import { Viewer } from "./viewer.js";

export class Pictures {
  constructor() {
    this.linked = true;
    this.marked = true;
    this.edit = null;
    this.photo = new Viewer(t("photo.title"), {
      onView: () => this.follow(this.photo, this.strip),
      onPaint: () => this.markPhoto(),
      onHover: (p) => this.hover("photo", p),
      onPick: (p) => this.pick(p, "inPhoto"),
      onDrag: (name, p) => (this.edit?.kind === "ring" ? this.dragRing(name, p) : this.dragTube(name, p)),
    });
    this.strip = new Viewer(t("strip.label"), {
      onView: () => this.follow(this.strip, this.photo),
      onPaint: () => this.markStrip(),
      onHover: (p) => this.hover("strip", p),
      onPick: (p) => this.pick(p, "inStrip"),
      onPress: (p) => this.startBox(p),
      onDrag: (name, p, end) => this.dragBox(name, p, end),
      onResize: () => this.follow(this.photo, this.strip),
    });
    this.photoBar = h("div", { class: "bar" });
    this.stripBar = h("div", { class: "bar" });
    this.joint = new Joint((set, button) => this.photoSteps(set, button));
    this.sections = [
      h("section", { class: "picture photo", "aria-label": t("photo.title") }, this.photoBar, this.photo.element),
      h("section", { class: "picture strip", "aria-label": t("strip.title") }, this.stripBar, this.strip.element),
    ];
    this.element = h("div", { class: "pictures" }, this.sections, this.joint.element);
  }

  /** Shows what is known of the photo looked at. */
  show() {
    const photo = current();
    if (photo?.id !== this.shownPhoto) {
      this.edit = null;
      this.framed = null;
      this.shownPhoto = photo?.id;
    }
    const together = Boolean(photo?.set);
    this.sections.forEach((section) => (section.hidden = together));
    this.joint.element.hidden = !together;
    if (together) {
      replace(this.photoBar);
      replace(this.stripBar);
      this.joint.show(photo);
      return;
    }
    if (!photo?.size) {
      this.photo.clear();
      this.strip.clear();
    } else {
      this.photo.element.setAttribute("aria-label", t("photo.label", { name: photo.name }));
      this.photo.show(photo.id, photo.size, photo.levels, (level, column, row) => pictures.tile(photo.id, level, column, row));
      if (photo.strip) this.showStrip(photo);
      else this.strip.clear();
    }
    this.bars(photo);
    this.photo.draw();
    this.strip.draw();
  }

  showStrip(photo) {
    const name = `${photo.id}/${photo.strip.key}`;
    if (this.strip.show(name, photo.strip.size, 1, () => pictures.strip(photo.id, photo.strip.key))) this.way = new StripWay(photo.strip);
    const frame = `${name}/${photo.lines.map((line) => `${line.id}${line.cropKey}`).join()}`;
    if (this.framed !== frame && !this.edit) {
      this.framed = frame;
      this.frame(photo);
    }
  }

  /** Turns both pictures so that the lettering reads, and brings it into view. */
  frame(photo) {
    const laid = photo.lines.filter((one) => one.inStrip);
    const line = laid[0];
    const quarter = Math.PI / 2;
    this.strip.view.turn = line ? -Math.round(angle(line) / quarter) * quarter : 0;
    this.strip.view.flip = line?.mirrored ? -1 : 1;
    if (line?.mirrored) this.strip.view.turn += Math.abs(Math.cos(this.strip.view.turn)) > 0.5 ? Math.PI : 0;
    if (!line) {
      this.strip.fit();
      return;
    }
    const all = laid.flatMap((known) => known.inStrip);
    const [xs, ys] = [all.map((p) => p[0]), all.map((p) => p[1])];
    const [w, t2] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
    const upright = Math.abs(Math.cos(this.strip.view.turn)) > 0.5;
    const [across, down] = upright ? [w, t2] : [t2, w];
    const scale = Math.min(this.strip.width / (across * 1.25), this.strip.height / (down * 1.5));
    this.strip.set({ x: (Math.max(...xs) + Math.min(...xs)) / 2, y: (Math.max(...ys) + Math.min(...ys)) / 2, scale: Math.max(scale, this.strip.fitScale()) });
  }

  /** Brings the other picture to the same place, size and turn. */
  follow(from, to) {
    if (!this.linked || !this.way || !from.levels || !to.levels || this.edit) return;
    const { x, y, scale, turn, flip } = from.view;
    if (from === this.strip) {
      const at = [Math.min(Math.max(x, 0), this.way.width), Math.min(Math.max(y, 0), this.way.height)];
      const [px, py] = this.way.toPhoto(at);
      const [sx, sy, lx, ly] = this.way.slope(at);
      const flat = sx * ly - sy * lx < 0 ? -1 : 1;
      this.photo.set({ x: px, y: py, scale: scale / Math.hypot(sx, sy), turn: turn - Math.atan2(sy, sx), flip: flip * flat }, true);
    } else {
      const at = this.way.toStrip([x, y]);
      const [sx, sy] = this.way.slope(at);
      this.strip.set({ x: at[0], y: at[1], scale: scale * Math.hypot(sx, sy), turn: turn + Math.atan2(sy, sx), flip }, true);
    }
  }

  hover(where, point) {
    this.pointer = point && this.way ? (where === "strip" ? { strip: point, photo: this.way.toPhoto(point) } : { photo: point, strip: this.way.toStrip(point) }) : null;
    this.photo.draw();
    this.strip.draw();
  }

  pick(point, where) {
    for (const [l, line] of (current()?.lines ?? []).entries()) {
      const i = line.letters.findIndex((letter) => letter[where] && inside(point, letter[where]));
      if (i >= 0) {
        update({ letter: { line: l, index: i } }, "letter");
        return;
      }
    }
  }

  markPhoto() {
    const photo = current();
    const marks = [];
    if (photo?.size && this.marked) {
      const edges = this.edit?.kind === "tube" ? this.edit.edges : this.edit?.kind === "ring" ? [] : (photo.tube?.silhouettes ?? []);
      for (const edge of edges) marks.push(shape(this.photo, edge, "edge", false));
      if (photo.tube && !this.edit) marks.push(shape(this.photo, photo.tube.axis, "axis", false));
      const ring = this.edit?.kind === "ring" ? this.edit : !this.edit && photo.ring;
      if (ring) marks.push(shape(this.photo, ellipsePoints(ring.rim), "edge"), shape(this.photo, ellipsePoints(ring.opening), "edge"));
      marks.push(...this.letters(photo, this.photo, "inPhoto"));
      if (this.edit?.kind === "tube") marks.push(...this.tubeHandles());
      if (this.edit?.kind === "ring") marks.push(...this.edit.handles(this.photo));
      if (this.pointer) marks.push(cross(this.photo, this.pointer.photo));
    }
    replace(this.photo.layer, marks);
  }

  markStrip() {
    const photo = current();
    const marks = [];
    if (photo?.strip && this.marked) {
      marks.push(...this.letters(photo, this.strip, "inStrip"));
      if (this.edit?.kind === "line" && this.edit.box) {
        marks.push(shape(this.strip, this.edit.box, "line drawn"));
        marks.push(...this.boxHandles());
      }
      if (this.pointer) marks.push(cross(this.strip, this.pointer.strip));
    }
    replace(this.strip.layer, marks);
  }

  letters(photo, viewer, where) {
    const marks = [];
    photo.lines.forEach((line, l) => {
      if (line[where]) marks.push(shape(viewer, line[where], "line"));
      line.letters.forEach((letter, i) => {
        const looked = store.letter?.line === l && store.letter.index === i;
        if (letter[where] && letter.text !== " ") marks.push(shape(viewer, letter[where], looked ? "letter looked" : letter.by ? "letter by-hand" : "letter"));
      });
    });
    return marks.sort((a, b) => a.classList.contains("looked") - b.classList.contains("looked"));
  }

  tubeHandles() {
    return this.edit.edges.flatMap((edge, e) =>
      edge.map((end, i) =>
        handle(this.photo, end, `${e}${i}`, t("edit.tube.end", { edge: e + 1, end: i + 1 }), (event) => {
          const to = nudged(event, end, this.photo.view.scale);
          if (to) this.dragTube(`${e}${i}`, to, true);
        }),
      ),
    );
  }

  dragTube(name, point) {
    if (this.edit?.kind !== "tube") return;
    this.edit.edges[name[0]][name[1]] = point;
    this.photo.draw();
  }

  startRing() {
    const photo = current();
    this.edit = new RingEdit(photo);
    this.photo.fit();
    this.bars(photo);
  }

  dragRing(name, point) {
    this.edit.drag(name, point);
    this.photo.draw();
  }

  startTube() {
    const photo = current();
    const [w, t2] = photo.size;
    const edges = photo.tube?.silhouettes ?? [[[w * 0.1, t2 * 0.25], [w * 0.9, t2 * 0.25]], [[w * 0.1, t2 * 0.75], [w * 0.9, t2 * 0.75]]];
    this.edit = { kind: "tube", edges: edges.map((edge) => this.cut(edge, photo.size)) };
    this.photo.fit();
    this.bars(photo);
  }

  /** The part of an edge that lies in the photo, so that its ends can be taken hold of; the line stays the same. */
  cut([a, b], size) {
    let [from, to] = [0, 1];
    for (const k of [0, 1]) {
      const d = b[k] - a[k];
      if (Math.abs(d) < 1e-6) continue;
      const [u, v] = [(0 - a[k]) / d, (size[k] - 1 - a[k]) / d];
      from = Math.max(from, Math.min(u, v));
      to = Math.min(to, Math.max(u, v));
    }
    if (!(to > from)) return [a, b];
    const at = (f) => [a[0] + (b[0] - a[0]) * f, a[1] + (b[1] - a[1]) * f];
    return [at(from + 0.03 * (to - from)), at(to - 0.03 * (to - from))];
  }

  startLine(lineId = null, box = null) {
    this.edit = { kind: "line", lineId, box: box?.map((p) => [...p]) ?? null };
    this.bars(current());
    this.strip.draw();
    this.strip.element.focus();
  }

  startBox(point) {
    if (this.edit?.kind !== "line" || this.edit.box) return false;
    this.edit.from = this.strip.toScreen(point);
    return true;
  }

  dragBox(name, point, end) {
    if (this.edit?.kind !== "line") return;
    if (name === "press") {
      const [a, b] = [this.edit.from, this.strip.toScreen(point)];
      const [l, r, o, u] = [Math.min(a[0], b[0]), Math.max(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[1], b[1])];
      const far = r - l > 8 && u - o > 8;
      this.edit.box = far || !end ? [[l, o], [r, o], [r, u], [l, u]].map((p) => this.strip.toPicture(p)) : null;
    } else {
      this.edit.box[Number(name)] = point;
    }
    if (end) this.bars(current());
    this.strip.draw();
  }

  boxHandles() {
    return this.edit.box.map((corner, i) =>
      handle(this.strip, corner, String(i), t("edit.line.corner", { n: i + 1 }), (event) => {
        const to = nudged(event, corner, this.strip.view.scale);
        if (to) this.dragBox(String(i), to, true);
      }),
    );
  }

  async keep() {
    const person = await whoCorrects();
    if (!person) return;
    const photo = current();
    const { kind, edges, box, lineId, rim, share } = this.edit;
    const correction = kind === "tube" ? { kind, first: edges[0], second: edges[1] } : kind === "ring" ? { kind, rim, opening: share } : { kind, line: lineId, box, basis: photo.strip.key };
    const piece = await attempt(() => api.correct(store.piece.id, { photo: photo.id, person, ...correction }));
    if (piece) {
      this.leave();
      take(piece);
    }
  }

  leave() {
    this.edit = null;
    this.framed = null;
    this.show();
  }

  bars(photo) {
    const button = (key, label, onclick, more = {}) => h("button", { type: "button", class: "tool", "data-key": key, onclick, ...more }, label);
    const editing = (kind) => this.edit?.kind === kind;
    const keep = (ready) => [button("keep", t("edit.keep"), () => this.keep(), { class: "tool strong", disabled: !ready }), button("leave", t("edit.leave"), () => this.leave())];
    const zooms = (viewer, key) => [
      button(`${key}-out`, "\u2212", () => viewer.zoom(1 / 1.5), { "aria-label": t("view.out"), title: t("view.out") }),
      button(`${key}-in`, "+", () => viewer.zoom(1.5), { "aria-label": t("view.in"), title: t("view.in") }),
      button(`${key}-fit`, t("view.fit"), () => viewer.fit()),
    ];
    replace(
      this.photoBar,
      h("h2", {}, t("photo.title")),
      photo && h("span", { class: "file-name" }, photo.name),
      this.photoSteps(photo, button),
      h("span", { class: "space" }),
      editing("tube") || editing("ring") ? [h("span", { class: "hint" }, t(`edit.${this.edit.kind}.on`)), keep(true)] : photo?.size && [button("edit-tube", t("edit.tube"), () => this.startTube(), { title: t("edit.tube.title") }), button("edit-ring", t("edit.ring"), () => this.startRing(), { title: t("edit.ring.title") })],
      !this.edit && [
        button("marks", t("view.marks"), () => this.toggle("marked"), { "aria-pressed": String(this.marked) }),
        button("link", t("view.link"), () => this.toggle("linked"), { "aria-pressed": String(this.linked), title: t("view.link.title") }),
      ],
      zooms(this.photo, "photo"),
    );
    replace(
      this.stripBar,
      h("h2", {}, photo?.strip && !photo.strip.unrolled ? t("strip.flat") : t("strip.title")),
      h("span", { class: "space" }),
      editing("line")
        ? [h("span", { class: "hint" }, t("edit.line.on")), this.edit.box && button("turn-box", t("edit.turn"), () => this.turnBox()), keep(this.edit.box)]
        : photo?.strip && button("edit-line", t("edit.line"), () => this.startLine()),
      !this.edit && button("turn", t("view.turn"), () => this.turn()),
      zooms(this.strip, "strip"),
    );
  }

  photoSteps(photo, button) {
    const photos = store.piece?.photos ?? [];
    if (!photo || photos.length < 2) return null;
    const sets = store.piece.together.sets;
    const i = photos.findIndex((one) => one.id === photo.id);
    const go = (id) => update({ photo: id, letter: null, form: 0 }, "piece");
    const to = (n) => go(photos[(n + photos.length) % photos.length].id);
    return [
      button("photo-prev", "\u2039", () => to(i < 0 ? -1 : i - 1), { "aria-label": t("photo.prev"), title: t("photo.prev") }),
      h("span", { class: "count" }, i < 0 ? t("photo.count", { count: photos.length }) : t("photo.of", { n: i + 1, count: photos.length })),
      button("photo-next", "\u203a", () => to(i + 1), { "aria-label": t("photo.next"), title: t("photo.next") }),
      sets.map((set, n) => button(`together-${n}`, sets.length > 1 ? t("set.show.n", { n: n + 1 }) : t("set.show"), () => go(set.id === photo.id ? photos[0].id : set.id), { "aria-pressed": String(set.id === photo.id) })),
    ];
  }

  turnBox() {
    this.edit.box = [this.edit.box[2], this.edit.box[3], this.edit.box[0], this.edit.box[1]];
    this.strip.draw();
  }

  turn() {
    this.strip.set({ turn: this.strip.view.turn + Math.PI / 2 });
  }

  toggle(name) {
    this[name] = !this[name];
    this.bars(current());
    this.photo.draw();
    this.strip.draw();
    if (name === "linked") this.follow(this.strip, this.photo);
  }
}

/** The reading direction in the strip, from the line's own box. */
function angle(line) {
  const [a, b] = line.inStrip;
  return Math.atan2(b[1] - a[1], b[0] - a[0]);
}
