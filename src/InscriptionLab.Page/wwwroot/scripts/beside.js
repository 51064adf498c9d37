// Two marks over or under each other: side by side, or one in place of the other at a key's press or by itself.

import { h, replace } from "./dom.js";
import { t } from "./strings.js";

const BEAT = 600;

export class Beside {
  constructor(first) {
    this.first = first;
    this.second = first;
    this.element = h("div", { class: "beside" });
    this.mode = "beside";
  }

  show(second) {
    this.second = second;
    this.draw();
  }

  draw() {
    clearInterval(this.beat);
    const picture = (one, extra = "") => h("img", { class: `mark-picture ${extra}`, src: one.src, alt: one.text });
    const tool = (mode) => h("button", { type: "button", class: "tool", "data-key": `beside-${mode}`, "aria-pressed": String(this.mode === mode), onclick: () => ((this.mode = mode), this.draw()) }, t(`beside.${mode}`));
    const over = h("div", { class: "over" }, picture(this.first), picture(this.second, "second"));
    const swap = () => over.classList.toggle("swapped");
    replace(
      this.element,
      h("div", { class: "row" }, tool("beside"), tool("over"), tool("blink"), this.mode === "over" && h("button", { type: "button", class: "tool", "data-key": "beside-swap", onclick: swap }, t("beside.swap"))),
      this.mode === "beside" ? h("div", { class: "pair" }, picture(this.first), picture(this.second)) : over,
    );
    if (this.mode === "blink") this.beat = setInterval(() => (over.isConnected ? swap() : clearInterval(this.beat)), BEAT);
  }
}
