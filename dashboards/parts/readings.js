// The last readings as a table.

import { h, table } from "./dom.js";
import { time } from "./times.js";
import { length, radius, unit } from "./units.js";
import words from "../api/words.js";

/** Newest first; out holds the ids of those excluded; fresh is the id of one just recorded. */
export function showReadings(place, readings, out = new Set(), fresh = null) {
  if (readings.length === 0) {
    place.replaceChildren(h("p", { class: "empty" }, "None yet in this job."));
    return;
  }
  const several = new Set(readings.map((each) => each.position)).size > 1;
  const columns = [
    { head: "Time", kind: "side-time", cell: (r) => time(r.at) },
    { head: "Piece", number: true, cell: (r) => r.piece },
    ...(readings.some((each) => each.pass > 1)
      ? [{ head: "Pass", number: true, cell: (r) => String(r.pass) }]
      : []),
    ...(several ? [{ head: "Position", cell: (r) => r.position }] : []),
    { head: `Depth, ${unit()}`, number: true, kind: "side-figure", cell: (r) => length(r.depthMm, 3) },
    { head: `Radius, ${unit()}`, number: true, kind: "radius-cell", cell: (r) => figures(r) },
    {
      head: "Decision",
      cell: (r) =>
        out.has(r.id)
          ? "Excluded"
          : h("span", { class: "decision", data: { decision: r.decision } }, words.decisions[r.decision]),
    },
  ];
  place.replaceChildren(table("Last readings", columns, readings, false));
  place.querySelectorAll("tbody tr").forEach((row, i) => {
    row.dataset.reading = readings[i].id;
    row.classList.toggle("fresh", readings[i].id === fresh);
    if (out.has(readings[i].id)) row.dataset.out = "";
  });
}

function figures(reading) {
  const { value, plusMinus } = radius(reading);
  return h("span", {}, value, h("small", {}, ` ${plusMinus}`));
}
