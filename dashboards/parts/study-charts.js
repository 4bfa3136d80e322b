// The charts of a complete study: readings by operator, where the scatter comes from, bias on masters.

import { get } from "./api.js";
import { Chart } from "./chart.js";
import { h } from "./dom.js";

const OWN_PIECES =
  "the line the means, operator by operator. Each has pieces of their own: only the heights of whole lines compare.";

/** What the line through the readings tells, by the kind of study. */
const MEANS = {
  STABILITY:
    "the line the means of the days. A line that goes on rising or falling: the gauge drifts; a diamond beyond " +
    "the dashed limits: that day was different. The line marked master is the master’s own radius.",
  NESTED: OWN_PIECES,
  LOTS: OWN_PIECES,
  ONE_OPERATOR: "the line the means.",
  PLACING: "the line the means, by eye and on the mark in turn.",
};

const COMPARED =
  "the line the means, operator by operator. Lines of the same shape at the same height: the operators agree.";

const TOLD = {
  "study-readings": (figures, { kind, repeats }) =>
    repeats > 1
      ? `Above: each dot is a reading, ${MEANS[kind] ?? COMPARED} Below: how far repeats are apart; above the dashed ` +
        "limit, find the reason or measure again."
      : `Each dot is a reading, ${MEANS[kind] ?? COMPARED}`,
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

/** Names of more operators are turned, above the chart. */
const FEW = 4;

/** Put the element into the page, then show(). */
export class StudyCharts {
  /** study is the study as the API gives it. */
  constructor(path, figures, study) {
    this.path = `${path}/charts`;
    this.figures = figures;
    this.study = study;
    this.element = h("section", { class: "sheet", "aria-label": "Charts" }, h("h2", {}, "Charts"));
  }

  async show() {
    const names = this.study.operators.length > FEW ? 80 : 0;
    for (const { kind, title } of await get(this.path)) {
      const chart = new Chart(h("div", { class: "chart-box" }), {
        height: kind === "study-readings" ? 480 + names : 360,
        narrowHeight: kind === "study-readings" ? 400 + names : 400,
        newestFirst: false,
      });
      this.element.append(
        h(
          "div",
          {},
          h("h3", {}, this.study.kind === "STABILITY" && kind === "study-readings" ? "Readings by day" : title),
          chart.container,
          h("p", { class: "small" }, TOLD[kind](this.figures, this.study)),
        ),
      );
      await chart.show(`${this.path}/${kind}`);
    }
  }
}
