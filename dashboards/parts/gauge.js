// The gauge of a station: bridge, zero, calibration, checks, uncertainty, which bridge suits.

import { asked, get } from "./api.js";
import { $, facts, h, state, table } from "./dom.js";
import { frame, showTrouble } from "./frame.js";
import { bridgesOf, calibration, checksOf, mastersOf, sheet, zerosOf } from "./gauge-sheets.js";
import { told } from "./findings.js";
import { stateSign } from "./study-states.js";
import { dateTime } from "./times.js";
import { length, plainLength, unit, withUnit } from "./units.js";
import { showAdvice, showBudget } from "./uncertainty.js";

async function start() {
  frame("gauges");
  const stations = await get("api/stations");
  const name = asked("station") ?? stations[0]?.station;
  if (!name) {
    $("gauge").removeAttribute("aria-busy");
    $("gauge").replaceChildren(
      h(
        "div",
        { class: "sheet empty" },
        h("p", {}, "There is no station yet, so there is no gauge."),
        h("a", { class: "button main", href: "add-station.html" }, "Add a station"),
      ),
    );
    return;
  }
  $("others").replaceChildren(
    h(
      "a",
      { class: "button", href: `station-settings.html?station=${encodeURIComponent(name)}` },
      "Station settings",
    ),
  );
  if (stations.length > 1)
    $("others").append(
      ...stations.map(({ station }) =>
        h(
          "a",
          {
            class: "button",
            href: `gauge.html?station=${encodeURIComponent(station)}`,
            "aria-current": station === name && "page",
          },
          station,
        ),
      ),
    );
  $("title").textContent = `Gauge of ${name}`;
  await load(name);
}

async function load(name) {
  const path = `api/stations/${encodeURIComponent(name)}`;
  const [gauge, summary, bridges, masters, calibrations, checks, zeros, studies] = await Promise.all([
    get(`${path}/gauge`),
    get(`${path}/overview`),
    get("api/bridges"),
    get("api/masters"),
    get("api/calibrations?limit=100"),
    get(`${path}/checks?limit=20`),
    get(`${path}/zeros?limit=10`),
    get("api/studies"),
  ]);
  const bench = {
    name,
    path,
    gauge,
    bridges,
    masters,
    job: summary.job,
    findings: summary.findings,
    load: () => load(name),
  };
  const budget = h("section", { class: "sheet" });
  const advice = h("section", { class: "sheet" });
  $("gauge").replaceChildren(
    h(
      "div",
      { class: "columns" },
      h("div", { class: "stack" }, fitness(bench), studiesOf(bench, studies), checksOf(bench, checks), zerosOf(zeros)),
      h(
        "div",
        { class: "stack" },
        calibration(
          bench,
          calibrations.filter((each) => each.station === name),
        ),
        bridgesOf(bench),
        mastersOf(bench),
      ),
    ),
    budget,
    advice,
  );
  $("gauge").className = "form";
  $("gauge").removeAttribute("aria-busy");
  await Promise.all([showBudget(budget, bench, summary.lastReading), showAdvice(advice, bench)]);
}

function fitness({ name, gauge, findings }) {
  const rows = findings
    .filter(({ issue }) => gauge.attention.includes(issue))
    .map(({ statement }) => h("li", {}, ...told(statement)));
  return sheet(
    "Fit to use?",
    h("a", { class: "button", href: `station.html?station=${encodeURIComponent(name)}` }, "To the station"),
    h(
      "ul",
      { class: "needs" },
      rows.length
        ? rows
        : h("li", {}, state("good", "Yes: zero set, calibrated, last check passed or none due")),
    ),
    gauge.inDoubtAfter
      ? h(
          "p",
          { class: "care-note" },
          "Readings since ",
          dateTime(gauge.inDoubtAfter),
          " are in doubt: a check failed and none passed since then.",
        )
      : null,
    facts([
      ["Bridge", gauge.bridge?.name ?? "none"],
      ["Span", gauge.bridge && withUnit(plainLength(gauge.bridge.spanMm))],
      [
        "Zero",
        gauge.zero
          ? h(
              "span",
              {},
              withUnit(length(gauge.zero.valueMm, 4)),
              " on the flat, ",
              dateTime(gauge.zero.takenAt),
              `, ${gauge.zero.takenBy}`,
            )
          : "none on this bridge",
      ],
      ["Zero good until", gauge.zeroFreshUntil && dateTime(gauge.zeroFreshUntil)],
      [
        "Indicator",
        `step ${plainLength(gauge.indicator.resolutionMm)}\u00a0${unit()}, permissible error ±\u00a0` +
          `${plainLength(gauge.indicator.permissibleErrorMm)}\u00a0${unit()}, travel ` +
          `${plainLength(gauge.indicator.travelMm)}\u00a0${unit()}`,
      ],
    ]),
  );
}

function studiesOf({ name }, all) {
  const here = all.filter((each) => each.station === name).slice(0, 5);
  return sheet(
    "Gauge studies",
    h(
      "a",
      { class: "button", href: `studies.html?station=${encodeURIComponent(name)}` },
      here.length ? "All studies" : "Plan a study",
    ),
    here.length === 0
      ? h(
          "p",
          { class: "empty" },
          "None yet. A study shows what operators, places and the gauge itself add to the scatter.",
        )
      : table(
          "Studies of this gauge",
          [
            { head: "Study", cell: (s) => h("a", { href: `study.html?id=${s.id}` }, s.name) },
            { head: "State", cell: (s) => stateSign(s.state) },
            { head: "Measured", number: true, cell: (s) => `${s.measured} of ${s.steps}` },
          ],
          here,
        ),
  );
}

start().catch((problem) => showTrouble($("gauge"), problem));
