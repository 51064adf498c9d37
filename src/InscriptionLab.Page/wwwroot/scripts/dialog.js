// Small questions. The browser's own dialog keeps the focus inside and gives it back.

import { h } from "./dom.js";
import { settings } from "./settings.js";
import { t } from "./strings.js";

/** Asks one question with a few answers; null where the person leaves it. */
export function ask({ text, choices }) {
  return new Promise((done) => {
    const dialog = h(
      "dialog",
      { class: "question", "aria-label": text },
      h("p", {}, text),
      h(
        "div",
        { class: "row" },
        choices.map((choice) => h("button", { type: "button", class: choice.first ? "button strong" : "button", autofocus: choice.first, onclick: () => dialog.close(choice.value) }, choice.label)),
        h("button", { type: "button", class: "button plain", onclick: () => dialog.close("") }, t("app.cancel")),
      ),
    );
    open(dialog, () => done(dialog.returnValue || null));
  });
}

/** Gives the person's name, asking for it the first time. */
export function whoCorrects() {
  const known = settings.get("person");
  if (known) return Promise.resolve(known);
  return new Promise((done) => {
    const name = h("input", { id: "who", type: "text", maxlength: "60", autocomplete: "name", required: true });
    const form = h(
      "form",
      { method: "dialog" },
      h("label", { for: "who" }, t("hand.need")),
      name,
      h("div", { class: "row" }, h("button", { class: "button strong", value: "yes" }, t("hand.need.ok")), h("button", { type: "button", class: "button plain", onclick: () => dialog.close("") }, t("app.cancel"))),
    );
    const dialog = h("dialog", { class: "question" }, form);
    open(dialog, () => {
      const given = dialog.returnValue === "yes" ? name.value.trim() : "";
      if (given) settings.set("person", given);
      done(given || null);
    });
  });
}

/** Asks for a line of text; null where the person leaves it. */
export function askText(text, value) {
  return new Promise((done) => {
    const field = h("input", { id: "asked-text", type: "text", value, autofocus: true });
    const form = h("form", { method: "dialog" }, h("label", { for: "asked-text" }, text), field, h("div", { class: "row" }, h("button", { class: "button strong", value: "yes" }, t("ask.keep")), h("button", { type: "button", class: "button plain", onclick: () => dialog.close("") }, t("app.cancel"))));
    const dialog = h("dialog", { class: "question" }, form);
    open(dialog, () => done(dialog.returnValue === "yes" ? field.value : null));
  });
}

function open(dialog, closed) {
  document.body.append(dialog);
  dialog.addEventListener("close", () => {
    dialog.remove();
    closed();
  });
  dialog.showModal();
}
