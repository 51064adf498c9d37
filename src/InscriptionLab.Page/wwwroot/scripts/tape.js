// The lettering letter by letter: the cut itself, what is read, how surely, and the form beside it.

import { api, pictures } from "./api.js";
import { whoCorrects } from "./dialog.js";
import { h, replace } from "./dom.js";
import { attempt, current, store, take, update } from "./store.js";
import { letterName, percent, t, when } from "./strings.js";

const PICTURE_HEIGHT = 46;
const NARROWEST = 30;

const crops = new Map();

function crop(photo, line) {
  const address = line.address ?? pictures.line(photo.id, line.cropKey);
  if (!crops.has(address)) {
    const image = new Image();
    image.src = address;
    crops.set(address, image);
    if (crops.size > 200) crops.delete(crops.keys().next().value);
  }
  return crops.get(address);
}

/** Where to cut between letters, so that the pieces side by side make up the whole line. */
function cuts(line) {
  const boxes = line.letters.map((letter) => letter.inCrop);
  const edges = [];
  for (let i = 0; i < boxes.length; i++) {
    const before = boxes.slice(0, i).findLast((box) => box);
    const here = boxes[i] ?? boxes.slice(i).find((box) => box);
    edges.push(i === 0 ? Math.max(0, (here?.[0] ?? 0) - 6) : before && here ? (before[2] + Math.max(before[2], here[0])) / 2 : (edges[i - 1] ?? 0));
  }
  const last = boxes.findLast((box) => box);
  edges.push(Math.min(line.cropSize[0], (last?.[2] ?? line.cropSize[0]) + 6));
  return edges;
}

export function slice(photo, line, from, to, height) {
  const scale = height / line.cropSize[1];
  const width = Math.max(1, Math.round((to - from) * scale));
  const canvas = h("canvas", { class: "cut", "aria-hidden": "true", width: width * 2, height: height * 2, style: { width: `${width}px`, height: `${height}px` } });
  const image = crop(photo, line);
  const draw = () => canvas.getContext("2d").drawImage(image, from, 0, Math.max(1, to - from), line.cropSize[1], 0, 0, width * 2, height * 2);
  if (image.complete && image.naturalWidth) draw();
  else image.addEventListener("load", draw, { once: true });
  return canvas;
}

/** The letter that the program read where a person reads another one: "a" of "a (98 %)". */
function machine(letter) {
  const read = letter.by.was.replace(/ \([^()]*\)$/, "");
  return read.trim() === "" ? "\u2423" : read;
}

export class Tape {
  constructor(picturesPart) {
    this.pictures = picturesPart;
    this.body = h("div", { class: "tape-lines" });
    this.detail = h("div", { class: "letter-detail", hidden: true });
    this.element = h("section", { class: "tape", "aria-label": t("lines.title") }, this.body, this.detail);
    // A press gives the focus before it becomes a click: building the letters anew in between would lose the click.
    this.body.addEventListener("pointerdown", () => (this.pressed = true));
    this.body.addEventListener("keydown", (event) => {
      this.pressed = false;
      this.key(event);
    });
  }

  show() {
    const photo = current();
    const reading = photo?.stages.find((stage) => stage.name === "reading");
    if (!photo) replace(this.body);
    else if (photo.lines.length === 0) {
      const done = reading && !["waiting", "running"].includes(reading.status);
      replace(this.body, h("p", { class: "soft" }, photo.problem ?? (done ? `${t("lines.none")} ${t("lines.none.hint")}` : t("lines.wait"))));
    } else {
      replace(
        this.body,
        photo.lines.map((line, l) => this.line(photo, line, l)),
        h("p", { class: "soft keys" }, t("letter.help")),
      );
    }
    this.showDetail();
  }

