// Advice on the rollers over a job, as a section of its page.

import { AsAdvised } from "./as-advised.js";
import { CorrectionChart } from "./correction-chart.js";
import { h } from "./dom.js";

export class JobRollers {
  constructor(job) {
    const machine = `api/machines/${encodeURIComponent(job.machine)}`;
    this.chart = new CorrectionChart(machine, job.id);
    this.compared = new AsAdvised(job);
    this.element = h(
      "section",
      { class: "sheet form", "aria-label": "Rollers", hidden: true },
      this.compared.element,
      this.chart.element,
      h(
        "p",
        {},
        h(
          "a",
          { href: `machine.html?machine=${encodeURIComponent(job.machine)}` },
          "The machine and its scale",
        ),
      ),
    );
  }

  async show() {
    const pieces = await this.compared.show();
    this.element.hidden = pieces === 0;
    if (pieces > 0) await this.chart.show();
  }
}
