// The catalogue: search, table or wall of thumbnails, one examination, marks alike, overview.

import { api, session } from "./api.js";
import { bars } from "./bars.js";
import { Beside } from "./beside.js";
import { DatasetDialog } from "./dataset.js";
import { askText, whoCorrects } from "./dialog.js";
import { h, replace, announce } from "./dom.js";
import { Relight } from "./relight.js";
import { settings } from "./settings.js";
import { attempt, loadPieces } from "./store.js";
import { t, when } from "./strings.js";
import { SIGNS } from "./panel.js";
import { VirtualRows } from "./virtual.js";

const line = (number, index) => `/api/catalogue/${number}/lines/${index}`;
const OUTCOMES = ["agrees", "differs", "undecided", "nothing-read"];

export class Catalogue {
  constructor() {
    this.rows = [];
    this.dataset = new DatasetDialog();
    this.side = h("aside", { class: "panel", "aria-label": t("cat.one") });
    this.count = h("p", { class: "soft", role: "status" });
    this.list = new VirtualRows({ label: t("cat.rows"), render: (row, wall) => this.row(row, wall), chosen: (row) => this.look(row) });
    this.overview = h("div", { class: "overview", hidden: true, tabindex: "0" });
    this.form = this.search();
    this.element = h("div", { class: "catalogue" }, this.form, h("div", { class: "cat-body" }, h("div", { class: "cat-list" }, this.head(), this.list.element, this.overview), this.side));
  }

  opened() {
    if (!session.catalogue) {
      replace(this.element, h("div", { class: "page" }, h("h1", {}, t("tab.catalogue")), h("section", {}, h("p", { class: "lead" }, t("cat.none")), h("p", {}, h("code", {}, "./lab serve --catalogue pieces.db")), h("p", {}, t("cat.none.then")))));
      return;
    }
    this.questions();
    this.find(true);
  }

  search() {
    const field = (name, type = "text", more = {}) => h("label", { class: "choice" }, h("span", {}, t(`cat.${name}`)), h("input", { type, name, "data-key": `cat-${name}`, ...more }));
    const pick = (name, values) => h("label", { class: "choice" }, h("span", {}, t(`cat.${name}`)), h("select", { name }, values.map(([value, text]) => h("option", { value }, text))));
    const form = h(
      "form",
      { class: "cat-search", role: "search", onsubmit: (event) => (event.preventDefault(), this.find()), onchange: () => this.find() },
      pick("how", [["text", t("cat.how.text")], ["near", t("cat.how.near")], ["pattern", t("cat.how.pattern")]]),
      field("words", "search", { oninput: () => this.soon() }),
      field("maker"),
      pick("outcome", [["", t("cat.any")], ...OUTCOMES.map((one) => [one, t(`finding.${one}`)])]),
      field("from", "date"),
      field("before", "date"),
      pick("role", [["outer", t("role.outer")], ["clear", t("role.clear")], ["stop", t("role.stop")]]),
      field("least", "number", { step: "any", min: "0", class: "short" }),
      field("most", "number", { step: "any", min: "0", class: "short" }),
      h("button", { type: "submit", class: "button" }, t("cat.find")),
      h("button", { type: "reset", class: "tool", "data-key": "cat-clear", onclick: () => setTimeout(() => (this.answers(), this.find())) }, t("cat.clear")),
      this.seen(field),
    );
    return form;
  }

  /** Narrows by what was seen on the pieces themselves; the questions come from the checklist. */
  seen(field) {
    this.feature = h("select", { name: "seen", "data-key": "cat-seen", onchange: () => this.answers() }, h("option", { value: "" }, t("cat.any")));
    this.answer = h("select", { name: "answer", "data-key": "cat-answer", disabled: true }, h("option", { value: "" }, t("cat.any")));
    const choice = (name, select) => h("label", { class: "choice" }, h("span", {}, t(`cat.${name}`)), select);
    const year = (name) => field(name, "number", { step: "1", min: "1", max: "9999", class: "short" });
    return h("details", { class: "cat-seen", "data-key": "cat-more" }, h("summary", {}, t("cat.seen.more")), h("div", { class: "row" }, choice("seen", this.feature), choice("answer", this.answer), year("fromYear"), year("toYear"), h("span", { class: "soft" }, t("cat.years.hint"))));
  }

