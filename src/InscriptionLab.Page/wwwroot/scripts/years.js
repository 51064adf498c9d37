// The years that words and parts tell of: in words, and as bars over one scale of years.

import { h } from "./dom.js";
import { t } from "./strings.js";

const STEP = 50;

/** Gives the part of a page; null where nothing tells of years. */
export function years(dating) {
  if (!dating) return null;
  const from = dating.first;
  const span = dating.last - from;
  const place = (year, open) => (100 * ((year ?? open) - from)) / span;
  const bar = (one, kind) => {
    const [a, b] = [place(one.from, dating.first), place(one.to, dating.last)];
    return h("span", { class: `years-bar ${kind} ${one.from === null ? "open-from" : ""} ${one.to === null ? "open-to" : ""}`, "aria-hidden": "true" }, h("span", { style: { left: `${a}%`, width: `${Math.max(1, b - a)}%` } }));
  };
  const marks = [];
  for (let year = Math.ceil(from / STEP) * STEP; year <= dating.last; year += STEP) marks.push(h("span", { style: { left: `${place(year)}%` } }, String(year)));
  return h(
    "section",
    { class: "years" },
    h("p", { class: "years-words" }, h("strong", { class: "number" }, dating.words), " ", h("span", { class: "soft" }, t("years.hold", { p: Math.round(100 * dating.coverage) }))),
    bar(dating, "all"),
    h("div", { class: "years-scale", "aria-hidden": "true" }, marks),
    h("ul", { class: "years-list" }, dating.statements.map((one) => h("li", {}, h("span", {}, one.what), h("span", { class: "number" }, one.words), bar(one, "one"), h("span", { class: "soft" }, t("years.rests", { source: one.source, p: Math.round(100 * one.coverage) }))))),
    dating.notes.map((text) => h("p", { class: "soft" }, text)),
  );
}