  /** The places of the form that lies beside the letters, by line and letter. */
  form(photo) {
    const nearest = photo.finding?.nearest[store.form];
    const at = new Map();
    const missing = new Map();
    for (const place of nearest?.places ?? []) {
      const key = `${place.line}/${place.letter}`;
      if (place.read === "" && place.attested !== "") missing.set(key, (missing.get(key) ?? "") + place.attested);
      else at.set(key, place);
    }
    return { nearest, at, missing };
  }

  line(photo, line, l) {
    const edges = cuts(line);
    const form = this.form(photo);
    const touched = [...form.at.keys(), ...form.missing.keys()].some((key) => key.startsWith(`${l}/`));
    const facts = [
      t("line.sure", { p: percent(line.confidence) }),
      line.upsideDown && t("line.turned"),
      line.mirrored && t("line.mirrored"),
      Math.abs(Math.sin((line.angleDegrees * Math.PI) / 180)) > 0.7 && t("line.around"),
      t("line.ink", { px: Math.round(line.inkHeightPx) }),
      line.by && t("line.by", { person: line.by.person }),
      line.program !== null && t("line.program", { text: line.program }),
    ].filter(Boolean);
    return h(
      "div",
      { class: "tape-line" },
      h(
        "div",
        { class: "line-head" },
        h("h3", {}, t("line.name", { n: l + 1 })),
        h("span", { class: "leiden", lang: "" }, line.leiden),
        h("span", { class: "soft" }, facts.join(" · ")),
        h("span", { class: "space" }),
        !photo.set && h("button", { type: "button", class: "tool", "data-key": `redraw-${line.id}`, disabled: !line.inStrip, onclick: () => this.pictures.startLine(line.id, line.inStrip) }, t("edit.line.redraw")),
        !photo.set && h("button", { type: "button", class: "tool", "data-key": `remove-${line.id}`, onclick: () => this.correct({ kind: "line-removed", line: line.id, basis: photo.strip.key }) }, t("edit.line.remove")),
      ),
      h(
        "div",
        { class: "cells", role: "group", "aria-label": `${t("line.name", { n: l + 1 })}: ${line.text}` },
        h("span", { class: "row-names", "aria-hidden": "true" }, h("span", {}, t("row.read")), touched && h("span", { class: "form-name" }, t("row.form"))),
        line.letters.flatMap((letter, i) => [form.missing.has(`${l}/${i}`) && this.gap(form.missing.get(`${l}/${i}`)), this.cell(photo, line, l, letter, i, edges, touched ? form : null)]),
        form.missing.has(`${l}/${line.letters.length}`) && this.gap(form.missing.get(`${l}/${line.letters.length}`)),
      ),
    );
  }

  cell(photo, line, l, letter, i, edges, form) {
    const place = form?.at.get(`${l}/${i}`);
    const looked = store.letter?.line === l && store.letter.index === i;
    const first = !store.letter && l === 0 && i === 0;
    const label = [
      t("letter.name", { n: i + 1, line: l + 1, text: letterName(letter.text), p: percent(letter.probability) }),
      place?.differs && t("letter.differs", { form: letterName(place.attested) }),
      letter.by && t("letter.by", { person: letter.by.person, when: when(letter.by.at), was: letter.by.was }),
    ].filter(Boolean);
    const width = Math.max(NARROWEST, ((edges[i + 1] - edges[i]) * PICTURE_HEIGHT) / line.cropSize[1]);
    const kinds = ["cell", letter.text === " " && "blank", place?.differs && "differs", looked && "looked", letter.by && "by-hand", letter.probability < 0.9 && "unclear"].filter(Boolean);
    return h(
      "button",
      {
        type: "button",
        class: kinds.join(" "),
        "data-key": `letter-${l}-${i}`,
        "data-line": l,
        "data-index": i,
        tabindex: looked || first ? "0" : "-1",
        "aria-expanded": String(looked && !this.detail.hidden),
        style: { width: `${width}px` },
        onclick: () => {
          this.pressed = false;
          this.choose(l, i, true);
        },
        onfocus: () => this.pressed || this.choose(l, i, false),
      },
      h("span", { class: "unseen" }, label.join(", ")),
      slice(photo, line, edges[i], edges[i + 1], PICTURE_HEIGHT),
      h("span", { class: "read", lang: "", "aria-hidden": "true" }, letter.text === " " ? "\u2423" : letter.text),
      h("span", { class: "sure", "aria-hidden": "true" }, letter.text === " " ? "" : letter.by ? `\u270e ${machine(letter)}` : percent(letter.probability).replace(/\s%/, "")),
      h("span", { class: "bar-out" }, h("span", { class: "bar-in", style: { width: `${Math.round(letter.probability * 100)}%` } })),
      form && h("span", { class: "form-letter", lang: "", "aria-hidden": "true" }, place ? (place.differs ? ["\u2260", place.attested === " " ? "\u2423" : place.attested || "\u2205"] : place.attested === " " ? "\u2423" : place.attested) : ""),
    );
  }

