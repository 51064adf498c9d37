// Starts the page: tabs, settings, what the program tells.

import { api, listen } from "./api.js";
import { Bench } from "./bench.js";
import { Catalogue } from "./catalogue.js";
import { Construction } from "./construction.js";
import { announce, h, replace } from "./dom.js";
import { Help } from "./help.js";
import { takeDrops } from "./incoming.js";
import { Measure } from "./measure.js";
import { ReferenceListView } from "./list.js";
import { applyTheme, settings } from "./settings.js";
import { attempt, current, loadPiece, loadPieces, look, onChange, store, update } from "./store.js";
import { t } from "./strings.js";

const views = {};
const makers = { bench: () => new Bench(), measure: () => new Measure(), construction: () => new Construction(), catalogue: () => new Catalogue(), list: () => new ReferenceListView(), help: () => new Help() };
const main = document.getElementById("main");

function show() {
  const [name, id, place] = location.hash.replace(/^#/, "").split("/");
  const view = makers[name] ? name : "bench";
  views[view] ??= makers[view]();
  if (main.firstChild !== views[view].element) main.replaceChildren(views[view].element);
  main.scrollTop = 0;
  views[view].opened?.(id, place);
  if (view === "bench" && (id ?? null) !== (store.piece?.id ?? null)) look(id || null);
  main.tabIndex = view === "help" ? 0 : -1;
  header(view);
}

function header(view) {
  const choose = (name, values, label) =>
    h(
      "label",
      { class: "choice" },
      h("span", {}, label),
      h("select", { "data-key": `set-${name}`, onchange: (event) => settings.set(name, event.target.value) }, values.map(([value, text]) => h("option", { value, selected: settings.get(name) === value }, text))),
    );
  replace(
    document.getElementById("head"),
    h("a", { class: "house", href: "#bench" }, "InscriptionLab"),
    h("nav", { class: "tabs", "aria-label": t("app.tabs") }, Object.keys(makers).map((name) => h("a", { href: name === "bench" && store.piece ? `#bench/${store.piece.id}` : `#${name}`, "data-key": `tab-${name}`, "aria-current": name === view ? "page" : null }, t(`tab.${name}`)))),
    h("span", { class: "space" }),
    choose("units", [["mm", t("units.mm")], ["in", t("units.in")]], t("app.units")),
    choose("theme", [["auto", t("theme.auto")], ["dark", t("theme.dark")], ["light", t("theme.light")]], t("app.theme")),
    h("label", { class: "choice" }, h("span", {}, t("app.person")), h("input", { type: "text", maxlength: "60", "data-key": "set-person", value: settings.get("person"), placeholder: t("app.person.hint"), onchange: (event) => settings.set("person", event.target.value.trim()) })),
  );
}

function heard(message) {
  if (message.kind === "dataset") dispatchEvent(new Event("lab-dataset"));
  else if (message.kind === "bench") {
    loadPieces();
    if (store.piece) loadPiece(store.piece.id);
  } else if (message.kind === "piece") {
    if (message.piece === store.piece?.id && message.version !== store.piece.version) loadPiece(message.piece);
    laterPieces();
  }
}

let later = 0;
function laterPieces() {
  later ||= setTimeout(() => {
    later = 0;
    loadPieces();
  }, 400);
}

/** Tells who listens when a finding is there. */
let told = "";
function tell() {
  const photo = current();
  if (!photo?.finding) return;
  const text = t("said.ready", { name: photo.name, finding: t(`finding.${photo.finding.outcome}`) });
  if (told !== photo.id + text) announce(text);
  told = photo.id + text;
}

const problem = document.getElementById("problem");
onChange((what) => {
  if (what === "problem") {
    replace(problem, store.problem && [h("span", { role: "alert" }, store.problem), h("button", { type: "button", class: "tool", "aria-label": t("app.close"), onclick: () => update({ problem: "" }, "problem") }, "\u00d7")]);
    problem.hidden = !store.problem;
  } else tell();
});

document.getElementById("skip").textContent = t("app.skip");
document.getElementById("cover").textContent = t("drop.now");
applyTheme();
settings.onChange((name) => {
  if (name === "theme") applyTheme();
});
addEventListener("hashchange", show);
takeDrops(document.getElementById("cover"), () => store.piece?.id ?? null);
await attempt(() => api.open());
show();
await loadPieces();
listen(heard);
document.documentElement.dataset.ready = "yes";
