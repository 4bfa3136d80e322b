// The pieces of a job as bent beside the same pieces as advised.

import { get } from "./api.js";
import { h, table } from "./dom.js";
import { length, unit } from "./units.js";

/** Not seen where it can't be told. */
export class AsAdvised {
  constructor(job) {
    this.path = `/api/jobs/${job.id}/as-advised`;
    this.element = h("div", { class: "form", hidden: true });
  }

  /** How many pieces of the job are remembered with their advice. */
  async show() {
    const found = await get(this.path);
    this.element.hidden = found.advised === null;
    if (found.advised) this.element.replaceChildren(...told(found));
    return found.pieces;
  }
}

function told({ pieces, bent, advised }) {
  const rows = [
    { name: "As bent", ...bent },
    { name: "As advised", ...advised },
  ];
  return [
    h("h3", {}, "As bent, and as advised"),
    table(
      "As bent, and as advised",
      [
        { head: `The newest ${pieces} pieces`, kind: "lead", cell: (row) => row.name },
        {
          head: `Deviation, ${unit()} (root mean square)`,
          number: true,
          cell: (row) => length(row.rootMeanSquareMm, 1),
        },
        {
          head: "Out of tolerance",
          number: true,
          cell: (row) => `${row.out} (${((100 * row.out) / pieces).toFixed(1)} %)`,
        },
        { head: "Corrections", number: true, cell: (row) => String(row.corrections) },
      ],
      rows,
    ),
    h(
      "p",
      { class: "small" },
      "As advised is computed: from the same pieces, what was done at the rollers is taken off and what was " +
        "advised put on, by what one unit of the scale was found to do.",
    ),
  ];
}
