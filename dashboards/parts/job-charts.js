// The control charts, and what stands behind the point that was chosen.

import { get } from "./api.js";
import { Chart } from "./chart.js";
import { h } from "./dom.js";
import { Point } from "./job-point.js";

const APART = ["distribution", "positions"];

export class Charts {
  constructor(changed) {
    this.kind = null;
    this.tabs = h("div", { class: "tabs", role: "group", "aria-label": "Chart" });
    this.point = new Point(changed);
    this.chart = new Chart(h("div", { class: "chart-box" }), { onPick: (place) => this.point.show(this.job, place.point) });
    this.element = h("section", { class: "sheet", "aria-label": "Control charts" }, h("h2", {}, "Control charts"), this.tabs,
      h("div", { class: "with-side" }, this.chart.container, this.point.element));
  }

  async show(job, part) {
    this.job = job;
    this.part = part;
    const kinds = (await get(`/api/jobs/${job.id}/charts?${part}`)).filter((each) => !APART.includes(each.kind));
    if (!kinds.some((each) => each.kind === this.kind)) this.kind = kinds[0]?.kind ?? null;
    this.tabs.replaceChildren(...kinds.map((each) => this.tab(each)));
    await this.draw();
    await this.point.again();
  }

  tab({ kind, title }) {
    const chosen = kind === this.kind;
    const button = h("button", { class: "button", type: "button", "aria-pressed": String(chosen) }, title);
    button.addEventListener("click", () => {
      this.kind = kind;
      this.tabs.querySelectorAll("button").forEach((each) => each.setAttribute("aria-pressed", String(each === button)));
      this.draw();
    });
    return button;
  }

  async draw() {
    if (this.kind && this.job.readings > 0) await this.chart.show(`/api/jobs/${this.job.id}/charts/${this.kind}?${this.part}`);
    else this.chart.clear(h("p", { class: "empty" }, "No reading yet. The chart begins with the first one."));
  }
}
