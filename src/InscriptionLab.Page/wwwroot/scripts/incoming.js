// Photos that come in: dropped, chosen, or taken there and then.

import { api, Refused, session } from "./api.js";
import { h } from "./dom.js";
import { ask } from "./dialog.js";
import { attempt, loadPiece, loadPieces, look, store } from "./store.js";
import { t } from "./strings.js";

const PICTURE = /\.(jpe?g|png|webp|tiff?|bmp|heic|heif|avif)$/i;

const isPicture = (file) => file.type.startsWith("image/") || PICTURE.test(file.name);

/** Reads dropped items, folders with everything in them. */
async function filesOf(transfer) {
  const entries = [...transfer.items].map((item) => item.webkitGetAsEntry?.()).filter(Boolean);
  if (entries.length === 0) return { files: [...transfer.files], folder: false };
  const files = [];
  for (const entry of entries) await walk(entry, files);
  return { files, folder: entries.some((entry) => entry.isDirectory) };
}

async function walk(entry, files) {
  if (entry.isFile) {
    files.push(await new Promise((done, fail) => entry.file(done, fail)));
    return;
  }
  const reader = entry.createReader();
  for (;;) {
    const some = await new Promise((done, fail) => reader.readEntries(done, fail));
    if (some.length === 0) return;
    for (const inner of some) await walk(inner, files);
  }
}

/** Lays photos on the bench: on the piece named, or as one piece, or each as its own. */
export async function layDown(given, pieceId = null, folder = false) {
  const files = [...given].filter(isPicture);
  if (files.length === 0) {
    await attempt(() => Promise.reject(new Refused(t("drop.none"))));
    return;
  }
  let apart = false;
  if (!pieceId && files.length > 1) {
    const answer = await ask({
      text: t("drop.many", { count: files.length }),
      choices: [
        { value: "one", label: t("drop.one-piece"), first: !folder },
        { value: "each", label: t("drop.each"), first: folder },
      ],
    });
    if (!answer) return;
    apart = answer === "each";
  }
  for (const group of apart ? files.map((file) => [file]) : [files]) await layGroup(group, pieceId);
  await loadPieces();
}

async function layGroup(files, pieceId) {
  const name = files[0].name.replace(/\.[^.]*$/, "");
  const id = pieceId ?? (await attempt(() => api.newPiece(name)))?.id;
  if (!id) return;
  if (store.piece?.id !== id) {
    await look(id);
    location.hash = `#bench/${id}`;
  }
  for (const file of files) {
    await attempt(() => {
      if (file.size > session.fileBytes) throw new Refused(t("drop.too-large", { name: file.name, limit: Math.round(session.fileBytes / 1048576) }));
      return api.addPhoto(id, file);
    });
    loadPiece(id);
  }
}

/** Lets the whole window take photos. */
export function takeDrops(cover, pieceId) {
  let depth = 0;
  const show = (on) => cover.classList.toggle("shown", on);
  const has = (event) => event.dataTransfer?.types.includes("Files");
  addEventListener("dragenter", (event) => {
    if (has(event)) show(++depth > 0);
  });
  addEventListener("dragleave", (event) => {
    if (has(event)) show((depth = Math.max(0, depth - 1)) > 0);
  });
  addEventListener("dragover", (event) => {
    if (has(event)) event.preventDefault();
  });
  addEventListener("drop", async (event) => {
    if (!has(event)) return;
    event.preventDefault();
    show((depth = 0) > 0);
    const onto = event.target.closest?.("[data-add-to]") ? pieceId() : null;
    const { files, folder } = await filesOf(event.dataTransfer);
    await layDown(files, onto, folder);
  });
}

/** A button that chooses files; with camera, the tablet's own camera opens. */
export function chooser(label, { camera = false, pieceId = null, className = "button" } = {}) {
  const input = h("input", { type: "file", accept: "image/*,.heic,.heif,.avif", class: "hidden-input", tabindex: "-1", "aria-hidden": "true", multiple: !camera, capture: camera ? "environment" : null });
  input.addEventListener("change", async () => {
    await layDown(input.files, pieceId);
    input.value = "";
  });
  return [h("button", { type: "button", class: className, onclick: () => input.click() }, label), input];
}
