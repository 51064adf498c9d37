// The reference list: read, changed, checked by the program's own reader, and then used. Its file is never written to.
// The table shows what tells rows apart; beside it stands the chosen row with all that is listed of it.

import { api, session } from "./api.js";
import { announce, h, replace } from "./dom.js";
import { attempt } from "./store.js";
import { t } from "./strings.js";

const SHOWN = 200;
const IN_TABLE = ["form", "maker", "status", "style", "years", "address"];
const PARTS = [
  ["form", "maker", "status", "certainty", "style"],
  ["from", "to", "address", "source", "note"],
  ["partners", "successor_of", "wording"],
  ["layout", "signature_position", "signature_direction", "letter_height_mm", "letter_spacing"],
];
const HALF = new Set(["status", "certainty", "from", "to", "letter_height_mm", "letter_spacing"]);
const NUMBERS = { from: "numeric", to: "numeric", letter_height_mm: "decimal", letter_spacing: "decimal" };

export class ReferenceListView {
  constructor() {
    this.body = h("div", { class: "list-table", tabindex: "0", role: "group", "aria-label": t("tab.list"), onkeydown: (event) => this.walk(event) });
    this.detail = h("section", { class: "list-row panel", "aria-label": t("list.detail") });
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
      h("div", { class: "list-body" }, this.body, this.detail),
    );
  }

  async opened() {
    if (this.rows) return;
    const list = await attempt(() => api.get("/api/list"));
    if (list) this.take(list);
  }

  take(list) {
    this.columns = list.columns;
    this.words = list.words;
    this.rows = list.rows;
    this.chosen = this.rows[0] ?? null;
    this.say(list.warnings, t("list.count", { n: list.rows.length, name: list.name }));
    this.draw();
    this.drawDetail();
  }

  say(warnings, text) {
    replace(this.said, h("p", { class: "list-said" }, text), warnings.length > 0 && h("ul", { class: "list-warnings" }, warnings.map((warning) => h("li", {}, warning))));
  }

  value = (row, column) => row[this.columns.indexOf(column)] ?? "";

  shown(row, column) {
    if (column === "years") return [this.value(row, "from"), this.value(row, "to")].some(Boolean) ? `${this.value(row, "from")}\u2013${this.value(row, "to")}` : "";
    return column === "status" ? t(`status.${this.value(row, column)}`) : this.value(row, column);
  }

  draw() {
    if (!this.rows) return;
    const wanted = this.filter.value.toLowerCase();
    const found = this.rows.map((row, i) => [row, i]).filter(([row]) => !wanted || row.some((cell) => cell.toLowerCase().includes(wanted)));
    replace(
      this.body,
      h(
        "table",
        {},
        h("thead", {}, h("tr", {}, IN_TABLE.map((column) => h("th", { scope: "col", class: `list-${column}` }, t(`list.${column}`))))),
        h("tbody", {}, found.slice(0, SHOWN).map(([row, i]) => this.line(row, i))),
      ),
      found.length > SHOWN && h("p", { class: "soft" }, t("list.more", { n: found.length - SHOWN })),
    );
  }

  line(row, i) {
    const words = (column) => this.shown(row, column);
    const choose = h("button", { type: "button", class: "list-choose glyph", "data-key": `row-${i}`, "aria-pressed": row === this.chosen ? "true" : "false" }, words("form") || t("list.new"));
    return h("tr", { class: row === this.chosen ? "chosen" : "", onclick: () => this.choose(row, i) }, h("th", { scope: "row", title: words("form") }, choose), IN_TABLE.slice(1).map((column) => h("td", { title: words(column) }, words(column))));
  }

  choose(row, i) {
    this.chosen = row;
    this.draw();
    this.drawDetail();
    this.body.querySelector(`[data-key="row-${i}"]`)?.focus({ preventScroll: true });
  }

  /** Arrow keys walk from row to row. */
  walk(event) {
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    const rows = [...this.body.querySelectorAll(".list-choose")];
    const next = rows[rows.indexOf(document.activeElement) + (step ?? 0)];
    if (!step || !rows.includes(document.activeElement) || !next) return;
    event.preventDefault();
    next.focus();
    next.click();
  }

  drawDetail() {
    const row = this.chosen;
    if (!row) return replace(this.detail, h("p", { class: "soft" }, t("list.none")));
    const n = this.rows.indexOf(row) + 1;
    replace(
      this.detail,
      h("h2", {}, t("list.row", { n })),
      PARTS.map((part) => h("div", { class: "list-fields" }, part.map((column) => this.field(row, column)))),
      h("button", { type: "button", class: "tool", onclick: () => this.remove() }, t("list.remove.row", { n })),
    );
  }

  field(row, column) {
    const j = this.columns.indexOf(column);
    const set = (event) => {
      row[j] = event.target.value;
      this.draw();
    };
    const words = this.words[column];
    const properties = { id: `list-field-${column}`, "data-key": `field-${column}` };
    return h(
      "div",
      { class: HALF.has(column) ? "half" : "" },
      h("label", { for: `list-field-${column}` }, t(`list.${column}`)),
      words
        ? h("select", { ...properties, onchange: set }, [...(column === "status" ? [] : [""]), ...words].map((one) => h("option", { value: one, selected: row[j] === one }, column === "status" ? t(`status.${one}`) : one || t("list.unknown"))))
        : h("input", { ...properties, type: "text", class: column === "form" ? "glyph" : "", value: row[j], inputmode: NUMBERS[column] ?? null, oninput: set }),
    );
  }

  add() {
    this.filter.value = "";
    this.chosen = this.columns.map((column) => (column === "status" ? this.words.status[0] : ""));
    this.rows.unshift(this.chosen);
    this.draw();
    this.body.scrollTop = 0;
    this.drawDetail();
    this.detail.querySelector("[data-key=field-form]")?.focus();
  }

  remove() {
    const at = this.rows.indexOf(this.chosen);
    this.rows.splice(at, 1);
    this.chosen = this.rows[Math.min(at, this.rows.length - 1)] ?? null;
    this.draw();
    this.drawDetail();
    (this.detail.querySelector("[data-key=field-form]") ?? this.filter).focus();
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