  /** A letter that the form has and the reading lacks. */
  gap(text) {
    return h("span", { class: "cell gap differs", role: "img", "aria-label": `${t("letter.nothing")}, ${t("letter.differs", { form: text })}` }, h("span", { class: "cut-gap" }), h("span", { class: "read" }, "\u2205"), h("span", { class: "sure" }), h("span", { class: "bar-out" }), h("span", { class: "form-letter" }, "\u2260", text));
  }

  choose(line, index, open) {
    const same = store.letter?.line === line && store.letter.index === index;
    if (open) this.opened = !(same && this.opened);
    if (same && !open) return;
    update({ letter: { line, index } }, "letter");
  }

  showDetail() {
    const photo = current();
    const line = photo?.lines[store.letter?.line];
    const letter = line?.letters[store.letter?.index];
    this.detail.hidden = !letter || !this.opened;
    if (this.detail.hidden) {
      replace(this.detail);
      return;
    }
    const { index } = store.letter;
    const place = this.form(photo).at.get(`${store.letter.line}/${index}`);
    const edges = cuts(line);
    const input = h("input", { id: "letter-text", "data-key": `letter-text-${store.letter.line}-${index}`, type: "text", maxlength: "12", autocomplete: "off", autocapitalize: "off", spellcheck: "false", class: "glyph", value: letter.text, "aria-describedby": "letter-hint" });
    input.value = this.typed ?? letter.text;
    input.addEventListener("keydown", (event) => {
      if (event.key === "Enter") this.keep(input.value);
      if (event.key === "Escape") this.leave();
    });
    this.typed = undefined;
    replace(
      this.detail,
      h("div", { class: "detail-head" }, h("h3", {}, t("letter.detail", { n: index + 1, line: store.letter.line + 1 })), h("button", { type: "button", class: "tool", "aria-label": t("app.close"), onclick: () => this.leave() }, "\u00d7")),
      h("div", { class: "detail-pictures" }, h("figure", {}, slice(photo, line, edges[index], edges[index + 1], 96), h("figcaption", {}, t("letter.cut"))), place?.attested && place.attested !== " " && h("figure", {}, h("span", { class: `exemplar ${photo.styles[0]?.text ?? "roman"}` }, place.attested), h("figcaption", {}, t("letter.exemplar")))),
      this.candidates(letter),
      line.second && h("p", { class: "soft" }, line.second.agrees[index] ? t("letter.second.same") : t("letter.second.other", { text: letterName(letter.text) })),
      letter.by && h("p", { class: "soft" }, t("letter.by", { person: letter.by.person, when: when(letter.by.at), was: letter.by.was })),
      h("label", { for: "letter-text" }, t("letter.type")),
      h("div", { class: "row" }, input, h("button", { type: "button", class: "button strong", onclick: () => this.keep(input.value) }, t("letter.keep"))),
      h("p", { class: "soft", id: "letter-hint" }, t("letter.type.hint"), photo.set && [" ", t("set.correct")]),
      this.elsewhere(photo, letter),
    );
  }

