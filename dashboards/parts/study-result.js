// What a study found: verdict, figures with intervals, tests, and every measurement.

import { h, table } from "./dom.js";
import { verdictSign } from "./study-states.js";
import { length, shownIn, unit } from "./units.js";
import words from "../api/words.js";

/** The sheets of a result around its charts; again(id) measures one step again while the study has not ended. */
export function resultOf(result, study, again, charts) {
  const ended = study.state === "DONE" || study.state === "ABANDONED";
  const main = result.figures.filter(({ name }) => result.mainFigures.includes(name));
  return [
    sheet(
      "What it found",
      found(result),
      result.budget ? h("p", {}, result.budget.says) : null,
      cautions(result.cautions),
      result.instead ? instead(result.instead, study) : null,
      figures("Main figures", main),
      h(
        "details",
        {},
        h("summary", { class: "button plain" }, "All figures"),
        figures("All figures", result.figures),
        ...result.alternatives.map(({ name, figures: other }) => figures(capital(name), other)),
      ),
    ),
    charts,
    ...(result.process ? [processOf(result.process)] : []),
    sheet("How it was worked out", tests(result.tests), anova(result.analysisOfVariance)),
    sheet(
      "Measurements",
      h(
        "details",
        {},
        h("summary", { class: "button plain" }, `All ${result.measurements.length} measurements`),
        measurements(result.measurements, words.studySpots[study.kind], ended ? null : again),
      ),
    ),
  ];
}

/** What this study and those on masters say together of the measuring process. */
function processOf(process) {
  return sheet(
    "The measuring process",
    found(process),
    process.budget ? h("p", {}, process.budget.says) : null,
    h("p", { class: "small" }, `By ISO 22514-7, from ${process.from.join(", ")}. ${process.holds}`),
    cautions(process.cautions),
    h(
      "details",
      {},
      h("summary", { class: "button plain" }, "All figures of the process"),
      figures("Figures of the process", process.figures),
    ),
  );
}

/** The verdict as a sign, and what it rests on, which begins with the same words where it stands alone. */
function found({ verdict, says }) {
  const word = `${words.studyVerdicts[verdict]}: `;
  return h(
    "p",
    {},
    verdictSign(verdict),
    " ",
    says.startsWith(word) ? capital(says.slice(word.length)) : says,
  );
}

const capital = (words) => `${words[0].toUpperCase()}${words.slice(1)}`;

function sheet(title, ...children) {
  return h("section", { class: "sheet", "aria-label": title }, h("h2", {}, title), ...children);
}

function cautions(all) {
  return all.length ? h("ul", { class: "cautions" }, ...all.map((each) => h("li", {}, each))) : null;
}

const decimals = (value, significant) =>
  Math.min(12, Math.max(0, significant - 1 - Math.floor(Math.log10(Math.abs(value) * (1 + 1e-9)))));

/** As measure.Decimals has it: three significant digits or more, two of half the interval at least. */
function digits(value, lower = null, upper = null) {
  if (Number.isInteger(value)) return String(value).replace("-", "−");
  const open = lower === null || upper === null || lower === upper;
  const least = open ? 0 : decimals((upper - lower) / 2, 2);
  return value.toFixed(Math.max(least, decimals(value, 3))).replace("-", "−");
}

/** Where the study itself shows that it is the wrong one: the right one, to be planned. */
function instead(kind, { station }) {
  const query = new URLSearchParams({ station, kind });
  return h("a", { class: "button", href: `studies.html?${query}#plan` }, `Plan: ${words.studyKinds[kind]}`);
}

function figures(title, all) {
  const shown = (value, f) => (value === null ? null : shownIn(value, f.unit).value);
  const told = (value, f, none) =>
    value === null ? none : digits(shown(value, f), shown(f.lower, f), shown(f.upper, f));
  return table(
    title,
    [
      { head: title, cell: (f) => capital(f.words) },
      {
        head: "Value",
        number: true,
        cell: (f) => `${told(f.value, f, "–")}\u00a0${shownIn(0, f.unit).unit}`.trim(),
      },
      {
        head: "95 % interval",
        number: true,
        cell: (f) =>
          f.confidence === null || (f.lower === null && f.upper === null)
            ? "–"
            : `${told(f.lower, f, "open")} to ${told(f.upper, f, "open")}`,
      },
      {
        head: "Verdict",
        cell: (f) =>
          f.judged ? h("span", {}, verdictSign(f.judged.verdict), ` ${f.judged.criterion}`) : "–",
      },
    ],
    all,
  );
}

function tests(all) {
  return all.length
    ? h("ul", {}, ...all.map(({ name, says }) => h("li", {}, h("strong", {}, capital(name)), `: ${says}`)))
    : null;
}

function anova(rows) {
  if (rows.length === 0) return null;
  return table(
    "Analysis of variance",
    [
      { head: "Source", cell: (r) => capital(r.source) },
      { head: "Degrees of freedom", number: true, cell: (r) => digits(r.degreesOfFreedom) },
      { head: "Sum of squares", number: true, cell: (r) => r.sumOfSquares.toExponential(3) },
      {
        head: "Mean square",
        number: true,
        cell: (r) => (r.meanSquare === null ? "–" : r.meanSquare.toExponential(3)),
      },
      { head: "F", number: true, cell: (r) => (r.f === null ? "–" : digits(r.f)) },
      { head: "p", number: true, cell: (r) => (r.p === null ? "–" : r.p < 0.001 ? "< 0.001" : digits(r.p)) },
    ],
    rows,
  );
}

function measurements(all, spot, again) {
  return table(
    "All measurements",
    [
      { head: "Step", number: true, cell: (m) => String(m.step) },
      { head: "Operator", cell: (m) => m.operator },
      { head: spot, cell: (m) => (m.place ? `${m.part}, ${m.place}` : m.part) },
      { head: "Repeat", number: true, cell: (m) => String(m.repeat) },
      { head: `Radius, ${unit()}`, number: true, cell: (m) => length(m.radiusMm, 2) },
      { head: `Depth, ${unit()}`, number: true, cell: (m) => length(m.depthMm, 4) },
      {
        head: "",
        cell: (m) =>
          again
            ? h(
                "button",
                {
                  class: "button plain",
                  type: "button",
                  "aria-label": `Measure step ${m.step} again`,
                  on: { click: () => again(m.id) },
                },
                "Again",
              )
            : "",
      },
    ],
    all,
  );
}
