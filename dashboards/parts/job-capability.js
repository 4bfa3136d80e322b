// What is found of a job: three verdicts, its machine in a line, key figures; below them the distribution.

import { get } from "./api.js";
import { Chart } from "./chart.js";
import { $, h, state, table, unfold } from "./dom.js";
import { figureTables, keyFigures } from "./figure-words.js";
import { kindOf } from "./findings.js";
import { length, unit } from "./units.js";

/** On paper they have 11 cm. */
const BESIDE_PX = 620;
const KEY = ["Cp", "Cpk", "n", "Pp", "Ppk", "mean"];
const QUESTIONS = [
  ["control", "In control?"],
  ["capability", "Capable?"],
  ["gauge", "Gauge good enough?"],
];

export class Capability {
  constructor(job) {
    this.machinePage = `machine.html?machine=${encodeURIComponent(job.machine)}`;
    this.heading = h("p", { class: "scope-line" });
    this.verdicts = h("div", { class: "verdicts", role: "status" });
    this.key = h("div", { class: "key" });
    this.leftOut = h("ul", { class: "cautions plain-facts", "aria-label": "Left out", hidden: true });
    this.cautions = h("ul", { class: "cautions plain-facts" });
    this.top = h(
      "div",
      { class: "form", role: "group", "aria-label": "Verdict" },
      this.heading,
      this.verdicts,
      this.key,
    );
    this.distribution = new Chart(h("div", { class: "chart-box" }), {
      height: 420,
      narrowHeight: 340,
      mostPx: BESIDE_PX,
    });
    this.compared = new Chart(h("div", { class: "chart-box" }), { height: 320, narrowHeight: 300, mostPx: BESIDE_PX });
    this.figures = h("div", { class: "figure-columns" });
    this.effects = h("div");
    this.positions = h(
      "section",
      { class: "sheet form", "aria-label": "Positions compared", hidden: true },
      h("h2", {}, "Positions compared"),
      h("div", { class: "beside" }, h("div", {}, this.compared.container), this.effects),
    );
    this.below = [
      h(
        "section",
        { class: "sheet form", id: "capability", "aria-label": "Capability" },
        h("h2", {}, "Distribution and figures"),
        this.cautions,
        h(
          "div",
          { class: "beside" },
          h("div", {}, this.distribution.container),
          h("div", {}, this.figures, unfold(this.figures, "All figures")),
        ),
      ),
      this.positions,
    ];
  }

  show(statistics, words) {
    const readings = statistics.count === 1 ? "reading" : "readings";
    const behind = statistics.behind > 0 ? `; ${statistics.behind} more are still being evaluated` : "";
    this.heading.replaceChildren(
      h("span", { class: "scope-words" }, `${words[0].toUpperCase()}${words.slice(1)}: `),
      `${statistics.count} ${readings}${behind} `,
      this.machine(statistics.verdicts.machine),
    );
    $("machine-state")?.replaceChildren(this.machine(statistics.verdicts.machine));
    this.verdicts.replaceChildren(
      ...QUESTIONS.map(([name, asked]) => tile(asked, statistics.verdicts[name])),
    );
    this.key.replaceChildren(keyFigures(statistics, KEY));
    this.cautions.replaceChildren(
      ...statistics.cautions
        .filter((each) => each.kind !== "NOT_IN_CONTROL")
        .map((caution) => h("li", {}, caution.text)),
    );
    if (!this.figures.querySelector(":popover-open"))
      this.figures.replaceChildren(...figureTables(statistics));
  }

  /** Excluded readings, and planned positions where pieces were not measured; not of the longest jobs. */
  async lacks(job) {
    const { words } = await get(`api/jobs/${job.id}/left-out`).catch(() => ({ words: [] }));
    this.leftOut.hidden = words.length === 0;
    this.leftOut.replaceChildren(...words.map((each) => h("li", {}, each)));
  }

  /** In a word; why, and what to do, are on the machine's page. */
  machine({ tone, word }) {
    return h("a", { class: "machine", href: this.machinePage }, state(kindOf(tone), word));
  }

  async pictures(job, part, statistics) {
    const several = job.plan.positions.length > 1;
    this.positions.hidden = !several;
    await Promise.all([
      statistics.count > 0
        ? this.distribution.show(`api/jobs/${job.id}/charts/distribution?${part}`)
        : empty(this.distribution),
      several ? this.compared.show(`api/jobs/${job.id}/charts/positions?${part}`) : null,
    ]);
    if (several) this.effects.replaceChildren(effects(statistics.positionEffects));
  }

  trouble(problem) {
    this.heading.textContent = "";
    this.verdicts.replaceChildren(h("p", { class: "fault", role: "alert" }, problem.message));
  }
}

function tile(asked, { tone, word, reason, advice }) {
  const why = [reason, advice].filter(Boolean).join(" ");
  return h(
    "div",
    { class: "tile", data: { state: kindOf(tone) } },
    h("h3", { class: "asked" }, asked),
    state(kindOf(tone), word),
    h("p", { class: "why" }, why),
  );
}

function empty(chart) {
  chart.clear(
    h("p", { class: "empty" }, "No readings yet. Here they appear as a distribution against the limits."),
  );
}

function effects(rows) {
  if (rows.length === 0)
    return h(
      "p",
      { class: "small" },
      "Two pieces read at two positions or more are needed to tell positions apart.",
    );
  const signed = (value) => (value === null ? "–" : `${value > 0 ? "+" : ""}${length(value, 2)}`);
  return table(
    "How each position differs from the mean of its piece",
    [
      { head: "Position", kind: "lead", cell: (row) => row.position },
      { head: "Pieces", kind: "named", number: true, cell: (row) => String(row.pieces) },
      {
        head: `Differs from its piece by, ${unit()}`,
        short: `Differs by, ${unit()}`,
        kind: "named",
        number: true,
        cell: (row) => signed(row.meanDifference),
      },
      {
        head: "95 % interval",
        short: "95 %:",
        kind: "new named",
        number: true,
        cell: (row) => (row.lower === null ? "" : `${signed(row.lower)} to ${signed(row.upper)}`),
      },
      {
        head: "Verdict (5 %, all positions together)",
        cell: (row) => (row.differs ? state("open", "differs") : state("good", "no difference seen")),
      },
    ],
    rows,
    "lines",
  );
}
