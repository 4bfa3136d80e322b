// The chart of corrections: level, what was advised, what was done, and what a unit of the scale does.

import { Chart } from "./chart.js";
import { h } from "./dom.js";

/** Of a machine by its path in the API, or of one job on it; not seen while there is nothing to show. */
export class CorrectionChart {
  constructor(path, job = null) {
    this.query = `${path}/correction/chart${job === null ? "" : `?job=${job}`}`;
    this.chart = new Chart(h("div", { class: "chart-box" }), { height: 460, narrowHeight: 300 });
    this.element = h(
      "div",
      { class: "form", hidden: true },
      h("h3", {}, "Corrections and what they did"),
      this.chart.container,
      h(
        "p",
        { class: "small explains" },
        "Above: each dot is a piece, the line the level as Chordlog sees it, with ± two standard uncertainties. " +
          "Inside the dashed lines the rollers are better left alone. Flags are corrections (with what was done), " +
          "set-ups and new lots; touch one to read what was advised. Below: what one unit of the scale does.",
      ),
    );
  }

  async show() {
    this.element.hidden = false;
    try {
      await this.chart.show(this.query);
    } catch (problem) {
      if (problem.status !== 404) throw problem;
      this.element.hidden = true;
    }
  }
}
