// Reports of a piece, as files to keep, to print or to send.

import { h } from "./dom.js";
import { t } from "./strings.js";

export function reports(piece) {
  const working = piece.photos.some((photo) => photo.working);
  const link = (file, words) => h("a", { class: "button", "data-key": `report-${file}`, href: `/api/pieces/${encodeURIComponent(piece.id)}/${file}`, download: "" }, t(words));
  return h(
    "section",
    {},
    h("h3", {}, t("report.title")),
    working ? h("p", { class: "soft" }, t("report.wait")) : h("div", { class: "row" }, link("report.pdf", "report.pdf"), link("report.html", "report.html"), link("short.pdf", "report.short")),
  );
}
