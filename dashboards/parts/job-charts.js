// The control charts, and what stands behind the point that was chosen.

import { get } from "./api.js";
import { Chart } from "./chart.js";
import { h } from "./dom.js";
import { field, options } from "./forms.js";
import { Point } from "./job-point.js";

const APART = ["distribution", "positions"];
const LEAST_PX = 300;
const MOST_PX = 460;

/** As high as the first screen leaves room for, so that verdicts and chart are seen together. */
function height(container) {
  const top = container.getBoundingClientRect().top + scrollY;
  return Math.max(LEAST_PX, Math.min(MOST_PX, innerHeight - top - 12));
}

export class Charts {
  constructor(changed) {
    this.kind = null;
    this.choice = field({ name: "chart", label: "Chart", kind: "choice" });
    this.choice.addEventListener("change", ({ target }) => {
      this.kind = target.value;
      this.draw();
    });
    this.point = new Point(changed);
    this.chart = new Chart(h("div", { class: "chart-box" }), {
      height,
      onPick: (place) => this.point.show(this.job, place.point),
    });
    this.element = h(
      "section",
      { class: "charts", "aria-label": "Control charts" },
      h("h3", { class: "unseen" }, "Control charts"),
      this.chart.container,
      this.point.element,
    );
  }

  async show(job, part) {
    this.job = job;
    this.part = part;
    const kinds = (await get(`api/jobs/${job.id}/charts?${part}`)).filter(
      (each) => !APART.includes(each.kind),
    );
    if (!kinds.some((each) => each.kind === this.kind)) this.kind = kinds[0]?.kind ?? null;
    options(
      this.choice,
      kinds.map((each) => [each.kind, each.title]),
      this.kind,
    );
    await this.draw();
    await this.point.again();
  }

  async draw() {
    if (this.kind && this.job.readings > 0)
      await this.chart.show(`api/jobs/${this.job.id}/charts/${this.kind}?${this.part}`);
    else this.chart.clear(h("p", { class: "empty" }, "No reading yet. The chart begins with the first one."));
  }
}