  async questions() {
    if (this.asked) return;
    this.asked = await attempt(() => api.checklist());
    const plain = (feature) => feature.replace(/_mm$/, ", mm").replaceAll("_", " ");
    this.feature.append(...(this.asked ?? []).filter((one) => one.part !== "odds").map((one) => h("option", { value: one.feature }, plain(one.feature))));
  }

  answers() {
    const choices = this.asked?.find((one) => one.feature === this.feature.value)?.choices ?? [];
    this.answer.disabled = choices.length === 0;
    this.answer.replaceChildren(h("option", { value: "" }, t("cat.any")), ...choices.map((one) => h("option", { value: one.observation }, one.words)));
  }

  head() {
    const as = (name) => h("button", { type: "button", class: "tool", "aria-pressed": String((settings.get("cat") ?? "table") === name), onclick: (event) => this.as(name, event.target) }, t(`cat.as.${name}`));
    return h("div", { class: "bar" }, this.count, h("span", { class: "space" }), as("table"), as("wall"), as("overview"), h("button", { type: "button", class: "tool", "data-key": "data-open", onclick: () => this.dataset.open(this.known ?? "", this.rows.length) }, t("data.open")), h("button", { type: "button", class: "tool", onclick: () => this.undo() }, t("edit.undo")));
  }

  as(name, button) {
    for (const other of button.parentElement.querySelectorAll("[aria-pressed]")) other.setAttribute("aria-pressed", String(other === button));
    this.overview.hidden = name !== "overview";
    this.list.element.hidden = name === "overview";
    if (name === "overview") this.chart();
    else this.list.as(name === "wall");
  }

  soon() {
    clearTimeout(this.later);
    this.later = setTimeout(() => this.find(), 250);
  }

  /** Searches; the same search is not done twice unless something changed. */
  async find(anew = false) {
    clearTimeout(this.later);
    const given = Object.fromEntries(new FormData(this.form));
    const factor = settings.get("units") === "in" ? 25.4 : 1;
    const asked = { maker: given.maker, outcome: given.outcome, from: given.from, before: given.before, seen: given.seen, answer: given.seen && given.answer, fromYear: given.fromYear, toYear: given.toYear };
    if (given.words) asked[given.how] = given.words;
    if (given.least || given.most) Object.assign(asked, { role: given.role, fromMm: given.least && given.least * factor, toMm: given.most && given.most * factor });
    const query = new URLSearchParams(Object.entries(asked).filter(([, value]) => value));
    if (!anew && this.known === query.toString()) return;
    this.known = query.toString();
    const turn = (this.turn = (this.turn ?? 0) + 1);
    const rows = await attempt(() => api.get(`/api/catalogue?${query}`));
    if (!rows || turn !== this.turn) return;
    this.rows = rows;
    this.count.textContent = rows.length === 0 ? t("cat.nothing") : t("cat.count", { n: rows.length.toLocaleString("en") });
    this.list.show(rows);
    if (!this.overview.hidden) this.chart();
    if (rows.length === 0 && query.size === 0) replace(this.side, h("section", {}, h("h2", {}, t("cat.empty")), h("p", {}, t("cat.empty.text")), h("p", {}, h("a", { href: "#bench" }, t("tab.bench")))));
  }

