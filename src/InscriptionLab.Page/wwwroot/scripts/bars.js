// Bars with their names and numbers: the words carry the meaning, the bar only shows it.

import { h } from "./dom.js";
import { t } from "./strings.js";

export function bars(title, pairs, whole) {
  const most = Math.max(1, ...pairs.map(([, count]) => count));
  return h(
    "section",
    { class: "chart" },
    h("h3", {}, title),
    h(
      "table",
      {},
      pairs.map(([name, count]) => h("tr", {}, h("th", { scope: "row" }, name), h("td", { class: "chart-bar" }, h("span", { style: { width: `${(100 * count) / most}%` } })), h("td", { class: "number" }, t("chart.count", { n: count.toLocaleString("en"), p: whole ? Math.round((100 * count) / whole) : 0 })))),
    ),
  );
}
