// Where the lamp of each photo of one view stood, as a person states it: the form of the surface is worked out from it.

import { api } from "./api.js";
import { whoCorrects } from "./dialog.js";
import { h } from "./dom.js";
import { attempt, store, take } from "./store.js";
import { t } from "./strings.js";

const USUAL_HEIGHT = 20;
const SIDES = ["right", "lower-right", "below", "lower-left", "left", "upper-left", "above", "upper-right"];

/** The side in a word, for degrees clockwise from right. */
const word = (degrees) => (degrees === "" || !Number.isFinite(Number(degrees)) ? "" : t(`lamps.${SIDES[Math.round(Number(degrees) / 45) % SIDES.length]}`));

/**
 * One row a photo: the side in degrees with its word, and the height.
 * @param taken called when the lamps were taken
 */
export function lampsForm(set, taken) {
  const field = (name, i, value, limits, more) =>
    h("span", { class: "field" }, h("label", { for: `lamp-${name}-${i}` }, t(`lamps.${name}`)), h("input", { id: `lamp-${name}-${i}`, "data-key": `lamp-${name}-${i}`, type: "number", inputmode: "decimal", required: true, step: "any", value, ...limits, ...more }));
  const rows = set.photos.map((photo, i) => {
    const [side, height] = set.lamps[i] ?? ["", USUAL_HEIGHT];
    const said = h("output", { class: "soft", for: `lamp-side-${i}` }, word(side));
    return h("fieldset", {}, h("legend", { class: "file-name" }, photo), field("side", i, side, { min: "0", max: "360" }, { oninput: (event) => (said.textContent = word(event.target.value)) }), said, field("height", i, height, { min: "1", max: "89" }));
  });
  const form = h(
    "form",
    {
      class: "lamps",
      onsubmit: async (event) => {
        event.preventDefault();
        const number = (name, i) => form.querySelector(`#lamp-${name}-${i}`).valueAsNumber;
        const lamps = set.photos.map((_, i) => [number("side", i), number("height", i)]);
        const person = await whoCorrects();
        const piece = person && (await attempt(() => api.correct(store.piece.id, { photo: set.place, kind: "lamps", person, lamps })));
        if (!piece) return;
        taken();
        take(piece);
      },
    },
    h("h3", {}, t("set.lamps")),
    set.pictures.length === 0 && h("p", {}, t("set.none")),
    h("p", {}, t("lamps.text")),
    rows,
    h("p", {}, h("button", { class: "button strong", "data-key": "lamps-take" }, t("lamps.take"))),
  );
  return form;
}