  row(row, wall) {
    // Where nothing was read there is no line to show.
    const picture = row.text ? h("img", { class: "cat-picture", src: line(row.number, 0), alt: "", loading: "lazy", decoding: "async", onerror: (event) => event.target.removeAttribute("src") }) : h("span", { class: "cat-picture" });
    const outcome = row.outcome && h("span", { class: `cat-outcome ${row.outcome}` }, h("span", { class: "sign", "aria-hidden": "true" }, SIGNS[row.outcome]), " ", t(`finding.short.${row.outcome}`));
    if (wall) return [picture, h("span", { class: "glyph cat-text" }, row.text || row.file), outcome];
    return [picture, h("span", { class: "glyph cat-text" }, row.text), outcome || h("span", {}), h("span", { class: "glyph" }, row.nearest), h("span", {}, row.maker), h("span", { class: "number soft" }, row.made.slice(0, 10)), h("span", { class: "soft" }, row.file)];
  }

  async look(row) {
    const turn = (this.looked = (this.looked ?? 0) + 1);
    const [record, kept] = (await attempt(() => Promise.all([api.get(`/api/catalogue/${row.number}`), api.get(`/api/catalogue/${row.number}/object`)]))) ?? [];
    if (!record || turn !== this.looked) return;
    const lines = record.lines ?? [];
    replace(
      this.side,
      h("section", {}, h("h2", { class: "glyph" }, row.text || row.file), row.outcome && h("p", {}, h("span", { class: "sign", "aria-hidden": "true" }, SIGNS[row.outcome]), " ", t(`finding.${row.outcome}`)), h("p", { class: "soft" }, `${row.file} \u00b7 ${when(row.made)}`)),
      this.pictures(row, kept.pictures),
      lines.map((one, i) =>
        h("section", {}, h("img", { class: "mark-picture", src: line(row.number, i), alt: t("cat.mark", { n: i + 1 }) }), h("p", { class: "glyph" }, one.text), h("div", { class: "row" }, h("button", { type: "button", class: "tool", onclick: () => this.alike(row, i) }, t("cat.alike")), h("button", { type: "button", class: "tool", onclick: () => this.correct(row, i, one.text) }, t("cat.correct")))),
      ),
      (record.circles ?? []).map((circle) => h("p", { class: "number" }, `${t(`role.${circle.role}`)}: ${length(circle.diameter_mm)} \u00b1 ${length(circle.expanded_uncertainty_mm)}`)),
      kept.seen.length > 0 && h("section", {}, h("h3", {}, t("cat.seen.title")), h("ul", { class: "cat-observed" }, kept.seen.map((one) => h("li", {}, h("span", {}, one.words), one.years && h("span", { class: "number" }, one.years), h("span", { class: "soft" }, [one.source, t("hand.who", { person: one.person, when: when(one.at) })].filter(Boolean).join(" \u00b7 ")))))),
      record.finding?.reasons && h("section", {}, h("h3", {}, t("cat.reasons")), h("ul", {}, record.finding.reasons.map((text) => h("li", {}, text)))),
      h("div", { class: "row" }, h("button", { type: "button", class: "button", onclick: () => this.layOut(row) }, t("cat.layout")), h("button", { type: "button", class: "tool", onclick: () => this.trash(row) }, t("cat.trash"))),
      (this.near = h("section", {})),
    );
  }

  /** The pictures of photos read together: the surface under a lamp that can be moved, its grooves, the joined strip. */
  pictures(row, list) {
    if (list.length === 0) return null;
    const address = (name) => `/api/catalogue/${row.number}/pictures/${name}`;
    const place = h("div", { class: "cat-joint" });
    const show = (picture) => replace(place, picture.name === "relight" ? new Relight(address(picture.name), picture.size).element : h("a", { href: address(picture.name), target: "_blank", rel: "noopener" }, h("img", { class: "mark-picture", src: address(picture.name), alt: t(`set.${picture.name}`), width: picture.size[0], height: picture.size[1] })));
    const choose = (picture, event) => {
      for (const other of event.target.parentElement.children) other.setAttribute("aria-pressed", String(other === event.target));
      show(picture);
    };
    show(list[0]);
    return h("section", {}, h("h3", {}, t("cat.pictures")), h("div", { class: "row" }, list.map((picture, i) => h("button", { type: "button", class: "tool", "data-key": `kept-${picture.name}`, "aria-pressed": String(i === 0), onclick: (event) => choose(picture, event) }, t(`set.${picture.name}`)))), place);
  }

