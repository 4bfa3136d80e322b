// A reading in large: decision, radius ± U on the specified face, what it means, and where it lies.

import { h } from "./dom.js";
import { drawRuler } from "./ruler.js";
import { time } from "./times.js";
import { length, radius, unit } from "./units.js";
import { decisions, faces, marks, meaning } from "./words.js";

/** Shows the newest reading of a job, or what to do where there is none. */
export function showHeadline(place, reading, job) {
  if (!job)
    place.replaceChildren(
      empty("No job is selected.", "Select one under More, or open a job on the Jobs page."),
    );
  else if (!reading)
    place.replaceChildren(
      empty("No reading yet.", "Zero the bridge on the flat, then stand it on the piece and hold it still."),
    );
  else place.replaceChildren(...large(reading, job.specification));
}

function empty(what, advice) {
  return h("div", { class: "empty" }, h("p", { class: "meaning" }, what), h("p", {}, advice));
}

function large(reading, specification) {
  const figures = radius(reading);
  const huge = h("span", { class: "huge", id: "radius" }, figures.value);
  const widest = Math.max(...figures.plusMinus.split(" −").map((each) => each.length));
  // Characters that the figure needs, with room for a long ±.
  huge.style.setProperty("--chars", Math.max(5, figures.value.length) + 0.4 * Math.max(0, widest - 4));
  const ruler = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  drawRuler(ruler, reading, specification);
  return [
    h(
      "p",
      { class: "decision verdict", role: "status", data: { decision: reading.decision } },
      decisions[reading.decision],
    ),
    h(
      "p",
      { class: "radius" },
      huge,
      ...(reading.radiusMm === null
        ? []
        : [
            h(
              "span",
              { class: "plus-minus" },
              figures.plusMinus.split(" −").map((each, i) => h("span", {}, i ? ` −${each}` : each)),
            ),
            h("span", { class: "unit of" }, unit()),
          ]),
    ),
    h("p", { class: "meaning" }, meaning(reading, specification)),
    h(
      "p",
      { class: "of" },
      `Radius on the ${faces[specification.face]}, wanted ${length(specification.targetMm, 1)}. `,
      `Piece ${reading.piece}, ${reading.position}, `,
      time(reading.at),
      ...(reading.marks.length ? [`; ${reading.marks.map((each) => marks[each]).join(", ")}`] : []),
      ".",
    ),
    ruler,
  ];
}