  candidates(letter) {
    const all = [{ text: letter.text, probability: letter.probability }, ...letter.others].filter((one) => one.text !== "?" );
    return h(
      "div",
      {},
      h("h4", {}, t("letter.candidates")),
      h(
        "ul",
        { class: "candidates" },
        all.map((one) =>
          h(
            "li",
            {},
            h("button", { type: "button", class: "candidate", "data-key": `candidate-${one.text}`, onclick: () => this.keep(one.text) }, h("span", { class: one.text.trim() ? "glyph" : "soft" }, letterName(one.text)), h("span", { class: "bar-out" }, h("span", { class: "bar-in", style: { width: `${Math.round(one.probability * 100)}%` } })), h("span", { class: "number" }, percent(one.probability))),
          ),
        ),
      ),
    );
  }

  /** The same letter cut elsewhere on the piece: the best thing to compare a doubtful one with. */
  elsewhere(photo, letter) {
    if (letter.text.trim() === "" || letter.text === "?") return null;
    const found = [];
    photo.lines.forEach((line, l) => {
      const edges = cuts(line);
      line.letters.forEach((other, i) => {
        if (other !== letter && other.text === letter.text) found.push(h("button", { type: "button", class: "same", "aria-label": t("letter.name", { n: i + 1, line: l + 1, text: other.text, p: percent(other.probability) }), onclick: () => this.choose(l, i, false) }, slice(photo, line, edges[i], edges[i + 1], 56)));
      });
    });
    return found.length > 0 && h("div", {}, h("h4", {}, t("letter.same", { text: letter.text })), h("div", { class: "row" }, found.slice(0, 12)));
  }

  async keep(text) {
    const photo = current();
    const line = photo.lines[store.letter.line];
    const letter = line.letters[store.letter.index];
    if (await this.correct({ kind: "letter", line: line.id, letter: letter.id, was: letter.text, becomes: text, basis: line.basis })) this.leave();
  }

  async correct(correction) {
    const person = await whoCorrects();
    if (!person) return false;
    const piece = await attempt(() => api.correct(store.piece.id, { photo: current().corrects ?? current().id, person, ...correction }));
    if (piece) take(piece);
    return piece !== null;
  }

  leave() {
    const key = store.letter && `letter-${store.letter.line}-${store.letter.index}`;
    this.opened = false;
    this.show();
    this.body.querySelector(`[data-key="${key}"]`)?.focus();
  }

  key(event) {
    const cell = event.target.closest("[data-index]");
    if (!cell || event.ctrlKey || event.metaKey || event.altKey) return;
    const [l, i] = [Number(cell.dataset.line), Number(cell.dataset.index)];
    const lines = current().lines;
    const to = { ArrowLeft: [l, i - 1], ArrowRight: [l, i + 1], Home: [l, 0], End: [l, lines[l].letters.length - 1], ArrowUp: [l - 1, Math.min(i, (lines[l - 1]?.letters.length ?? 1) - 1)], ArrowDown: [l + 1, Math.min(i, (lines[l + 1]?.letters.length ?? 1) - 1)] }[event.key];
    if (to) {
      event.preventDefault();
      if (lines[to[0]]?.letters[to[1]]) this.focus(...to);
      return;
    }
    const typed = event.key.length === 1 && event.key !== " " ? event.key : event.key === "Delete" || event.key === "Backspace" ? "" : null;
    if (typed !== null) {
      event.preventDefault();
      this.typed = typed;
      this.opened = true;
      update({ letter: { line: l, index: i } }, "letter");
      const input = this.detail.querySelector("input");
      input?.focus();
      input?.setSelectionRange(typed.length, typed.length);
    }
  }

  focus(line, index) {
    update({ letter: { line, index } }, "letter");
    this.body.querySelector(`[data-key="letter-${line}-${index}"]`)?.focus();
  }
}