  async alike(row, index) {
    const found = await attempt(() => api.get(`/api/catalogue/${row.number}/alike?line=${index}`));
    if (!found) return;
    const beside = new Beside({ src: line(row.number, index), text: row.text });
    replace(
      this.near,
      h("h3", {}, t("cat.alike.title")),
      h("p", { class: "soft" }, t("cat.alike.hint")),
      beside.element,
      h("ul", { class: "alike" }, found.map((one) => h("li", {}, h("button", { type: "button", class: "form", onclick: () => beside.show({ src: line(one.number, one.alike.line), text: one.text }) }, h("img", { src: line(one.number, one.alike.line), alt: "" }), h("span", { class: "glyph" }, one.text), h("span", { class: "soft number" }, t("cat.likeness", { n: one.alike.likeness.toFixed(2) })))))),
    );
    if (found.length === 0) replace(this.near, h("p", { class: "soft" }, t("cat.alike.none")));
    else beside.show({ src: line(found[0].number, found[0].alike.line), text: found[0].text });
    this.near.scrollIntoView({ block: "start" });
  }

  async correct(row, index, text) {
    const person = await whoCorrects();
    const becomes = person && (await askText(t("cat.correct.ask"), text));
    if (becomes && (await attempt(async () => (await api.post(`/api/catalogue/${row.number}/correct`, { person, text: becomes, line: index }), true)))) this.find(true);
  }

  async trash(row) {
    const person = await whoCorrects();
    if (person && (await attempt(async () => (await api.post("/api/catalogue/trash", { person, text: row.object, line: 0 }), true)))) {
      announce(t("cat.trashed"));
      replace(this.side, h("p", {}, t("cat.trashed")));
      this.find(true);
    }
  }

  async undo() {
    const answer = await attempt(() => api.post("/api/catalogue/undo"));
    if (answer) announce(answer.sentence || t("cat.undo.none"));
    this.find(true);
  }

  async layOut(row) {
    const piece = await attempt(() => api.post("/api/catalogue/lay-out", { person: "", text: row.object, line: 0 }));
    if (!piece) return;
    await loadPieces();
    location.hash = `#bench/${piece.id}`;
  }

  chart() {
    const count = (key) => [...this.rows.reduce((sums, row) => sums.set(key(row), (sums.get(key(row)) ?? 0) + 1), new Map())];
    const most = (pairs) => pairs.filter(([name]) => name).sort((a, b) => b[1] - a[1]).slice(0, 15);
    replace(
      this.overview,
      this.rows.length === 0 && h("p", {}, t("cat.nothing")),
      bars(t("cat.chart.outcome"), OUTCOMES.map((one) => [`${SIGNS[one]} ${t(`finding.short.${one}`)}`, this.rows.filter((row) => row.outcome === one).length]), this.rows.length),
      bars(t("cat.chart.maker"), most(count((row) => row.maker)), this.rows.length),
      bars(t("cat.chart.nearest"), most(count((row) => row.nearest)), this.rows.length),
      bars(t("cat.chart.month"), count((row) => row.made.slice(0, 7)).sort((a, b) => (a[0] < b[0] ? -1 : 1)).slice(-24), this.rows.length),
      h("p", { class: "soft" }, t("cat.chart.note")),
    );
  }
}

export function length(mm) {
  return settings.get("units") === "in" ? `${(mm / 25.4).toFixed(4)} in` : `${mm.toFixed(3)} mm`;
}
