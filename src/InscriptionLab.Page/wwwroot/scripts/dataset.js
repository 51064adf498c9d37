// A data set of what the search found: asked for, looked after, taken away. It is made by the program while the page goes on.

import { api } from "./api.js";
import { h, replace } from "./dom.js";
import { attempt } from "./store.js";
import { t } from "./strings.js";

const MEGABYTE = 1048576;
const LIKENESS = 0.945;

export class DatasetDialog {
  constructor() {
    this.state = { working: false, step: "", done: 0, total: 0, problem: null, result: null, bytes: 0 };
    this.given = { licence: "", seed: "1", threshold: String(LIKENESS) };
    addEventListener("lab-dataset", () => this.fetch());
  }

  /** @param query the search as an address @param count how many examinations it found */
  async open(query, count) {
    [this.query, this.count] = [query, count];
    this.foot = h("div", { class: "data-state" });
    this.form = this.fields();
    this.dialog = h("dialog", { class: "question data", "aria-labelledby": "data-title" }, h("div", { class: "row" }, h("h2", { id: "data-title" }, t("data.title")), h("span", { class: "space" }), h("button", { type: "button", class: "tool", "aria-label": t("app.close"), onclick: () => this.dialog.close() }, "\u00d7")), h("p", {}, t("data.lead")), this.form, this.foot);
    this.dialog.addEventListener("close", () => {
      this.dialog.remove();
      this.dialog = null;
    });
    document.body.append(this.dialog);
    this.dialog.showModal();
    await this.fetch();
  }

  fields() {
    const field = (name, more) => {
      const input = h("input", { id: `data-${name}`, "data-key": `data-${name}`, value: this.given[name], "aria-describedby": `data-${name}-hint`, autocomplete: "off", oninput: () => (this.given[name] = input.value), ...more });
      return h("div", { class: "field" }, h("label", { for: `data-${name}` }, t(`data.${name}`)), input, h("p", { class: "soft", id: `data-${name}-hint` }, t(`data.${name}.hint`)));
    };
    return h(
      "form",
      { onsubmit: (event) => (event.preventDefault(), this.make()) },
      h("p", { class: "soft" }, this.count > 0 ? t("data.takes", { n: this.count.toLocaleString("en") }) : t("data.none")),
      field("licence", { type: "text", maxlength: "200" }),
      h("div", { class: "pair-fields" }, field("seed", { type: "number", step: "1", min: "-2147483648", max: "2147483647", required: true }), field("threshold", { type: "number", step: "any", min: "0.5", max: "1", required: true })),
      (this.button = h("button", { class: "button strong", "data-key": "data-make", disabled: this.count === 0 }, t("data.make"))),
    );
  }

  async make() {
    this.refused = "";
    const asked = { licence: this.given.licence.trim(), seed: Number(this.given.seed), threshold: Number(this.given.threshold) };
    try {
      this.take(await api.post(`/api/dataset?${this.query}`, asked));
    } catch (problem) {
      this.refused = problem.message;
      this.show();
    }
  }

  async fetch() {
    if (this.fetching) return (this.again = true);
    this.fetching = true;
    do {
      this.again = false;
      const state = await attempt(() => api.get("/api/dataset"));
      if (state) this.take(state);
    } while (this.again);
    this.fetching = false;
    return true;
  }

  take(state) {
    this.state = state;
    if (this.dialog) this.show();
  }

  show() {
    const { working, step, done, total, problem, result } = this.state;
    this.button.disabled = working || this.count === 0;
    const said = this.refused || problem;
    replace(
      this.foot,
      working && [
        h("p", { role: "status" }, t(`data.step.${step}`)),
        h("progress", { "aria-label": t(`data.step.${step}`), max: total > 0 ? total : null, value: total > 0 ? done : null }),
        h("button", { type: "button", class: "button", "data-key": "data-stop", onclick: () => attempt(() => api.post("/api/dataset/stop")) }, t("data.stop")),
      ],
      !working && said && h("p", { role: "alert", class: "data-problem" }, said),
      !working && result && this.holds(result),
    );
  }

  holds(result) {
    const count = (name, value) => h("div", {}, h("dt", {}, t(`data.${name}`)), h("dd", { class: "number" }, value.toLocaleString("en")));
    return [
      h("h3", { role: "status" }, t("data.done")),
      h("dl", { class: "data-counts", "aria-label": t("data.holds") }, count("objects", result.objects), count("marks", result.marks), count("letters", result.letters), count("groups", result.groups), count("corrected", result.corrected)),
      h(
        "table",
        { class: "data-parts" },
        h("thead", {}, h("tr", {}, ["part", "objects", "marks"].map((name) => h("th", { scope: "col" }, t(`data.${name}`))))),
        h("tbody", {}, result.parts.map((part) => h("tr", {}, h("th", { scope: "row" }, t(`data.${part.name}`)), h("td", { class: "number" }, part.objects.toLocaleString("en")), h("td", { class: "number" }, part.marks.toLocaleString("en"))))),
      ),
      result.warnings.length > 0 && [h("h3", {}, t("data.warnings")), h("ul", {}, result.warnings.map((text) => h("li", {}, text)))],
      h("p", {}, h("a", { class: "button strong", "data-key": "data-take", href: "/api/dataset/lettering.zip", download: "" }, t("data.take", { n: Math.max(0.1, this.state.bytes / MEGABYTE).toFixed(1) }))),
    ];
  }
}
