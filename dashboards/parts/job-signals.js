// Tables of a job's signals and of its control limits.

import { h, table } from "./dom.js";
import { dateTime } from "./times.js";
import { fixed, length, unit } from "./units.js";

const size = (value, row) => (value === null ? "–" : row.unit === "mm" ? length(value, 2) : fixed(value, 2));

export function signalTable(rows) {
  return table(
    "Signals, the newest first",
    [
      { head: "Chart", kind: "lead", cell: (row) => row.chart },
      {
        head: "Point, piece",
        short: "Point",
        kind: "named",
        cell: (row) => `${row.number}, piece ${row.piece}${row.position ? `, ${row.position}` : ""}`,
      },
      { head: "Time", kind: "new", cell: (row) => dateTime(row.at) },
      {
        head: "Value",
        number: true,
        kind: "named",
        cell: (row) => `${size(row.value, row)}\u00a0${row.unit === "mm" ? unit() : row.unit}`,
      },
      { head: "Rule", kind: "new", cell: (row) => row.broken.join("; ") },
    ],
    rows,
    "lines",
  );
}

/** How many signals there are beside those of the table. */
export function counted(facts, most) {
  const listed = Math.min(most, facts.signals.length);
  const all =
    facts.signalCount > listed
      ? `The newest ${listed} of ${facts.signalCount} points that broke a rule. `
      : "";
  const thinned = facts.thinning
    ? `${facts.thinning} Choose fewer readings above, since a change or between two days, to see each point.`
    : "";
  return h("p", { class: "small" }, all + thinned);
}

export function limitTable(facts, phases) {
  const rows = newestOfPhase(facts.filter((row) => row.lower !== null || row.upper !== null));
  const several = new Set(rows.map((row) => row.phase)).size > 1;
  const phaseOf = (row) => phases.find(({ number }) => number === row.phase)?.words ?? "";
  return table(
    "Control limits by chart, the newest first",
    [
      { head: "Chart", kind: "lead", cell: (row) => row.chart },
      ...(several ? [{ head: "Readings", cell: phaseOf }] : []),
      { head: "Lower", short: "LCL", number: true, kind: "new named", cell: (row) => sized(row.lower, row) },
      { head: "Centre", short: "CL", number: true, kind: "named", cell: (row) => sized(row.centre, row) },
      { head: "Upper", short: "UCL", number: true, kind: "named", cell: (row) => sized(row.upper, row) },
      {
        head: "Kind",
        cell: (row) => (row.frozen ? "fixed" : "recalculated"),
      },
    ],
    rows.sort((a, b) => b.phase - a.phase),
    "lines",
  );
}

/** A size with its unit, where it has one. */
function sized(value, row) {
  const word = row.unit === "mm" ? unit() : row.unit;
  return value === null ? "–" : `${size(value, row)}\u00a0${word}`.trim();
}

/** Limits that widen from point to point (EWMA) are shown as they stand at the end of a phase. */
function newestOfPhase(rows) {
  return [...new Map(rows.map((row) => [`${row.chart} ${row.phase}`, row])).values()];
}
