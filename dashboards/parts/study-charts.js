// The charts of a complete study: readings by operator, where the scatter comes from, bias on masters.

import { get } from "./api.js";
import { Chart } from "./chart.js";
import { h } from "./dom.js";

const TOLD = {
  "study-readings": () =>
    "Above: each dot is a reading, the line the means, operator by operator. Lines of the same shape at the same " +
    "height: the operators agree. Below: how far repeats are apart; above the dashed limit, find the reason or " +
    "measure again.",
  "study-components": (figures) =>
    `${symbols(figures)}The bar is the 95 % interval: where little was compared it is long.`,
  "study-bias": () =>
    "Each dot is a reading less the master’s value. Where the band leaves out the dashed line, there is a bias.",
};

/** What the symbols on the axis stand for. */
function symbols(figures) {
  const shown = figures.filter(({ name }) => /^(EV|AV|IA|GRR|PV|TV)/.test(name));
  return shown.length ? `${shown.map(({ name, words }) => `${name} ${words}`).join(", ")}. ` : "";
}

/** Put the element into the page, then show(). */
export class StudyCharts {
  constructor(path, figures) {
    this.path = `${path}/charts`;
    this.figures = figures;
    this.element = h("section", { class: "sheet", "aria-label": "Charts" }, h("h2", {}, "Charts"));
  }

  async show() {
    for (const { kind, title } of await get(this.path)) {
      const chart = new Chart(h("div", { class: "chart-box" }), {
        height: kind === "study-readings" ? 480 : 360,
        narrowHeight: 400,
        newestFirst: false,
      });
      this.element.append(
        h("div", {}, h("h3", {}, named(title)), chart.container, h("p", { class: "small" }, TOLD[kind](this.figures))),
      );
      await chart.show(`${this.path}/${kind}`);
    }
  }
}

/** Without the word that tells it from the charts of a job. */
const named = (title) => {
  const words = title.replace("Study: ", "");
  return `${words[0].toUpperCase()}${words.slice(1)}`;
};
