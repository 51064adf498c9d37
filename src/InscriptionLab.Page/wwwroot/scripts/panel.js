// The right side: how far the work is, the finding with its reasons, what stays open, what persons corrected.

import { api, session } from "./api.js";
import { h, replace } from "./dom.js";
import { attempt, current, store, take, update } from "./store.js";
import { reports } from "./reports.js";
import { percent, t, when } from "./strings.js";
import { years } from "./years.js";

export const SIGNS = { agrees: "=", differs: "\u2260", undecided: "?", "nothing-read": "\u2013" };

/** Forms shown at first. */
const FEW = 3;

const STAGE_SIGNS = { waiting: "\u00b7", running: "\u2026", done: "\u2713", declined: "?", "by-hand": "\u270e", failed: "!" };

export class Panel {
  constructor() {
    this.element = h("aside", { class: "panel", "aria-label": t("finding.title") });
  }

  show() {
    const photo = current();
    if (!photo) {
      replace(this.element);
      return;
    }
    replace(this.element, !photo.set && this.stages(photo), this.together(photo), photo.problem ? this.problem(photo) : this.finding(photo), this.nearest(photo), this.evidence(photo), this.years(photo), this.sizes(photo), this.advice(photo), this.sentences(photo), this.hand(), reports(store.piece));
  }

  stages(photo) {
    return h(
      "ol",
      { class: "stages", "aria-label": t("stages.title") },
      photo.stages.map((stage) =>
        h(
          "li",
          { class: stage.status },
          h("span", { class: "sign", "aria-hidden": "true" }, STAGE_SIGNS[stage.status]),
          h("span", { class: "stage-name" }, t(`stage.${stage.name}`)),
          h("span", { class: "soft" }, stage.status === "done" && stage.seconds !== null ? t("seconds", { n: stage.seconds.toFixed(stage.seconds < 10 ? 1 : 0) }) : t(`stage.${stage.status}`)),
        ),
      ),
    );
  }

  /** What the photos of the piece gave together, and the way there. */
  together(photo) {
    const { working, sets, sentences } = store.piece.together;
    if (!working && sets.length === 0 && sentences.length === 0) return null;
    return h(
      "section",
      { class: "together" },
      h("h3", {}, t("set.title")),
      working && h("p", { class: "soft", role: "status" }, t("set.working")),
      sets.map((set) =>
        h(
          "button",
          { type: "button", class: "form", "data-key": `set-${set.id}`, "aria-pressed": String(set.id === photo.id), onclick: () => update({ photo: set.id === photo.id ? store.piece.photos[0].id : set.id, letter: null, form: 0 }, "piece") },
          h("span", {}, set.title),
          h("span", { class: "form-text", lang: "" }, set.lines.map((line) => line.leiden).join(" / ")),
          h("span", { class: `soft outcome-small ${set.finding.outcome}` }, h("span", { class: "sign", "aria-hidden": "true" }, SIGNS[set.finding.outcome]), t(`finding.short.${set.finding.outcome}`)),
        ),
      ),
      sentences.map((text) => h("p", {}, text)),
    );
  }

  years(photo) {
    const shown = years(photo.finding?.evidence?.years);
    return h("section", {}, h("h3", {}, t("years.title")), shown ?? (photo.finding && h("p", { class: "soft" }, t("years.none"))), h("p", {}, h("a", { href: "#construction" }, t("years.more"))));
  }

  sizes(photo) {
    return photo.sizes.length > 0 && h("section", {}, h("h3", {}, t("sizes.title")), h("ul", {}, photo.sizes.map((text) => h("li", {}, text))));
  }

  problem(photo) {
    return h("section", { class: "finding undecided" }, h("h2", {}, t("problem.title")), h("p", {}, photo.problem));
  }

  finding(photo) {
    const finding = photo.finding;
    if (!finding) return h("section", { class: "finding" }, h("h2", {}, t("finding.title")), h("p", { class: "soft" }, t("finding.wait")));
    return h(
      "section",
      { class: `finding ${finding.outcome}` },
      h("h2", { class: "outcome" }, h("span", { class: "sign", "aria-hidden": "true" }, SIGNS[finding.outcome]), h("span", {}, t(`finding.${finding.outcome}`))),
      h("ul", {}, finding.reasons.map((reason) => h("li", {}, reason))),
      h("p", { class: "soft" }, t("finding.evidence"), " ", session.references.demonstration ? t("finding.list.demo") : t("finding.list", { name: session.references.name, count: session.references.forms })),
    );
  }

