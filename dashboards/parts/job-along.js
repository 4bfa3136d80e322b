// Of a job whose pieces run through a gauge in a line: how even they are along their length, piece by piece, and
// which roller makes a ripple.

import { get } from "./api.js";
import { Chart } from "./chart.js";
import { h } from "./dom.js";
import { told } from "./findings.js";
import { askCause, of, spellTable } from "./job-spells.js";

export class JobAlong {
  constructor(job) {
    this.job = job;
    this.rollers = h("p");
    this.measures = h("div", { class: "form" });
    this.charts = new Map();
    this.element = h(
      "section",
      { class: "sheet form", "aria-label": "Along the pieces", hidden: true },
      h("h2", {}, "Along the pieces"),
      this.measures,
      h("h3", {}, "Does a roller run out?"),
      this.rollers,
      h(
        "p",
        {},
        h("a", { class: "button", href: `line.html?job=${job.id}` }, "Radius along the pieces"),
        " ",
        h(
          "a",
          { class: "button plain", href: `machine.html?machine=${encodeURIComponent(job.machine)}` },
          "Rollers of the machine",
        ),
      ),
    );
  }

  /** Nothing is shown of a job whose newest piece did not run through. */
  async show(newest) {
    this.element.hidden = newest?.captureMode !== "PASSING";
    if (this.element.hidden) return;
    const path = `api/jobs/${this.job.id}`;
    const [measures, rollers, answers] = await Promise.all([
      get(`${path}/along`),
      get(`${path}/rollers`),
      get(`${path}/signal-answers`),
    ]);
    this.newest = newest;
    this.rollers.replaceChildren(...told(rollers.statement));
    await Promise.all(measures.map((each) => this.measure(each, of(each.characteristic, answers))));
  }

  async measure({ measure, title, characteristic, statement, spells, settings }, answers) {
    const { said, stretches, how, chart } = this.charts.get(measure) ?? this.made(measure, title);
    said.replaceChildren(...told(statement));
    const table = () => spellTable(spells, answers, (spell) => this.answer(characteristic, spell));
    stretches.replaceChildren(...(spells.length > 0 ? [table()] : []));
    how.textContent = settings;
    await chart.show(`api/jobs/${this.job.id}/along/${measure.toLowerCase()}/chart`);
  }

  async answer(characteristic, spell) {
    if (await askCause(this.job.id, characteristic, spell)) await this.show(this.newest);
  }

  made(measure, title) {
    const said = h("p");
    const stretches = h("div");
    const how = h("p", { class: "small" });
    const chart = new Chart(h("div", { class: "chart-box" }), {
      height: 380,
      positions: false,
      onPick: ({ point }) => this.pick(point),
    });
    this.measures.append(
      h(
        "div",
        {},
        h("h3", {}, `${title[0].toUpperCase()}${title.slice(1)}, % of curvature`),
        said,
        chart.container,
        stretches,
        how,
      ),
    );
    const parts = { said, stretches, how, chart };
    this.charts.set(measure, parts);
    return parts;
  }

  /** The piece in full. */
  pick(point) {
    if (point) location.assign(`line.html?job=${this.job.id}&reading=${point.lastReadingId}`);
  }
}
