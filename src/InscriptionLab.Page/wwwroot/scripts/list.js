// The reference list: read, changed, checked by the program's own reader, and then used. Its file is never written to.

import { api, session } from "./api.js";
import { announce, h, replace } from "./dom.js";
import { attempt } from "./store.js";
import { t } from "./strings.js";

const SHOWN = 200;
const STATUS = ["attested", "period-copy", "reproduction"];

export class ReferenceListView {
  constructor() {
    this.body = h("div", { class: "list-table", tabindex: "0", role: "group", "aria-label": t("tab.list") });
    this.said = h("div", { role: "status" });
    this.filter = h("input", { type: "search", "data-key": "list-filter", oninput: () => this.draw() });
    this.element = h(
      "div",
      { class: "list-view" },
      h(
        "div",
        { class: "bar" },
        h("h1", { class: "list-title" }, t("tab.list")),
        h("label", { class: "choice" }, h("span", {}, t("list.filter")), this.filter),
        h("button", { type: "button", class: "tool", onclick: () => this.add() }, t("list.add")),
        h("label", { class: "tool file" }, t("list.open"), h("input", { type: "file", class: "hidden-input", accept: ".csv,.json", onchange: (event) => this.read(event.target) })),
        h("span", { class: "space" }),
        h("button", { type: "button", class: "button", onclick: () => this.send("check") }, t("list.check")),
        h("button", { type: "button", class: "button strong", onclick: () => this.send("use") }, t("list.use")),
        h("button", { type: "button", class: "tool", onclick: () => this.save() }, t("list.save")),
      ),
      this.said,
      this.body,
    );
  }

  async opened() {
    if (this.rows) return;
    const list = await attempt(() => api.get("/api/list"));
    if (list) this.take(list);
  }

  take(list) {
    this.columns = list.columns;
    this.rows = list.rows;
    this.say(list.warnings, t("list.count", { n: list.rows.length, name: list.name }));
    this.draw();
  }

  say(warnings, text) {
    replace(this.said, h("p", { class: "list-said" }, text), warnings.length > 0 && h("ul", { class: "list-warnings" }, warnings.map((warning) => h("li", {}, warning))));
  }

  draw() {
    if (!this.rows) return;
    const wanted = this.filter.value.toLowerCase();
    const found = this.rows.map((row, i) => [row, i]).filter(([row]) => !wanted || row.some((cell) => cell.toLowerCase().includes(wanted)));
    const cell = (row, i, column, j) => {
      const set = (event) => (row[j] = event.target.value);
      const label = `${t(`list.${column}`)}, ${t("list.row", { n: i + 1 })}`;
      if (column === "status") return h("select", { "aria-label": label, "data-key": `cell-${i}-${j}`, onchange: set }, STATUS.map((one) => h("option", { value: one, selected: row[j] === one }, t(`status.${one}`))));
      return h("input", { type: "text", class: column === "form" ? "glyph" : "", "aria-label": label, "data-key": `cell-${i}-${j}`, value: row[j], oninput: set, inputmode: column === "from" || column === "to" ? "numeric" : null });
    };
    replace(
      this.body,
      h(
        "table",
        {},
        h("thead", {}, h("tr", {}, this.columns.map((column) => h("th", { scope: "col" }, t(`list.${column}`))), h("th", { scope: "col" }, h("span", { class: "unseen" }, t("list.remove"))))),
        h("tbody", {}, found.slice(0, SHOWN).map(([row, i]) => h("tr", {}, this.columns.map((column, j) => h("td", {}, cell(row, i, column, j))), h("td", {}, h("button", { type: "button", class: "tool", "aria-label": t("list.remove.row", { n: i + 1 }), onclick: () => (this.rows.splice(i, 1), this.draw()) }, "\u00d7"))))),
      ),
      found.length > SHOWN && h("p", { class: "soft" }, t("list.more", { n: found.length - SHOWN })),
    );
  }

  add() {
    this.filter.value = "";
    this.rows.unshift(this.columns.map((column) => (column === "status" ? STATUS[0] : "")));
    this.draw();
    this.body.querySelector("input")?.focus();
  }

  csv() {
    const quoted = (text) => (/[",\n\r]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
    return [this.columns, ...this.rows].map((row) => row.map(quoted).join(",")).join("\n") + "\n";
  }

  async send(what) {
    const list = await attempt(() => api.put(`/api/list/${what}`, this.csv(), "text/csv"));
    if (!list) return;
    if (what === "use") session.references = { name: list.name, forms: list.rows.length, demonstration: false };
    const text = t(what === "use" ? "list.used" : "list.sound", { n: list.rows.length });
    this.say(list.warnings, text);
    announce(text);
  }

  async read(input) {
    const file = input.files[0];
    if (!file) return;
    const list = await attempt(async () => api.put("/api/list/check", await file.arrayBuffer(), file.name.endsWith(".json") ? "application/json" : "text/csv"));
    if (list) this.take({ ...list, name: file.name });
    input.value = "";
  }

  save() {
    const link = h("a", { href: URL.createObjectURL(new Blob([this.csv()], { type: "text/csv" })), download: "attested-forms.csv" });
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  }
}
