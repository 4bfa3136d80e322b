// One station for its operator.

import { asked, get } from "./api.js";
import { showActions } from "./station-actions.js";
import { CaptureLog } from "./captures.js";
import { $, h, say, state } from "./dom.js";
import { frame, showTrouble } from "./frame.js";
import { showHeadline } from "./headline.js";
import { follow } from "./live.js";
import { forPages, kindOf } from "./findings.js";
import { showReadings } from "./readings.js";
import { date, shortTime } from "./times.js";
import { length, unit } from "./units.js";
import words from "/api/words.js";

const ROWS = 8;
const OF_PIECE = ["OUT_OF_TOLERANCE", "TOO_CLOSE_TO_CALL"];
const now = { name: asked("station"), summary: null, gauge: null, readings: [], refusedUntil: 0 };
let log;

async function start() {
  frame("stations");
  now.name ??= (await get("/api/stations"))[0]?.station;
  if (!now.name) {
    location.replace("/");
    return;
  }
  log = new CaptureLog($("trace"), $("log"));
  await load();
  follow(
    { stations: [now.name], liveMillis: 100 },
    {
      live,
      reading: taken,
      refused,
      again: load,
      state: changed,
      zeroed: loadSoon,
      happened: loadSoon,
      statistics: loadSoon,
    },
  );
}

/** Everything but the live values, as the service has it. */
async function load() {
  const path = `/api/stations/${encodeURIComponent(now.name)}`;
  [now.summary, now.gauge] = await Promise.all([get(`${path}/overview`), get(`${path}/gauge`)]);
  const { job } = now.summary;
  now.readings = job ? (await get(`/api/jobs/${job.id}/readings?limit=${ROWS}`)).items : [];
  now.out = job ? await excluded(job.id) : new Set();
  show();
}

let timer = 0;
function loadSoon() {
  clearTimeout(timer);
  timer = setTimeout(() => load().catch((problem) => console.warn(problem.message)), 150);
}

async function excluded(jobId) {
  const out = new Set();
  for (const each of await get(`/api/jobs/${jobId}/exclusions`))
    out[each.excluded ? "add" : "delete"](each.readingId);
  return out;
}

function show() {
  const { summary, gauge } = now;
  const { station, job } = summary;
  document.title = `${station.station} · Chordlog`;
  say($("title"), `${station.station} · ${station.machine}`);
  $("job").replaceChildren(
    ...(job
      ? [
          h("a", { href: `/job.html?job=${job.id}` }, job.name),
          ` ${job.part}${job.materialLot ? `, lot ${job.materialLot}` : ""}`,
        ]
      : ["No job chosen"]),
  );
  showFitness(summary, gauge);
  showFindings(summary);
  showPlace(station, job);
  showHeadline($("headline"), summary);
  showReadings($("readings"), now.readings, now.out);
  showActions($("acts"), { ...now, load });
}

function showFitness({ findings }, gauge) {
  const { zero, calibration } = gauge;
  const link = findings.find(({ issue }) => issue === "LINK")?.statement;
  const rows = [
    link ? state(kindOf(link.tone), link.word) : state("good", "Indicator connected"),
    zero
      ? state(gauge.zeroStale ? "open" : "good", h("span", {}, "Zero ", shortTime(zero.takenAt)))
      : state("bad", words.issues.ZERO_MISSING),
    calibration
      ? state(
          gauge.attention.includes("CALIBRATION_OVERDUE") ? "open" : "good",
          h("span", {}, "Calibrated, due ", date(calibration.dueAt)),
        )
      : state("open", words.issues.CALIBRATION_MISSING),
    h(
      "a",
      { href: `/gauge.html?station=${encodeURIComponent(now.name)}` },
      gauge.bridge ? `Gauge: ${gauge.bridge.name}` : "Gauge",
    ),
  ];
  $("fitness").replaceChildren(...rows.map((row) => h("li", {}, row)));
}

// The most urgent findings; what is said of the piece itself is in the headline.
function showFindings({ findings }) {
  const urgent = findings.filter(
    ({ issue, statement }) =>
      statement.tone !== "QUIET" && !OF_PIECE.includes(issue) && issue !== "CALIBRATION_MISSING",
  );
  $("trouble").replaceChildren(
    ...urgent.slice(0, 2).map(({ statement: { tone, word, reason, advice } }) => {
      const said = [`${word}.`, reason, advice].filter(Boolean).map(forPages).join(" ");
      return h("p", { class: `trouble ${kindOf(tone)}` }, said);
    }),
  );
}

function showPlace(station, job) {
  const positions = job?.plan.positions ?? [];
  const where =
    positions.length > 1
      ? `${station.position}, ${positions.indexOf(station.position) + 1} of ${positions.length}`
      : station.position;
  $("place").replaceChildren(...(job ? [`Piece ${station.piece}`, h("small", {}, where)] : ["–"]));
}

function live(value) {
  $("depth").replaceChildren(length(value.depthMm, 3), h("span", { class: "unit" }, ` ${unit()}`));
  if (Date.now() > now.refusedUntil) showPhase(value.phase, words.phases[value.phase]);
  log.live(value);
}

function showPhase(phase, said) {
  $("phase").dataset.phase = phase;
  say($("phase"), said);
}

function taken(reading) {
  if (now.readings.some((each) => each.id === reading.id)) return;
  if (reading.jobId === now.summary.job?.id) {
    now.readings = [reading, ...now.readings].slice(0, ROWS);
    showReadings($("readings"), now.readings, now.out, reading.id);
    load().catch((problem) => console.warn(problem.message));
  }
  log.taken(reading);
}

function refused(refusal) {
  const what = words.refusals[refusal.reason];
  now.refusedUntil = Date.now() + 2500;
  showPhase("refused", `Not recorded: ${what[0].toLowerCase()}${what.slice(1)}`);
  log.refused(refusal);
}

function changed(station) {
  if (!now.summary) return;
  const old = now.summary.station;
  now.summary.station = station;
  const same = ["link", "jobId", "bridgeId", "zeroId", "zeroStale", "indicatorState"].every(
    (key) => old[key] === station[key],
  );
  if (same) showPlace(station, now.summary.job);
  else loadSoon();
}

start().catch((problem) => showTrouble($("trouble"), problem));
