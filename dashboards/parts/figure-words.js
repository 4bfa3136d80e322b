// Figures as shown: digits that mean something, names, intervals, method and source.

import { h } from "./dom.js";
import { fixed, inches, inUnit, unit } from "./units.js";

export const groups = [
  [
    "Location and spread",
    ["n", "mean", "minimum", "maximum", "range", "standardDeviationWithin", "standardDeviationOverall"],
  ],
  [
    "Capability",
    [
      "Cp",
      "Cpk",
      "Pp",
      "Ppk",
      "Cpm",
      "CpkLower",
      "CpkUpper",
      "PpkLower",
      "PpkUpper",
      "PpPercentile",
      "PpkPercentile",
      "PpkExact",
      "PpkBootstrap",
    ],
  ],
  [
    "Out of the limits",
    [
      "observedBelowPpm",
      "observedAbovePpm",
      "expectedPpmWithin",
      "expectedPpmOverall",
      "expectedBelowPpmFitted",
      "expectedAbovePpmFitted",
      "expectedBelowPpmWithin",
      "expectedAbovePpmWithin",
      "expectedBelowPpmOverall",
      "expectedAbovePpmOverall",
    ],
  ],
  [
    "Gauge contribution",
    [
      "gaugeStandardDeviation",
      "gaugeShare",
      "gaugeBias",
      "CpWithoutGauge",
      "CpkWithoutGauge",
      "PpWithoutGauge",
      "PpkWithoutGauge",
    ],
  ],
  [
    "Shape",
    [
      "andersonDarling",
      "normalityPValue",
      "skewness",
      "kurtosis",
      "autocorrelation",
      "percentile0.135",
      "percentile50",
      "percentile99.865",
    ],
  ],
];

/** Value and interval in the viewer's unit, without it. */
export function figureText(figure, value = figure.value) {
  if (value === null || value === undefined) return "–";
  if (figure.name === "n") return String(value);
  if (figure.unit === "ppm") return value > 0 && value < 0.1 ? "< 0.1" : fixed(value, value >= 100 ? 0 : 1);
  const size = figure.unit === "mm" ? inUnit(value) : value;
  return fixed(size, digitsOf(figure));
}

function digitsOf(figure) {
  if (figure.unit !== "mm") return /PValue/.test(figure.name) ? 3 : 2;
  const fine = /Deviation|range/.test(figure.name) ? 3 : 2;
  return inches() ? fine + 2 : fine;
}

export function unitText(figure) {
  return figure.unit === "mm" ? unit() : figure.unit;
}

export function intervalText(figure) {
  if (figure.lower === null && figure.upper === null) return "";
  const end = (value) => (value === null ? "open" : figureText(figure, value));
  return `${end(figure.lower)} to ${end(figure.upper)}`;
}

/** The few figures to see first. */
export function keyFigures(statistics, names) {
  const rows = names.map((name) => statistics.figures.find((each) => each.name === name)).filter(Boolean);
  return h(
    "dl",
    { class: "figures" },
    rows.map((figure) =>
      h(
        "div",
        {},
        h("dt", {}, figure.unit ? `${figure.title}, ${unitText(figure)}` : figure.title),
        h(
          "dd",
          { data: { figure: figure.name } },
          figureText(figure),
          intervalText(figure) ? h("span", { class: "interval" }, intervalText(figure)) : null,
        ),
      ),
    ),
  );
}

/** Every figure, grouped, with what it says and how it was computed. */
export function figureTables(statistics) {
  const listed = new Set(groups.flatMap(([, names]) => names));
  const rest = statistics.figures.map((each) => each.name).filter((name) => !listed.has(name));
  return [...groups, ["More", rest]].map(([title, names]) => group(title, names, statistics)).filter(Boolean);
}

function group(title, names, statistics) {
  const rows = names.map((name) => statistics.figures.find((each) => each.name === name)).filter(Boolean);
  if (rows.length === 0) return null;
  return h(
    "div",
    { class: "table figure-list", tabindex: "0", role: "region", "aria-label": `Figures: ${title}` },
    h(
      "table",
      {},
      h("caption", {}, title),
      h(
        "thead",
        {},
        h(
          "tr",
          {},
          ["Figure", "Value", "95 % interval"].map((head, i) =>
            h("th", { scope: "col", class: i > 0 ? "number" : null }, head),
          ),
        ),
      ),
      h("tbody", {}, rows.map(row)),
    ),
  );
}

function row(figure) {
  const confidence = `${100 * (figure.confidence ?? 0.95)} %`;
  const percent = confidence === "95 %" ? null : h("span", { class: "narrow-hide" }, ` at ${confidence}`);
  return h(
    "tr",
    {},
    h("th", { scope: "row" }, h("strong", {}, figure.title), about(figure)),
    h(
      "td",
      { class: "number value" },
      `${figureText(figure)} ${figure.value === null ? "" : unitText(figure)}`.trim(),
    ),
    h("td", { class: "number interval", data: { head: confidence } }, intervalText(figure), percent),
  );
}

function about(figure) {
  const sentence = (words) => `${words[0]?.toUpperCase() ?? ""}${words.slice(1)}.`;
  if (figure.value === null) return h("p", { class: "meaning" }, `Not given: ${figure.method}.`);
  const meaning = (where) => (figure.meaning ? h("p", { class: where }, sentence(figure.meaning)) : null);
  return h(
    "div",
    { class: "meaning" },
    meaning("narrow-hide"),
    h(
      "details",
      { data: { of: figure.name } },
      h("summary", {}, "How", h("span", { class: "narrow-unseen" }, " it is computed")),
      meaning("narrow-only"),
      h("p", {}, sentence(figure.method)),
      figure.source ? h("p", {}, `Source: ${figure.source}.`) : null,
    ),
  );
}
