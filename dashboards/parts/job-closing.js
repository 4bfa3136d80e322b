// How the newest piece of a ring or an arc closes, where the job has a developed length or angle.

import { get } from "./api.js";
import { ClosingRing } from "./closing-ring.js";
import { ClosingShown } from "./closing-shown.js";
import { h, table } from "./dom.js";
import { length, unit } from "./units.js";

export class JobClosing {
  constructor(job) {
    this.job = job;
    this.body = h("div", { class: "form" });
    this.shown = new ClosingShown(job);
    this.ring = new ClosingRing(job);
    this.asked = h("div", { class: "form" }, this.shown.element, this.ring.element);
    this.element = h(
      "section",
      { class: "sheet form", "aria-label": "Closing", hidden: true },
      h("h2", {}, "Does it close?"),
      this.body,
      this.asked,
    );
  }

  async show(job) {
    this.job = job;
    const { developedLengthMm, developedAngleDegrees } = this.job.details;
    this.element.hidden = (developedLengthMm ?? developedAngleDegrees) === null || this.job.readings === 0;
    if (this.element.hidden) return;
    const closing = await get(`api/jobs/${this.job.id}/closing`).catch((problem) => {
      if (problem.status !== 404 && problem.status !== 400) throw problem;
      return { refused: problem.message };
    });
    this.asked.hidden = Boolean(closing.refused);
    this.body.replaceChildren(...(closing.refused ? [h("p", {}, closing.refused)] : told(closing)));
    if (closing.refused) return;
    this.shown.show(closing.features);
    await this.ring.show(closing);
  }
}

function told(closing) {
  const { piece, radiusMm, radiusStandardUncertaintyMm: u, angleDegrees, fixed } = closing;
  const how =
    fixed === "LENGTH" ? "cut to length before bending" : "the ends are cut to the angle after bending";
  return [
    h(
      "p",
      {},
      `Piece ${piece} on the centreline: ${length(radiusMm, 1)} ±\u00a0${length(2 * u, 1)}\u00a0${unit()}, target ` +
        `${length(closing.targetMm, 1)}\u00a0${unit()} over ${angleDegrees.toFixed(1)}°; ${how}.`,
    ),
    table(
      "What can be measured on it",
      [
        { head: "Feature", cell: (each) => each.name },
        { head: `Is, ${unit()}`, number: true, cell: (each) => length(each.valueMm, 1) },
        { head: "±", number: true, cell: (each) => length(2 * each.standardUncertaintyMm, 1) },
        { head: `To be, ${unit()}`, number: true, cell: (each) => length(each.targetMm, 1) },
        {
          head: `For 1 ${unit()} of radius`,
          number: true,
          cell: (each) => each.perMm.toFixed(3).replace("-", "−"),
        },
      ],
      closing.features,
    ),
    h("p", { class: "small" }, `Check it by the ${closing.checkBy}: that changes most with the radius.`),
  ];
}
