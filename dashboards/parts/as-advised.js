// The pieces of a job as bent beside the same pieces as advised.

import { get } from "./api.js";
import { h, table } from "./dom.js";
import { length, unit } from "./units.js";

/** Not seen where it can't be told. */
export class AsAdvised {
  constructor(job) {
    this.path = `api/jobs/${job.id}/as-advised`;
    this.element = h("div", { class: "form", hidden: true });
  }

  /** How many pieces of the job are remembered with their advice. */
  async show() {
    const found = await get(this.path);
    this.element.hidden = found.compared === null;
    if (found.compared) this.element.replaceChildren(...told(found.compared));
    return found.pieces;
  }
}

function told({ pieces, bent, advised, gainUncertainty, less, more }) {
  const rows = [
    { name: "As bent", courses: [bent] },
    { name: "As advised", courses: [advised, less, more] },
  ];
  const column = (head, of, say) => ({
    head,
    number: true,
    cell: ({ courses }) => ranged(courses.map(of), say),
  });
  return [
    h("h3", {}, "As bent, and as advised"),
    table(
      "As bent, and as advised",
      [
        { head: `The newest ${pieces} pieces`, kind: "lead", cell: (row) => row.name },
        column(
          `Deviation, ${unit()} (root mean square)`,
          (course) => course.rootMeanSquareMm,
          (mm) => length(mm, 1),
        ),
        column("Beyond a limit", (course) => course.out, String),
        column("Corrections", (course) => course.corrections, String),
      ],
      rows,
    ),
    h(
      "p",
      { class: "small" },
      "As advised is computed: from the same pieces, what was done at the rollers is taken off and what was " +
        "advised put on, by what one unit of the scale was found to do. That is known to " +
        `±\u00a0${(100 * gainUncertainty).toFixed(0)}\u00a0% (k = 2): in brackets, the least and the most that ` +
        "come of it.",
    ),
  ];
}

/** The first value, with the least and the greatest of all where they are said otherwise. */
function ranged(values, say) {
  const [found, low, high] = [values[0], Math.min(...values), Math.max(...values)].map(say);
  return low === high ? found : `${found} (${low} to ${high})`;
}
