// Photos looked at together: a lamp moved over the surface, its grooves, or the strip that photos of a turned tube were joined to.

import { pictures } from "./api.js";
import { h, replace } from "./dom.js";
import { lampsForm } from "./lamps.js";
import { Relight } from "./relight.js";
import { store } from "./store.js";
import { t } from "./strings.js";
import { Viewer } from "./viewer.js";

export class Joint {
  /** @param steps gives the controls that lead to the other photos */
  constructor(steps) {
    this.steps = steps;
    this.bar = h("div", { class: "bar" });
    this.viewer = new Viewer(t("set.label"));
    this.place = h("div", { class: "joint-place" });
    this.element = h("section", { class: "picture joint", "aria-label": t("set.title") }, this.bar, this.place);
  }

  show(set) {
    // Where no picture could be made, what the program lacks for one comes first.
    const names = [...set.pictures.map((picture) => picture.name), ...(set.lamps.length > 0 ? ["lamps"] : [])];
    this.name = names.includes(this.chosen) ? this.chosen : names[0];
    const button = (key, label, onclick, more = {}) => h("button", { type: "button", class: "tool", "data-key": key, onclick, ...more }, label);
    const choose = (name) => {
      this.chosen = name;
      this.show(set);
    };
    replace(
      this.bar,
      h("h2", {}, set.title),
      this.steps(set, button),
      h("span", { class: "space" }),
      names.length > 1 && names.map((name) => button(`joint-${name}`, t(`set.${name}`), () => choose(name), { "aria-pressed": String(name === this.name) })),
      this.name !== "relight" && this.name !== "lamps" && this.name && [
        button("joint-out", "\u2212", () => this.viewer.zoom(1 / 1.5), { "aria-label": t("view.out"), title: t("view.out") }),
        button("joint-in", "+", () => this.viewer.zoom(1.5), { "aria-label": t("view.in"), title: t("view.in") }),
        button("joint-fit", t("view.fit"), () => this.viewer.fit()),
      ],
    );
    const shown = `${set.id}/${this.name}`;
    if (this.shown === shown) return;
    this.shown = shown;
    const picture = set.pictures.find((one) => one.name === this.name);
    const address = picture && pictures.set(store.piece.id, set.id, picture.name);
    if (this.name === "lamps") replace(this.place, lampsForm(set, () => (this.chosen = null)));
    else if (!picture) replace(this.place, h("p", { class: "soft none" }, t("set.none")));
    else if (picture.name === "relight") replace(this.place, new Relight(address, picture.size).element);
    else {
      replace(this.place, this.viewer.element);
      this.viewer.show(shown, picture.size, 1, () => address);
    }
  }
}
