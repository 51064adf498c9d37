// The left side: what lies on the bench.

import { api, pictures } from "./api.js";
import { h, replace } from "./dom.js";
import { ask } from "./dialog.js";
import { chooser } from "./incoming.js";
import { SIGNS } from "./panel.js";
import { attempt, loadPieces, look, store } from "./store.js";
import { t } from "./strings.js";

export class Rail {
  constructor() {
    this.element = h("nav", { class: "rail", "aria-label": t("pieces.title") });
  }

  show() {
    replace(
      this.element,
      h("div", { class: "rail-new" }, chooser(t("pieces.new"), { className: "button wide" })),
      h(
        "ul",
        {},
        store.pieces.map((piece) => {
          const state = piece.working ? t("pieces.working") : piece.outcome ? t(`finding.short.${piece.outcome}`) : "";
          return h(
            "li",
            {},
            h(
              "a",
              { href: `#bench/${piece.id}`, class: "piece", "data-key": `piece-${piece.id}`, "aria-current": piece.id === store.piece?.id ? "true" : null },
              h("span", { class: "thumb" }, piece.photos[0] && this.thumb(piece)),
              h("span", { class: "piece-name" }, piece.name),
              h("span", { class: `soft outcome-small ${piece.outcome ?? ""}` }, piece.outcome && !piece.working && h("span", { class: "sign", "aria-hidden": "true" }, SIGNS[piece.outcome]), state),
            ),
            h("button", { type: "button", class: "tool close", "aria-label": t("pieces.close", { name: piece.name }), title: t("pieces.close", { name: piece.name }), onclick: () => this.close(piece) }, "\u00d7"),
          );
        }),
      ),
    );
  }

  /** The smallest tile is the whole photo. */
  thumb(piece) {
    const shown = store.piece?.id === piece.id ? store.piece.photos[0] : null;
    const level = shown?.levels ? shown.levels - 1 : piece.levels - 1;
    return level >= 0 && h("img", { src: pictures.tile(piece.photos[0], level, 0, 0), alt: "", loading: "lazy" });
  }

  async close(piece) {
    const sure = await ask({ text: t("pieces.close.sure", { name: piece.name }), choices: [{ value: "yes", label: t("pieces.close", { name: piece.name }), first: true }] });
    if (!sure) return;
    await attempt(() => api.closePiece(piece.id));
    if (store.piece?.id === piece.id) {
      location.hash = "#bench";
      await look(null);
    }
    await loadPieces();
  }
}
