// The bench: one piece at a time, its photo, its surface laid flat, its letters, its finding.

import { api } from "./api.js";
import { h, replace } from "./dom.js";
import { chooser } from "./incoming.js";
import { Panel } from "./panel.js";
import { Pictures } from "./pictures.js";
import { Rail } from "./rail.js";
import { attempt, loadPieces, onChange, store, take } from "./store.js";
import { t } from "./strings.js";
import { drawing } from "./drawings.js";
import { Tape } from "./tape.js";

export class Bench {
  constructor() {
    this.rail = new Rail();
    this.pictures = new Pictures();
    this.tape = new Tape(this.pictures);
    this.panel = new Panel();
    this.empty = h("div", { class: "empty" });
    this.work = h("div", { class: "work", "data-add-to": "" }, this.pictures.element, this.tape.element);
    this.element = h("div", { class: "bench" }, this.rail.element, this.empty, this.work, this.panel.element);
    onChange((what) => this.show(what));
    this.element.addEventListener("keydown", (event) => this.key(event));
    this.show("all");
  }

  show(what) {
    if (what === "problem") return;
    const empty = !store.piece;
    this.empty.hidden = !empty;
    this.work.hidden = empty;
    this.panel.element.hidden = empty;
    if (what === "pieces" || what === "piece" || what === "all") this.rail.show();
    if (empty) {
      if (this.empty.childElementCount === 0) this.showEmpty();
      return;
    }
    if (what === "letter") {
      this.tape.show();
      this.pictures.photo.draw();
      this.pictures.strip.draw();
      return;
    }
    if (what !== "pieces") {
      this.pictures.show();
      this.tape.show();
      this.panel.show();
    }
  }

  showEmpty() {
    replace(
      this.empty,
      h(
        "div",
        { class: "invitation" },
        drawing("lay"),
        h("h1", {}, t("drop.title")),
        h("p", {}, t("drop.text")),
        h("div", { class: "row" }, chooser(t("drop.choose"), { className: "button strong" }), chooser(t("drop.camera"), { camera: true }), h("button", { type: "button", class: "button", "data-key": "demonstration", onclick: () => this.demonstrate() }, t("drop.demo"))),
        h("p", {}, h("a", { href: "#help" }, t("drop.how"))),
      ),
    );
  }

  async demonstrate() {
    const pieces = await attempt(() => api.demonstration());
    await loadPieces();
    if (pieces?.length) location.hash = `#bench/${pieces[0].id}`;
  }

  async key(event) {
    if (!store.piece || event.altKey || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z" || event.target.closest("input")) return;
    event.preventDefault();
    const piece = await attempt(() => (event.shiftKey ? api.redo(store.piece.id) : api.undo(store.piece.id)));
    if (piece) take(piece);
  }
}
