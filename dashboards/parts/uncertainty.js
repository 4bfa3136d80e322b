// Where the uncertainty of a radius comes from, and which bridge suits the job.

import { get } from "./api.js";
import { h, state, table } from "./dom.js";
import { fixed, length, plainLength, radius, shownIn, uncertainty, unit } from "./units.js";
import words from "../api/words.js";

/** Two digits, with a power of ten where the number is far from 1. */
function small(value) {
  if (value === 0) return "0";
  const [digits, power] = value.toPrecision(2).split("e");
  return power === undefined ? digits : `${digits} × 10^${Number(power)}`;
}

const shown = (value, given) => {
  const as = shownIn(value, given);
  return `${small(as.value)}\u00a0${as.unit}`;
};
const degrees = (value) => (value === null || value > 1e5 ? "∞" : fixed(value, 0));

/** The budget of the newest reading, line by line, the largest first. */
export async function showBudget(place, bench, reading) {
  place.replaceChildren(h("h2", {}, "Where the uncertainty comes from"));
  if (!reading) {
    place.append(h("p", { class: "empty" }, "The budget appears with the first reading of a job."));
    return;
  }
  const budget = await get(`api/readings/${reading.id}/budget`);
  const total = budget.lines.reduce((sum, line) => sum + line.contribution ** 2, 0);
  const lines = [...budget.lines].sort((a, b) => b.contribution - a.contribution);
  const { value, plusMinus } = radius(reading);
  place.append(
    h(
      "p",
      {},
      `Newest reading, piece ${reading.piece}: radius ${value} ${plusMinus}\u00a0${unit()} at 95.45 %, k ` +
        `= ${fixed(budget.coverageFactor, 2)}, after the GUM (JCGM 100).`,
    ),
    table(
      "Uncertainty budget",
      [
        { head: "Source", cell: (line) => line.source },
        { head: "Value", cell: (line) => line.value },
        { head: "Distribution", cell: (line) => words.distributions[line.distribution] },
        {
          head: "Standard uncertainty",
          number: true,
          cell: (line) => shown(line.standardUncertainty, line.unit),
        },
        { head: "Degrees of freedom", number: true, cell: (line) => degrees(line.degreesOfFreedom) },
        { head: "Contribution", number: true, cell: (line) => shown(line.contribution, budget.unit) },
        {
          head: "Share",
          number: true,
          cell: (line) => `${fixed(total > 0 ? (100 * line.contribution ** 2) / total : 0, 0)}\u00a0%`,
        },
      ],
      lines,
    ),
    h(
      "p",
      { class: "small" },
      `Combined ${shown(budget.combined, budget.unit)}, effective degrees of freedom ` +
        `${degrees(budget.degreesOfFreedom)}, expanded ${shown(budget.expanded, budget.unit)}.`,
    ),
  );
}

/** What each bridge would do for the job of the station. */
export async function showAdvice(place, { job }) {
  place.replaceChildren(h("h2", {}, "Which bridge suits the job?"));
  if (!job) {
    place.append(
      h("p", { class: "empty" }, "Choose a job at the station; the bridges are then compared for it."),
    );
    return;
  }
  let options;
  try {
    options = await get(`api/jobs/${job.id}/span-advice`);
  } catch (problem) {
    place.append(h("p", { class: "empty" }, problem.message));
    return;
  }
  place.append(
    h(
      "p",
      {},
      `For ${job.name}: radius ${plainLength(job.specification.targetMm)}\u00a0${unit()}. The larger the ` +
        "tolerance is against U, the fewer readings are too close to call.",
    ),
    table(
      "Bridges for this job",
      [
        { head: "Bridge", cell: (o) => h("strong", {}, o.bridge.name) },
        { head: `Span, ${unit()}`, number: true, cell: (o) => plainLength(o.bridge.spanMm) },
        { head: `Depth to expect, ${unit()}`, number: true, cell: (o) => length(o.depthMm, 2) },
        { head: `U, ${unit()}`, number: true, cell: (o) => uncertainty(o.expandedUncertaintyMm) },
        { head: "Tolerance / U", number: true, cell: (o) => fixed(o.toleranceOverU, 1) },
        { head: "Verdict", cell: (o) => verdict(o) },
      ],
      options,
    ),
  );
}

function verdict({ reachable, recommended, reasons, remarks }) {
  const said = [...reasons, ...remarks].join(". ");
  if (recommended) return h("span", {}, state("good", "Recommended"), said ? ` ${said}` : "");
  return reachable ? said : h("span", {}, state("bad", "Does not reach"), ` ${said}`);
}
