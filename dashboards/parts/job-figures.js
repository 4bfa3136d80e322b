// The figures of a job in short, and its control chart.

import { get } from "./api.js";
import { Chart } from "./chart.js";
import { h } from "./dom.js";
import { fixed, length, unit } from "./units.js";

const wanted = [
  ["mean", "Mean", 1],
  ["range", "Range", 1],
  ["Cp", "Cp", null],
  ["Cpk", "Cpk", null],
];

export class JobFigures {
  constructor(figures, cautions, chart) {
    Object.assign(this, {
      figures,
      cautions,
      chart: new Chart(chart),
      job: null,
      running: null,
      again: false,
    });
  }

  async of(job) {
    if (job?.id === this.job?.id) return;
    this.job = job;
    await this.refresh();
  }

  /** One at a time; what comes meanwhile is fetched once more at the end. */
  refresh() {
    if (this.running) {
      this.again = true;
      return this.running;
    }
    this.running = this.show()
      .catch((problem) => console.warn(problem.message))
      .finally(() => {
        this.running = null;
        if (this.again) {
          this.again = false;
          this.refresh();
        }
      });
    return this.running;
  }

  async show() {
    if (!this.job) {
      this.figures.replaceChildren();
      this.cautions.replaceChildren();
      this.chart.clear(h("p", { class: "empty" }, "The chart appears with the first readings of a job."));
      return;
    }
    const statistics = await get(`api/jobs/${this.job.id}/statistics`);
    this.figures.replaceChildren(
      ...wanted.map((each) => term(statistics, ...each)),
      box("Readings", String(statistics.count), "", "n"),
    );
    this.cautions.replaceChildren(...statistics.cautions.map((caution) => h("li", {}, caution.text)));
    const kinds = await get(`api/jobs/${this.job.id}/charts`);
    if (kinds.length > 0 && statistics.count > 0)
      await this.chart.show(`api/jobs/${this.job.id}/charts/${kinds[0].kind}`);
    else this.chart.clear(h("p", { class: "empty" }, "The chart appears with the first readings."));
  }
}

function term(statistics, name, label, digits) {
  const figure = statistics.figures.find((each) => each.name === name);
  const shown = (value) => (digits === null ? fixed(value, 2) : length(value, digits));
  const interval =
    figure && figure.lower !== null && figure.upper !== null
      ? `${shown(figure.lower)} to ${shown(figure.upper)}`
      : "";
  return box(
    digits === null ? label : `${label}, ${unit()}`,
    figure ? shown(figure.value) : "–",
    interval,
    name,
  );
}

function box(label, value, interval, name = label) {
  return h(
    "div",
    {},
    h("dt", {}, label),
    h("dd", { data: { figure: name } }, value, interval ? h("span", { class: "interval" }, interval) : null),
  );
}
