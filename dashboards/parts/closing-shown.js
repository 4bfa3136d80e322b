// The other way round: the radius that a gap, chord, rise or end offset measured on the piece shows.

import { get } from "./api.js";
import { h } from "./dom.js";
import { field, options, showFaults, values } from "./forms.js";
import { length, unit } from "./units.js";
import words from "/api/words.js";

export class ClosingShown {
  constructor(job) {
    this.job = job;
    this.feature = field({ name: "feature", label: "What was measured", kind: "choice" });
    this.answer = h("p", { class: "closing-answer", role: "status" });
    this.element = h(
      "form",
      { class: "form", "aria-label": "What a measured piece shows" },
      h("h3", {}, "Measured it? What radius does that show?"),
      h(
        "div",
        { class: "fields" },
        this.feature,
        field({ name: "measuredMm", label: "Measured", kind: "length", required: true }),
        field({ name: "uncertaintyMm", label: "Its standard uncertainty", kind: "length" }),
      ),
      h("p", { class: "fault general", role: "alert" }),
      h("div", { class: "row" }, h("button", { class: "button plain", type: "submit" }, "Show the radius")),
      this.answer,
    );
    this.element.addEventListener("submit", (event) => {
      event.preventDefault();
      this.ask();
    });
  }

  show(features) {
    options(
      this.feature,
      features.map(({ feature, name }) => [feature, name]),
    );
  }

  async ask() {
    showFaults(this.element);
    this.answer.textContent = "";
    try {
      this.answer.textContent = told(await get(this.path()));
    } catch (problem) {
      showFaults(this.element, problem);
    }
  }

  path() {
    const given = Object.entries(values(this.element)).filter(([, value]) => value !== null && value !== "");
    return `/api/jobs/${this.job.id}/closing/radius?${new URLSearchParams(given)}`;
  }
}

function told(shown) {
  const { radiusMm, standardUncertaintyMm: u, targetMm, face, specifiedRadiusMm } = shown;
  const uncertain = u > 0 ? ` ± ${length(2 * u, 2)}` : "";
  const off = radiusMm - targetMm;
  const way = off > 0 ? "wider" : "tighter";
  const against =
    Math.abs(off) < 0.005 ? "the target" : `${length(Math.abs(off), 2)} ${unit()} ${way} than the target`;
  const onFace =
    face === "CENTRELINE" ? "" : `, ${length(specifiedRadiusMm, 2)} ${unit()} on the ${faceOf(face)}`;
  return `Radius on the centreline ${length(radiusMm, 2)}${uncertain} ${unit()}: ${against}${onFace}.`;
}

const faceOf = (face) => words.faces[face].toLowerCase();
