// The other way round: the radius that a gap, chord, rise or end offset measured on the piece shows.

import { closingForm, onCentreline } from "./closing-form.js";
import { h } from "./dom.js";
import { field, options, values } from "./forms.js";
import { length, unit } from "./units.js";

export class ClosingShown {
  constructor(job) {
    this.feature = field({ name: "feature", label: "What was measured", kind: "choice" });
    this.element = closingForm({
      label: "What a measured piece shows",
      title: "Measured it? What radius does that show?",
      parts: [
        h(
          "div",
          { class: "fields" },
          this.feature,
          field({ name: "measuredMm", label: "Measured", kind: "length", required: true }),
          field({ name: "uncertaintyMm", label: "Its standard uncertainty", kind: "length" }),
        ),
      ],
      button: "Show the radius",
      path: () => `api/jobs/${job.id}/closing/radius?${this.given()}`,
      told,
    });
  }

  show(features) {
    options(
      this.feature,
      features.map(({ feature, name }) => [feature, name]),
    );
  }

  given() {
    const all = Object.entries(values(this.element));
    return new URLSearchParams(all.filter(([, value]) => value !== null && value !== ""));
  }
}

function told(shown) {
  const off = shown.radiusMm - shown.targetMm;
  const way = off > 0 ? "wider" : "tighter";
  const against =
    Math.abs(off) < 0.05 ? "the target" : `${length(Math.abs(off), 1)}\u00a0${unit()} ${way} than the target`;
  return `${onCentreline(shown)}: ${against}.`;
}
