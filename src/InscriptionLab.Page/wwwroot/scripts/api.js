// Everything that goes to the program and back. The program runs on this machine; nothing goes anywhere else.

export const session = { token: "", program: "", fileBytes: 0, references: null, catalogue: null, cautions: [] };

/** A refusal in one sentence that can be shown as it is. */
export class Refused extends Error {}

async function ask(method, path, body, headers = {}) {
  let answer;
  try {
    answer = await fetch(path, { method, body, headers: { ...headers, ...(method === "GET" ? {} : { "X-Lab-Token": session.token }) } });
  } catch {
    throw new Refused("The program does not answer; it may have been stopped. Start it again and load the page anew.");
  }
  const isJson = answer.headers.get("content-type")?.includes("json");
  if (!answer.ok) throw new Refused(isJson ? (await answer.json()).problem : (await answer.text()) || `The program answered with number ${answer.status}.`);
  return isJson ? answer.json() : null;
}

const json = { "Content-Type": "application/json" };
const part = encodeURIComponent;

export const api = {
  async open() {
    Object.assign(session, await ask("GET", "/api/session"));
  },
  pieces: () => ask("GET", "/api/pieces"),
  piece: (id) => ask("GET", `/api/pieces/${part(id)}`),
  newPiece: (name) => ask("POST", "/api/pieces", JSON.stringify({ name }), json),
  demonstration: () => ask("POST", "/api/demonstration"),
  closePiece: (id) => ask("DELETE", `/api/pieces/${part(id)}`),
  addPhoto: (id, file) => ask("POST", `/api/pieces/${part(id)}/photos?name=${part(file.name)}`, file, { "Content-Type": "application/octet-stream" }),
  removePhoto: (id, photo) => ask("DELETE", `/api/pieces/${part(id)}/photos/${part(photo)}`),
  correct: (id, correction) => ask("POST", `/api/pieces/${part(id)}/corrections`, JSON.stringify(correction), json),
  checklist: () => ask("GET", "/api/checklist"),
  seen: (id, answer) => ask("POST", `/api/pieces/${part(id)}/seen`, JSON.stringify(answer), json),
  undo: (id) => ask("POST", `/api/pieces/${part(id)}/undo`),
  redo: (id) => ask("POST", `/api/pieces/${part(id)}/redo`),
  get: (path) => ask("GET", path),
  post: (path, body) => ask("POST", path, body === undefined ? undefined : JSON.stringify(body), json),
  put: (path, body, type) => ask("POST", path, body, { "Content-Type": type }),
};

export const pictures = {
  tile: (photo, level, column, row) => `/api/photos/${part(photo)}/tiles/${level}/${column}/${row}`,
  strip: (photo, key) => `/api/photos/${part(photo)}/strip/${part(key)}`,
  line: (photo, key) => `/api/photos/${part(photo)}/lines/${part(key)}`,
  setLine: (piece, set, line) => `/api/pieces/${part(piece)}/sets/${part(set)}/lines/${line}`,
  set: (piece, set, name) => `/api/pieces/${part(piece)}/sets/${part(set)}/pictures/${part(name)}`,
};

/** Listens to what changes; comes back by itself when the program was away. */
export function listen(heard) {
  let source = null;
  const start = () => {
    if (source || document.hidden) return;
    source = new EventSource("/api/events");
    source.onmessage = (message) => heard(JSON.parse(message.data));
    source.onopen = () => heard({ kind: "bench", piece: "", version: 0 });
  };
  const stop = () => {
    source?.close();
    source = null;
  };
  // A browser keeps few connections to one place: a page that nobody looks at gives its own back.
  document.addEventListener("visibilitychange", () => (document.hidden ? stop() : start()));
  start();
}
