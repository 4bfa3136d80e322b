// All stations at a glance, those that need attention first; a single one in full.

import { get } from "./api.js";
import { $, h, say, state } from "./dom.js";
import { frame, showTrouble } from "./frame.js";
import { showHeadline } from "./headline.js";
import { JobFigures } from "./job-figures.js";
import { follow } from "./live.js";
import { findingList, kindOf } from "./findings.js";
import { showReadings } from "./readings.js";
import { time } from "./times.js";
import { length, radius, unit } from "./units.js";
import words from "/api/words.js";

const ROWS = 6;
let figures = null;
let summaries = [];

async function start() {
  frame("stations");
  await load();
  follow(
    { liveMillis: 250 },
    {
      reading: loadSoon,
      state: stateChanged,
      happened: loadSoon,
      zeroed: loadSoon,
      again: loadSoon,
      live,
      statistics: ({ jobId }) => {
        if (jobId === figures?.job?.id) figures.refresh();
      },
    },
  );
}

async function load() {
  summaries = await get("/api/overview");
  say(
    $("title"),
    summaries.length === 1 ? `${summaries[0].station.station} · ${summaries[0].station.machine}` : "Stations",
  );
  if (summaries.length === 0) $("stations").replaceChildren(none());
  else if (summaries.length === 1) await showOne(summaries[0]);
  else showMany();
  $("stations").removeAttribute("aria-busy");
}

let timer = 0;
function loadSoon() {
  clearTimeout(timer);
  timer = setTimeout(() => load().catch((problem) => console.warn(problem.message)), 200);
}

// Only what a state changes is looked at; its counters move all the time.
function stateChanged(station) {
  const known = summaries.find((each) => each.station.station === station.station)?.station;
  const same =
    known &&
    ["link", "jobId", "bridgeId", "zeroId", "zeroStale", "piece", "position", "indicatorState"].every(
      (key) => known[key] === station[key],
    );
  if (!same) loadSoon();
}

function none() {
  return h(
    "div",
    { class: "sheet empty" },
    h("p", {}, h("strong", {}, "No station yet.")),
    h("p", {}, "A station is one indicator on its bridge, at one machine. Plug the indicator in and add it."),
    h("a", { class: "button main", href: "/add-station.html" }, "Add a station"),
  );
}

function showMany() {
  figures = null;
  const cards = summaries.map(card);
  const old = $("stations").firstElementChild;
  if (old?.classList.contains("cards")) old.replaceChildren(...cards);
  else $("stations").replaceChildren(h("div", { class: "cards" }, cards));
}

function card(summary) {
  const { station, job, lastReading, piece, findings, verdict } = summary;
  const tone = (findings[0]?.statement ?? verdict).tone;
  return h(
    "article",
    { class: "sheet card", data: { urgent: kindOf(tone), station: station.station } },
    h("h2", {}, station.station),
    h("p", { class: "small" }, [station.machine, job?.name].filter(Boolean).join(" · ")),
    ...(lastReading ? reading(lastReading, piece) : [h("p", { class: "small" }, "No reading yet")]),
    findingList(summary),
    h("a", { class: "button", href: toStation(station), "aria-label": `Open ${station.station}` }, "Open"),
  );
}

function reading(last, { tone, word }) {
  const { value, plusMinus } = radius(last);
  return [
    h("p", { class: "value" }, value, h("small", {}, ` ${plusMinus} ${unit()}`)),
    h("p", { class: "decision" }, state(kindOf(tone), word)),
    h("p", { class: "small" }, `Piece ${last.piece}, ${last.position}, `, time(last.at)),
  ];
}

const toStation = (station) => `/station.html?station=${encodeURIComponent(station.station)}`;

// --- one station: its big card, chart and figures right there ---

async function showOne(summary) {
  if (!$("one")) build();
  const { station, job } = summary;
  $("open").href = toStation(station);
  $("one-needs").replaceChildren(findingList(summary));
  $("one-job").replaceChildren(
    ...(job
      ? [
          h("a", { href: `/job.html?job=${job.id}` }, job.name),
          ` ${job.part}. Next: piece ${station.piece}, ${station.position}.`,
        ]
      : ["No job chosen"]),
  );
  const newest = job ? (await get(`/api/jobs/${job.id}/readings?limit=${ROWS}`)).items : [];
  showHeadline($("one-headline"), summary);
  showReadings($("one-readings"), newest);
  await figures.of(job);
}

function build() {
  const chart = h("div", { id: "chart" });
  $("stations").replaceChildren(
    h(
      "div",
      { id: "one", class: "one" },
      h(
        "section",
        { class: "sheet glance", "aria-label": "Last reading" },
        h("p", { id: "one-job", class: "of" }),
        h("div", { id: "one-headline", class: "glance" }),
        h(
          "div",
          { class: "live-figures now-live" },
          h(
            "div",
            {},
            h("p", { class: "small" }, "Depth now"),
            h("p", { class: "big" }, h("span", { id: "depth" }, "–")),
          ),
          h("div", {}, h("p", { class: "small" }, "Plunger"), h("p", { class: "of", id: "phase" }, "–")),
        ),
        h("div", { id: "one-needs" }),
        h("a", { id: "open", class: "button main" }, "Measure at this station"),
      ),
      h(
        "div",
        { class: "glance" },
        h(
          "section",
          { class: "sheet", "aria-label": "Job statistics" },
          h("dl", { id: "figures", class: "figures" }),
          h("ul", { id: "cautions", class: "cautions" }),
          chart,
        ),
        h(
          "section",
          { class: "sheet", "aria-label": "Last readings" },
          h("h2", {}, "Last readings"),
          h("div", { id: "one-readings" }),
        ),
      ),
    ),
  );
  figures = new JobFigures($("figures"), $("cautions"), chart);
}

function live(value) {
  if (!$("one")) return;
  $("depth").replaceChildren(length(value.depthMm, 3), h("span", { class: "unit" }, ` ${unit()}`));
  say($("phase"), words.phases[value.phase]);
}

start().catch((problem) => showTrouble($("stations"), problem));
