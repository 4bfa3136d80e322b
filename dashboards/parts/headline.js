// A reading in large: verdict, radius ± U on the specified face, what to do, and where it lies.

import words from "/api/words.js";
import { h } from "./dom.js";
import { kindOf } from "./findings.js";
import { drawRuler } from "./ruler.js";
import { time } from "./times.js";
import { length, radius, unit } from "./units.js";

/** Shows the newest reading of a job with what the service says of it, or what to do where there is none. */
export function showHeadline(place, { lastReading: reading, piece, job }) {
  if (!job)
    place.replaceChildren(
      empty("No job chosen.", "Choose one under More at the station, or create one on the Jobs page."),
    );
  else if (!reading)
    place.replaceChildren(
      empty("No reading yet.", "Set zero on the flat, then stand the bridge on the piece and hold it still."),
    );
  else place.replaceChildren(...large(reading, piece, job.specification));
}

function empty(what, advice) {
  return h("div", { class: "empty" }, h("p", { class: "meaning" }, what), h("p", {}, advice));
}

function large(reading, { tone, word, reason, advice }, specification) {
  const figures = radius(reading);
  const huge = h("span", { class: "huge", id: "radius" }, figures.value);
  const widest = Math.max(...figures.plusMinus.split(" −").map((each) => each.length));
  // Characters that the figure needs, with room for a long ±.
  huge.style.setProperty("--chars", Math.max(5, figures.value.length) + 0.4 * Math.max(0, widest - 4));
  const ruler = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  drawRuler(ruler, reading, specification);
  return [
    h("p", { class: "state verdict", role: "status", data: { state: kindOf(tone) } }, word),
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
    h("p", { class: "meaning" }, [reason, advice].filter(Boolean).join(" ")),
    h(
      "p",
      { class: "of" },
      `Radius on the ${words.faces[specification.face]}, target ${length(specification.targetMm, 1)}. `,
      `Piece ${reading.piece}, ${reading.position}, `,
      time(reading.at),
      ...(reading.marks.length ? [`; ${reading.marks.map((each) => words.marks[each]).join(", ")}`] : []),
      ".",
    ),
    ruler,
  ];
}
