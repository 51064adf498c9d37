// What a person sees on the piece itself: the checklist of construction, and the years that follow at once.

import { api } from "./api.js";
import { whoCorrects } from "./dialog.js";
import { h, replace } from "./dom.js";
import { attempt, current, onChange, store, take } from "./store.js";
import { t, when } from "./strings.js";
import { years } from "./years.js";

export class Construction {
  constructor() {
    this.form = h("div", { class: "checklist" });
    this.side = h("aside", { class: "panel", "aria-label": t("years.title") });
    this.empty = h("div", { class: "empty" }, h("div", { class: "invitation" }, h("h1", {}, t("seen.empty")), h("p", {}, t("seen.empty.text")), h("p", {}, h("a", { href: "#bench" }, t("tab.bench")))));
    this.element = h("div", { class: "construction" }, this.empty, this.form, this.side);
    onChange((what) => what !== "problem" && what !== "letter" && this.element.isConnected && this.show());
    this.element.addEventListener("keydown", (event) => this.key(event));
  }

  async opened() {
    this.questions ??= await attempt(() => api.checklist());
    this.show();
  }

  show() {
    const { piece } = store;
    this.empty.hidden = Boolean(piece);
    this.form.hidden = this.side.hidden = !piece;
    if (!piece || !this.questions) return;
    const parts = Map.groupBy(this.questions, (question) => question.part);
    replace(
      this.form,
      h("h1", {}, t("seen.title", { name: piece.name })),
      h("p", { class: "lead" }, t("seen.lead")),
      [...parts].map(([part, questions]) => h("fieldset", {}, h("legend", {}, part), questions.map((question) => this.question(question)))),
    );
    this.showYears();
  }

  question(question) {
    const given = store.piece.seen.find((answer) => answer.feature === question.feature);
    const id = `seen-${question.feature}`;
    const chosen = question.choices.find((choice) => choice.observation === given?.observation);
    const control = question.choices.length > 0
      ? h("select", { id, "data-key": id, onchange: (event) => this.answer(question, event.target.value) }, h("option", { value: "" }, t("seen.open")), question.choices.map((choice) => h("option", { value: choice.observation, selected: choice === chosen }, choice.years ? `${choice.words} (${choice.years})` : choice.words)))
      : h("input", { id, "data-key": id, type: "text", maxlength: "80", autocomplete: "off", value: given?.observation ?? "", onchange: (event) => this.answer(question, event.target.value) });
    return h(
      "div",
      { class: given ? "question-row answered" : "question-row" },
      h("label", { for: id }, question.question),
      control,
      h("p", { class: "soft" }, [chosen?.source, given && t("hand.who", { person: given.person, when: when(given.at) })].filter(Boolean).join(" \u00b7 ")),
    );
  }

  async answer({ feature }, observation) {
    const person = await whoCorrects();
    const piece = person && (await attempt(() => api.seen(store.piece.id, { person, feature, observation })));
    if (piece) take(piece);
    else this.show();
  }

  showYears() {
    const shown = current();
    const { corrections, canRedo, id } = store.piece;
    const step = (name) => async () => {
      const piece = await attempt(() => api[name](id));
      if (piece) take(piece);
    };
    const remarks = shown?.finding?.evidence?.sentences ?? [];
    replace(
      this.side,
      h("div", { class: "row" }, h("h2", {}, t("years.title")), h("span", { class: "space" }), h("button", { type: "button", class: "tool", "data-key": "seen-undo", disabled: corrections.length === 0, onclick: step("undo") }, t("edit.undo")), h("button", { type: "button", class: "tool", "data-key": "seen-redo", disabled: !canRedo, onclick: step("redo") }, t("edit.redo"))),
      shown && h("p", { class: "soft" }, t("years.of", { name: shown.name })),
      shown?.working && h("p", { class: "soft", role: "status" }, t("pieces.working")),
      years(shown?.finding?.evidence?.years) ?? h("p", { class: "soft" }, t("years.none")),
      remarks.length > 0 && h("section", {}, h("h3", {}, t("evidence.title")), h("ul", {}, remarks.map((text) => h("li", {}, text)))),
    );
  }

  async key(event) {
    if (!store.piece || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z" || event.target.closest("input")) return;
    event.preventDefault();
    const piece = await attempt(() => (event.shiftKey ? api.redo(store.piece.id) : api.undo(store.piece.id)));
    if (piece) take(piece);
  }
}
