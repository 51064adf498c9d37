// How to photograph a tube and a cell, with drawings.

import { drawing } from "./drawings.js";
import { h } from "./dom.js";
import { t } from "./strings.js";

const STEPS = [
  ["lay", "edges", "near", "rake"],
  ["four", "turn"],
  ["scale", "level"],
];

export class Help {
  constructor() {
    this.element = h(
      "article",
      { class: "page help" },
      h("h1", {}, t("help.title")),
      h("p", { class: "lead" }, t("help.lead")),
      STEPS.map((steps, i) => h("section", {}, h("h2", {}, t(`help.part${i + 1}`)), h("p", {}, t(`help.part${i + 1}.text`)), h("ol", { class: "steps" }, steps.map((step) => h("li", {}, drawing(step), h("div", {}, h("h3", {}, t(`help.${step}`)), h("p", {}, t(`help.${step}.text`)))))))),
      h("section", { class: "never" }, h("h2", {}, t("help.never")), h("div", { class: "steps" }, drawing("never"), h("ul", {}, ["sun", "polish", "force", "flash"].map((one) => h("li", {}, t(`help.never.${one}`)))))),
      h("section", {}, h("h2", {}, t("help.keys")), h("dl", { class: "keys" }, ["walk", "correct", "open", "move", "zoom", "undo"].map((key) => [h("dt", {}, t(`help.key.${key}`)), h("dd", {}, t(`help.key.${key}.text`))]))),
    );
  }
}
