// A ring welded of several pieces: the radius for those left to bend, and which ones to join.

import { get } from "./api.js";
import { closingForm, onCentreline } from "./closing-form.js";
import { h } from "./dom.js";
import { field, values } from "./forms.js";
import { fixed, length, unit } from "./units.js";

export class ClosingRing {
  constructor(job) {
    this.job = job;
    this.choices = h("fieldset", { class: "choices" });
    this.count = h("div");
    this.element = closingForm({
      label: "Ring of several pieces",
      title: "Is the ring welded of several pieces?",
      parts: [this.count, this.choices],
      button: "Close the ring",
      path: () => `api/jobs/${job.id}/closing/ring?${this.asked()}`,
      told: (ring) => (ring.rest ? toBend(ring) : toJoin(ring)),
      hidden: true,
    });
  }

  /** Only where pieces are cut to length and turn through less than a full circle. */
  async show({ fixed: kept, angleDegrees }) {
    this.element.hidden = kept !== "LENGTH" || angleDegrees > 359;
    if (this.element.hidden) return;
    if (!this.count.hasChildNodes()) {
      const usual = Math.max(2, Math.round(360 / angleDegrees));
      this.count.replaceChildren(
        field({ name: "pieces", label: "Pieces in one ring", kind: "number", value: usual }),
      );
    }
    this.offer(await get(`api/jobs/${this.job.id}/closing/pieces`));
  }

  offer(pieces) {
    const chosen = new Set(this.chosen());
    this.choices.replaceChildren(
      h("legend", {}, "Bent for this ring (tick more than it takes, and the best ones are chosen)"),
      ...pieces.map((each) =>
        h(
          "label",
          { class: "tick" },
          h("input", { type: "checkbox", value: each.piece, checked: chosen.has(String(each.piece)) }),
          ` Piece ${each.piece}: ${length(each.radiusMm, 1)}\u00a0${unit()}`,
        ),
      ),
    );
  }

  chosen() {
    return [...this.choices.querySelectorAll("input:checked")].map((each) => each.value);
  }

  asked() {
    const bent = this.chosen().map((piece) => ["bent", piece]);
    return new URLSearchParams([["pieces", values(this.count).pieces ?? ""], ...bent]);
  }
}

function toBend({ bent, kinkDegrees, rest }) {
  const so =
    bent.length === 0 ? "Nothing is bent yet" : `${fixed(kinkDegrees, 2)}° are left after ${numbered(bent)}`;
  const what = rest.pieces === 1 ? "the last piece" : `the other ${rest.pieces} pieces`;
  return `${so}: bend ${what} to ${onCentreline(rest)}.`;
}

function toJoin({ bent, kinkDegrees, joint }) {
  const u = length(2 * joint.standardUncertaintyMm, 1);
  const gap = `${length(Math.abs(joint.arcGapMm), 1)} ±\u00a0${u}\u00a0${unit()}`;
  const opens = joint.arcGapMm < 0 ? `overlaps by ${gap}` : `is open by ${gap}`;
  return (
    `Join ${bent.map((each) => each.piece).join(", ")} in this order. The last joint ${opens} along the arc, ` +
    `its ends ${length(joint.openingMm, 1)}\u00a0${unit()} apart, with a kink of ${fixed(kinkDegrees, 2)}°.`
  );
}

function numbered(bent) {
  const pieces = bent.map((each) => each.piece).reverse();
  return pieces.length === 1 ? `piece ${pieces[0]}` : `pieces ${pieces.join(", ")}`;
}
