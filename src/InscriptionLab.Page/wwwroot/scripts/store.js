// What is on the bench, as the program last told it, and which part of it is looked at.

import { api, pictures, Refused } from "./api.js";

const listeners = new Set();

export const store = {
  pieces: [],
  piece: null,
  photo: null, // the photo or the set of photos looked at
  letter: null, // { line, index } of the letter looked at
  form: 0, // which of the nearest forms lies beside the letters
  problem: "",
};

/** The photo looked at, or the first one where photos are looked at together. */
export const currentPhoto = () => store.piece?.photos.find((photo) => photo.id === store.photo) ?? store.piece?.photos[0] ?? null;

/** What is looked at: a photo, or photos read together, which have lines and a finding as a photo has. */
export const current = () => {
  const set = store.piece?.together.sets.find((one) => one.id === store.photo);
  return set ? asPhoto(set) : currentPhoto();
};

function asPhoto(set) {
  const lines = set.lines.map((line, i) => ({ ...line, address: pictures.setLine(store.piece.id, set.id, i) }));
  return { ...set, corrects: set.place, set: true, name: set.title, lines, working: store.piece.together.working, stages: [], problem: null, size: null, levels: 0, tube: null, ring: null, strip: null, advice: null, sizes: [], warnings: set.reasons };
}

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
  update({ piece, photo: stillThere(piece) }, "piece");
}

/** What was looked at, if it is still there; a set that was read anew has another name and the same place. */
function stillThere(piece) {
  if (piece.photos.some((known) => known.id === store.photo) || piece.together.sets.some((set) => set.id === store.photo)) return store.photo;
  const place = store.piece?.together.sets.findIndex((set) => set.id === store.photo) ?? -1;
  return piece.together.sets[place]?.id ?? piece.photos[0]?.id ?? null;
}

export async function look(id) {
  update({ piece: null, photo: null, letter: null, form: 0 }, "piece");
  if (id) await loadPiece(id);
}
