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
      "expectedBelowPpmFitted",
      "expectedBelowPpmWithin",
      "expectedBelowPpmOverall",
      "observedAbovePpm",
      "expectedAbovePpmFitted",
      "expectedAbovePpmWithin",
      "expectedAbovePpmOverall",
      "expectedPpmWithin",
      "expectedPpmOverall",
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
  if (/PValue/.test(figure.name) && value < 0.001) return "< 0.001";
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

let ids = 0;

/** Every figure, grouped, in short rows; what it says and how it was computed on request. */
export function figureTables(statistics) {
  const listed = new Set(groups.flatMap(([, names]) => names));
  const rest = statistics.figures.map((each) => each.name).filter((name) => !listed.has(name));
  const tables = [...groups, ["More", rest]]
    .map(([title, names]) => group(title, names, statistics))
    .filter(Boolean);
  tables.forEach(oneStop);
  return tables;
}

/** One stop of the Tab key for a table; the arrow keys go from figure to figure. */
function oneStop(place) {
  const buttons = [...place.querySelectorAll("button.figure-name")];
  buttons.forEach((button, i) => {
    button.tabIndex = i === 0 ? 0 : -1;
    button.addEventListener("keydown", (event) => {
      const to = { ArrowDown: i + 1, ArrowUp: i - 1, Home: 0, End: buttons.length - 1 }[event.key];
      if (!buttons[to]) return;
      buttons.forEach((each) => (each.tabIndex = -1));
      buttons[to].tabIndex = 0;
      buttons[to].focus();
      event.preventDefault();
    });
  });
}

function group(title, names, statistics) {
  const rows = names.map((name) => statistics.figures.find((each) => each.name === name)).filter(Boolean);
  if (rows.length === 0) return null;
  return h(
    "div",
    { class: "table figure-list", role: "region", "aria-label": `Figures: ${title}` },
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
  const level = figure.confidence ?? 0.95;
  const confidence = `${100 * level}\u00a0%`;
  const percent = level === 0.95 ? null : h("span", {}, ` at ${confidence}`);
  const id = `how-${++ids}`;
  return h(
    "tr",
    {},
    h(
      "th",
      { scope: "row" },
      h("button", { class: "figure-name", type: "button", popovertarget: id }, figure.title),
      about(figure, id),
    ),
    h(
      "td",
      { class: "number value" },
      `${figureText(figure)}\u00a0${figure.value === null ? "" : unitText(figure)}`.trim(),
    ),
    h("td", { class: "number interval", data: { head: confidence } }, intervalText(figure), percent),
  );
}

/** What a figure says, how it is computed and where that is from; shown beside the page on request. */
function about(figure, id) {
  const sentence = (words) => `${words[0]?.toUpperCase() ?? ""}${words.slice(1)}.`;
  const part = (head, words) => (words ? [h("h4", {}, head), h("p", {}, sentence(words))] : []);
  return h(
    "div",
    { class: "how", popover: "auto", id, role: "dialog", "aria-label": figure.title },
    h("h3", {}, figure.title),
    ...part("What it says", figure.meaning),
    ...part(figure.value === null ? "Why it is not given" : "How it is computed", figure.method),
    ...part("Source", figure.source),
  );
}