  nearest(photo) {
    const forms = photo.finding?.nearest ?? [];
    if (!photo.finding || photo.finding.outcome === "nothing-read") return null;
    return h(
      "section",
      {},
      h("h3", {}, t("finding.nearest")),
      forms.length === 0 && h("p", { class: "soft" }, t("finding.nearest.none")),
      h(
        "div",
        { class: "forms", role: "radiogroup", "aria-label": t("form.beside") },
        forms.slice(0, this.all ? forms.length : FEW).map((form, i) =>
          h(
            "div",
            {},
            h(
              "button",
              { type: "button", role: "radio", class: "form", "data-key": `form-${i}`, "aria-checked": String(i === store.form), onclick: () => update({ form: i }, "form") },
              h("span", { class: "form-text", lang: "" }, this.spelt(form)),
              h("span", { class: "soft" }, [form.maker, t(`status.${form.status}`), form.from && t("form.years", { from: form.from, to: form.to ?? "" })].filter(Boolean).join(" · ")),
              h("span", { class: "soft" }, t("form.agreement", { p: percent(form.agreement) })),
            ),
            i === store.form && h("div", { class: "form-more" }, form.log10Ratio !== null && h("p", {}, t("form.ratio", { times: times(form.log10Ratio) })), form.differences.length > 0 && h("ul", {}, form.differences.map((text) => h("li", {}, text))), [form.address, form.source, form.note].filter(Boolean).map((text) => h("p", { class: "soft" }, text))),
          ),
        ),
      ),
      forms.length > FEW && h("button", { type: "button", class: "tool", "data-key": "all-forms", "aria-expanded": String(Boolean(this.all)), onclick: () => this.toggleAll() }, t(this.all ? "finding.nearest.few" : "finding.nearest.all", { count: forms.length })),
    );
  }

  toggleAll() {
    this.all = !this.all;
    this.show();
  }

  /** The form with the letters marked in which the reading differs. */
  spelt(form) {
    if (form.places.length === 0) return form.form;
    return form.places.map((place) => (place.differs && place.attested.trim() ? h("mark", {}, place.attested) : place.attested));
  }

  /** What was seen under three explanations: ratios first, reasons behind a fold, the words for ratios with them. */
  evidence(photo) {
    const evidence = photo.finding?.evidence;
    if (!evidence) return null;
    const list = (items) => h("ul", {}, items.map((text) => h("li", {}, text)));
    return h(
      "section",
      { class: "evidence" },
      h("h3", {}, t("evidence.title")),
      evidence.items.length > 0 && list(evidence.propositions),
      evidence.items.length > 0 &&
        h(
          "ul",
          {},
          evidence.items.map((item) => h("li", {}, h("span", {}, item.statement), h("span", { class: "ratios" }, item.ratios), h("span", { class: "soft" }, item.basis), h("span", { class: "soft" }, t("evidence.change", { what: item.wouldChange })))),
        ),
      list(evidence.sentences),
      h("details", { "data-key": "scale" }, h("summary", {}, t("evidence.scale")), list(evidence.scale)),
    );
  }

  /** What limits the photo, with its figures, and the steps to a better one; what to ask a seller for. */
  advice(photo) {
    const advice = photo.advice;
    const asks = store.piece.askFor ?? [];
    return [
      advice &&
        h(
          "section",
          { class: "advice" },
          h("h3", {}, t("advice.title")),
          !advice.limited && h("p", {}, t("advice.none")),
          advice.limits.map((limit) => h("div", { class: "limit" }, h("p", {}, h("strong", {}, limit.sentence), limit.figures && h("span", { class: "soft", title: limit.source }, ` ${limit.figures}`)), h("ol", {}, limit.steps.map((step) => h("li", {}, step))))),
          advice.limits.length > 0 && h("p", { class: "soft" }, advice.cautions.join(" ")),
        ),
      asks.length > 0 && h("section", {}, h("h3", {}, t("advice.ask")), h("ol", {}, asks.map((text) => h("li", {}, text)))),
    ];
  }

  sentences(photo) {
    const block = (title, list) => list?.length > 0 && h("section", {}, h("h3", {}, t(title)), h("ul", {}, list.map((text) => h("li", {}, text))));
    return [block("finding.cannot", photo.finding?.cannotDecide), block("finding.retake", photo.finding?.retake), block(photo.set ? "set.why" : "finding.warnings", photo.warnings), photo.finding && h("section", { class: "cautions" }, session.cautions.map((text) => h("p", { class: "soft" }, text)))];
  }

  hand() {
    const { corrections, canRedo, id } = store.piece;
    const step = (name) => async () => {
      const piece = await attempt(() => api[name](id));
      if (piece) take(piece);
    };
    return h(
      "section",
      {},
      h("div", { class: "row" }, h("h3", {}, t("hand.title")), h("span", { class: "space" }), h("button", { type: "button", class: "tool", "data-key": "undo", disabled: corrections.length === 0, onclick: step("undo") }, t("edit.undo")), h("button", { type: "button", class: "tool", "data-key": "redo", disabled: !canRedo, onclick: step("redo") }, t("edit.redo"))),
      corrections.length === 0
        ? h("p", { class: "soft" }, t("hand.none"))
        : h(
            "ol",
            { class: "hand" },
            corrections.toReversed().map((one) => h("li", { class: one.setAside ? "aside" : "" }, h("span", {}, t(`hand.${one.kind}`, { was: one.kind === "seen" ? one.was.replaceAll("_", " ") : one.was === "" ? "\u2205" : one.was, becomes: one.becomes === "" ? "\u2205" : one.becomes })), one.setAside && h("em", {}, t("hand.aside")), h("span", { class: "soft" }, t("hand.who", { person: one.person, when: when(one.at) })))),
          ),
    );
  }
}

/** A ratio in words of numbers; beyond one in ten thousand the number itself says nothing more. */
function times(log10) {
  if (log10 > -0.3) return t("times.same");
  if (log10 < -4) return t("times.less", { n: (10000).toLocaleString("en") });
  return t("times.part", { n: Number((10 ** -log10).toPrecision(2)).toLocaleString("en") });
}
