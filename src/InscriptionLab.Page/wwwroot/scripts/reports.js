// Reports of a piece, as files to keep, to print or to send.

import { api, session } from "./api.js";
import { whoCorrects } from "./dialog.js";
import { announce, h } from "./dom.js";
import { attempt, store } from "./store.js";
import { t } from "./strings.js";

async function keep(piece) {
  const person = await whoCorrects();
  if (!person) return;
  const kept = await attempt(() => api.post(`/api/catalogue/keep/${encodeURIComponent(piece.id)}`, { person, text: "", line: 0 }));
  const button = document.querySelector("[data-key='keep']");
  if (!kept || !button) return;
  button.textContent = t(kept.added ? "keep.done" : "keep.known");
  announce(button.textContent);
}

export function reports(piece) {
  const working = piece.together.working || piece.photos.some((photo) => photo.working);
  const link = (file, words) => h("a", { class: "button", "data-key": `report-${file}`, href: `/api/pieces/${encodeURIComponent(piece.id)}/${file}`, download: "" }, t(words));
  return h(
    "section",
    {},
    h("h3", {}, t("report.title")),
    working ? h("p", { class: "soft" }, t("report.wait")) : h("div", { class: "row" }, link("report.pdf", "report.pdf"), link("report.html", "report.html"), link("short.pdf", "report.short"), store.pieces.length > 1 && h("a", { class: "button", "data-key": "report-all", href: "/api/report.pdf", download: "" }, t("report.all", { count: store.pieces.length })), session.catalogue && h("button", { type: "button", class: "button strong", "data-key": "keep", onclick: () => keep(piece) }, t("keep"))),
  );
}
