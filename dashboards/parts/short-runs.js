// Several short jobs of one machine on one chart, each reading as its deviation from the target of its job.

import { get, turns } from "./api.js";
import { Chart } from "./chart.js";
import { h, table } from "./dom.js";
import { keyFigures } from "./figure-words.js";
import { told } from "./findings.js";
import { field, values } from "./forms.js";
import { dateTime } from "./times.js";
import { unit } from "./units.js";

const WHY =
  "A job of a few pieces says little by itself. Here the newest jobs follow one another, " +
  "each reading as how far it lies from the target of its own job, " +
  "so that all of them together show a shift of the machine that no single job has enough " +
  "readings for. Jobs without both limits are left out; of a long job its newest 200 readings " +
  "count.";
const KINDS = [
  ["individuals", "Individuals"],
  ["moving-range", "Moving range"],
  ["ewma", "EWMA, for small shifts"],
  ["cusum", "CUSUM, for small lasting shifts"],
];

export class ShortRuns {
  constructor(path) {
    this.path = `${path}/short-runs`;
    this.turn = turns();
    this.form = h(
      "form",
      { class: "filter", "aria-label": "How the jobs are pooled" },
      field({
        name: "basis",
        label: "Deviation in",
        kind: "choice",
        options: [
          ["standardised", "sixths of each job’s tolerance"],
          ["deviation", `${unit()} of radius`],
        ],
      }),
      field({
        name: "jobs",
        label: "Newest jobs",
        kind: "choice",
        value: 20,
        options: [5, 10, 20, 50].map((each) => [each, each]),
      }),
      field({ name: "kind", label: "Chart", kind: "choice", options: KINDS }),
    );
    this.form.addEventListener("change", () => this.show());
    this.form.addEventListener("submit", (event) => event.preventDefault());
    this.said = h("div", { class: "form", role: "status" });
    this.found = h("div");
    this.picked = h(
      "p",
      { class: "small", "aria-live": "polite" },
      "Choose a point by touch, click, or with the arrow keys and Enter, to see its job.",
    );
    this.chart = new Chart(h("div", { class: "chart-box" }), {
      height: 380,
      narrowHeight: 340,
      onPick: (place) => this.pick(place),
      positions: false,
    });
    this.element = h(
      "section",
      { class: "sheet form", "aria-label": "Short runs" },
      h("div", { class: "sheet-head" }, h("h2", {}, "Short jobs together"), this.form),
      h("p", { class: "small" }, WHY),
      this.said,
      this.chart.container,
      this.picked,
      this.found,
    );
  }

  async show() {
    const current = this.turn();
    const { basis, jobs, kind } = values(this.form);
    const query = `basis=${basis}&jobs=${jobs}`;
    const pooled = await get(`${this.path}?${query}`);
    if (!current()) return;
    this.said.replaceChildren(...words(pooled));
    this.found.replaceChildren(...(pooled.charts.signals.length ? [signals(pooled.charts.signals)] : []));
    if (pooled.count > 0) await this.chart.show(`${this.path}/chart?${query}&kind=${kind}`);
    else this.chart.clear(h("p", { class: "empty" }, "No readings of jobs with both limits yet."));
  }

  async pick({ point }) {
    if (!point) return;
    const reading = await get(`api/readings/${point.lastReadingId}`);
    const job = await get(`api/jobs/${reading.jobId}`);
    this.picked.replaceChildren(
      "Reading of ",
      h("a", { href: `job.html?job=${job.id}` }, job.name),
      `, piece ${reading.piece}, ${reading.position}, `,
      dateTime(reading.at),
    );
  }
}

function words({ statement, figures, cautions }) {
  const shown = cautions
    .filter((each) => !["NO_LIMITS", "NOT_IN_CONTROL", "NOT_NORMAL"].includes(each.kind))
    .map((each) => h("li", {}, each.text));
  return [
    h("p", {}, ...told(statement)),
    keyFigures({ figures }, ["n", "mean", "standardDeviationWithin"]),
    ...(shown.length ? [h("ul", { class: "cautions" }, shown)] : []),
  ];
}

function signals(found) {
  return table(
    "Signals over the jobs, the newest first",
    [
      { head: "Chart", cell: (row) => row.chart },
      { head: "Point", number: true, cell: (row) => String(row.number) },
      { head: "Time", cell: (row) => dateTime(row.at) },
      { head: "Rule", cell: (row) => row.broken.join("; ") },
    ],
    found.slice(0, 6),
  );
}
