// The guides, which the program renders from its Markdown, with drawings beside the steps of photographing; and the keys.

import { api } from "./api.js";
import { h, replace } from "./dom.js";
import { drawing } from "./drawings.js";
import { attempt } from "./store.js";
import { t } from "./strings.js";

const FIRST = "photographing";
const KEYS = "keys";

/** Which drawing belongs to which heading of the guide on photographing. */
const DRAWN = {
  "lay-it-on-a-dull-cloth": "lay",
  "both-edges-in-the-picture": "edges",
  "letters-as-large-as-you-can": "near",
  "light-low-from-one-side": "rake",
  "the-same-view-the-lamp-from-several-sides": "four",
  "lettering-that-runs-round-the-tube": "turn",
  "something-of-known-size-beside-it": "scale",
  "as-high-as-the-rim": "level",
  "what-never-to-do": "never",
};

export class Help {
  constructor() {
    this.nav = h("nav", { class: "guide-list", "aria-label": t("help.list") });
    this.article = h("article", { class: "guide" });
    this.element = h("div", { class: "guides" }, this.nav, this.article);
    this.name = "";
  }

  async opened(name, heading) {
    this.guides ??= await attempt(() => api.get("/api/guides"));
    await this.turnTo(name || FIRST);
    if (heading) this.article.querySelector(`[id="${CSS.escape(heading)}"]`)?.scrollIntoView();
  }

  async turnTo(name) {
    if (name === this.name) return;
    const content = name === KEYS ? keys() : await this.guide(name);
    if (!content) return;
    this.name = name;
    replace(this.nav, h("ul", {}, [...(this.guides ?? []), { name: KEYS, title: t("help.keys") }].map((one) => h("li", {}, h("a", { href: `#help/${one.name}`, "data-key": `guide-${one.name}`, "aria-current": one.name === name ? "page" : null }, one.title)))));
    replace(this.article, content);
    this.element.parentElement?.scrollTo(0, 0);
  }

  async guide(name) {
    const guide = await attempt(() => api.get(`/api/guides/${encodeURIComponent(name)}`));
    if (!guide) return null;
    const read = new DOMParser().parseFromString(guide.html, "text/html").body;
    for (const table of read.querySelectorAll("table")) table.replaceWith(h("div", { class: "guide-table", tabindex: "0", role: "group", "aria-label": t("help.table") }, table.cloneNode(true)));
    for (const code of read.querySelectorAll("pre")) code.tabIndex = 0;
    if (name === FIRST) illustrate(read);
    return [...read.childNodes].map((node) => document.adoptNode(node));
  }
}

/** Puts a drawing beside each heading that has one, and what stands under the heading with it. */
function illustrate(read) {
  for (const [id, scene] of Object.entries(DRAWN)) {
    const heading = read.querySelector(`[id="${id}"]`);
    if (!heading) continue;
    const words = h("div", {});
    const step = h("div", { class: "step" }, drawing(scene), words);
    heading.before(step);
    for (let next = heading, after; next && (next === heading || !/^H[1-6]$/.test(next.tagName ?? "")); next = after) {
      after = next.nextSibling;
      words.append(next);
    }
  }
}

const keys = () => [
  h("h1", {}, t("help.keys")),
  h("dl", { class: "keys" }, ["walk", "correct", "open", "move", "zoom", "undo"].map((key) => [h("dt", {}, t(`help.key.${key}`)), h("dd", {}, t(`help.key.${key}.text`))])),
];
