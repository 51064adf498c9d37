// What is on the bench, as the program last told it, and which part of it is looked at.

import { api, Refused } from "./api.js";

const listeners = new Set();

export const store = {
  pieces: [],
  piece: null,
  photo: null,
  letter: null, // { line, index } of the letter looked at
  form: 0, // which of the nearest forms lies beside the letters
  problem: "",
};

export const current = () => store.piece?.photos.find((photo) => photo.id === store.photo) ?? store.piece?.photos[0] ?? null;

export function onChange(listener) {
  listeners.add(listener);
}

/** Changes what is known or looked at, and lets everyone show it. */
export function update(change, what = "all") {
  Object.assign(store, change);
  listeners.forEach((listener) => listener(what));
}

/** Runs something that asks the program; a refusal becomes a sentence on the page. */
export async function attempt(work) {
  try {
    update({ problem: "" }, "problem");
    return await work();
  } catch (problem) {
    if (!(problem instanceof Refused)) throw problem;
    update({ problem: problem.message }, "problem");
    return null;
  }
}

export async function loadPieces() {
  const pieces = await attempt(() => api.pieces());
  if (pieces) update({ pieces }, "pieces");
}

let loading = false;
let again = false;

/** Fetches the piece looked at; asked while it fetches, it fetches once more. */
export async function loadPiece(id) {
  if (loading) {
    again = true;
    return;
  }
  loading = true;
  try {
    do {
      again = false;
      const piece = await attempt(() => api.piece(id));
      if (piece && (store.piece === null || store.piece.id === id)) {
        take(piece);
      }
    } while (again);
  } finally {
    loading = false;
  }
}

/** Takes a piece as the program told it. */
export function take(piece) {
  const photo = piece.photos.some((known) => known.id === store.photo) ? store.photo : (piece.photos[0]?.id ?? null);
  update({ piece, photo }, "piece");
}

export async function look(id) {
  update({ piece: null, photo: null, letter: null, form: 0 }, "piece");
  if (id) await loadPiece(id);
}
