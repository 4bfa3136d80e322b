// One piece that ran through: the radius along it, what was found, how it closes.

import { get } from "./api.js";
import { Chart } from "./chart.js";
import { facts, h } from "./dom.js";
import { fixed, length, radius, unit } from "./units.js";
import words from "../api/words.js";

export class LinePiece {
  constructor() {
    this.title = h("h2", {}, "Piece");
    this.chart = new Chart(h("div", { class: "chart-box" }), { height: 380, newestFirst: false });
    this.body = h("div", { class: "form" });
    this.element = h(
      "section",
      { class: "sheet form", "aria-label": "Piece", hidden: true },
      this.title,
      this.chart.container,
      this.body,
    );
  }

  async show(reading) {
    const path = `api/readings/${reading}/profile`;
    const piece = await get(path);
    this.element.hidden = false;
    this.title.textContent = `Piece ${piece.piece}`;
    this.body.replaceChildren(
      h(
        "p",
        { class: "small" },
        `Bold: the radius along the piece. Shaded: the evaluated length with its uncertainty; each place is a ` +
          `mean over ${length(piece.spanMm, 0)}\u00a0${unit()}. The straight ends leave at the top.`,
      ),
      facts(figures(piece)),
    );
    await this.chart.show(`${path}/chart`);
  }
}

const capital = (text) => `${text[0].toUpperCase()}${text.slice(1)}`;
const mm = (value, digits = 0) => `${length(value, digits)}\u00a0${unit()}`;
const within = ({ value, uncertainty }, digits) =>
  `${length(value, digits)} ±\u00a0${length(uncertainty, digits)}\u00a0${unit()}`;
const percent = (value) => `${fixed(value, 2)}\u00a0%`;

function figures(piece) {
  const { value, plusMinus } = radius(piece);
  return [
    ["Mean radius", `${value} ${plusMinus}\u00a0${unit()}`],
    ["Evaluated", `${mm(piece.evaluatedFromMm)} to ${mm(piece.evaluatedToMm)} of ${mm(piece.touchedMm)}`],
    ...decisions(piece.inside),
    ...evenness(piece.along),
    ...(piece.passes > 1 ? [["Ran through", `${piece.passes} times; the last one counts`]] : []),
    ["Chord and rise", `${within(piece.shape.chordMm, 1)}; ${within(piece.shape.riseMm, 1)}, ends taken as straight`],
    ...closing(piece.closing),
    ...piece.notes.map((note, i) => [i === 0 ? "Noted" : "", capital(note)]),
  ];
}

function decisions(inside) {
  if (inside.decision === "NO_LIMITS") return [];
  const outside =
    inside.longestOutsideFromMm === null
      ? ""
      : `; longest stretch outside: ${mm(inside.longestOutsideFromMm)} to ${mm(inside.longestOutsideToMm)}`;
  return [
    ["Decision", `${words.decisions[inside.decision]}, by ${words.decideBy[inside.decideBy]}`],
    [
      "By its mean; everywhere",
      `${words.decisions[inside.byMean]}; ${words.decisions[inside.everywhere].toLowerCase()}`,
    ],
    ["Inside by more than the guard band", `${inside.insidePercent.toFixed(0)}\u00a0% of the length${outside}`],
  ];
}

function evenness(along) {
  const ends =
    along.startPercent === null
      ? []
      : [
          [
            "Start, end less the rest",
            `${percent(along.startPercent)}, ${percent(along.endPercent)} ` +
              `±\u00a0${percent(along.endsUncertaintyPercent)}`,
          ],
        ];
  return [
    ["Range of curvature", `${percent(along.rangePercent)}, of which noise alone makes ${percent(along.noisePercent)}`],
    ["End less start", `${percent(along.trendPercent)} ±\u00a0${percent(along.trendUncertaintyPercent)} of curvature`],
    ...ends,
  ];
}

function closing(closes) {
  if (closes === null) return [];
  const turn = `${closes.turnDegrees.value.toFixed(2)} ±\u00a0${closes.turnDegrees.uncertainty.toFixed(2)}°`;
  return [
    ["Turn between the ends of the bend", `${turn}, asked for ${closes.askedDegrees.toFixed(2)}°`],
    ...(closes.gapMm === null
      ? []
      : [["Closed as a ring", `gap ${within(closes.gapMm, 1)}, offset ${within(closes.offsetMm, 1)}`]]),
  ];
}
