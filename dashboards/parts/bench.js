// The bench: one station's state, its live values, and the statistics of its job.

import { get, listen } from "./bench-api.js";
import { drawRuler } from "./ruler.js";
import { decisions, faces, fixed, phases, plusMinus, radius, radiusDigits, time } from "./bench-words.js";
import { showStatistics } from "./statistics.js";

const $ = (id) => document.getElementById(id);
const shown = { station: null, job: null, last: null, rows: 8 };
const links = {
  OPEN: ["good", "Link open"], WAITING: ["open", "Waiting for the indicator"],
  SILENT: ["open", "Indicator silent"], LOST: ["bad", "Link lost"], STOPPED: ["bad", "Stopped"],
};

async function start() {
  const stations = await get("/api/stations");
  if (stations.length === 0) {
    $("link").textContent = "No station is set up yet.";
    return;
  }
  const wanted = new URLSearchParams(location.search).get("station");
  const station = stations.find((each) => each.station === wanted) ?? stations[0];
  showStations(stations, station.station);
  showStation(station);
  await showJob(station.jobId);
  listen(station.station, {
    hello: (said) => { if (said.reload) showJob(shown.job?.id ?? null); },
    state: stationChanged, live: showLive, reading: readingTaken, refused: showRefusal,
    statistics: (said) => { if (said.jobId === shown.job?.id) refreshStatistics(); },
  }, showFreshness);
}

function showStations(stations, current) {
  if (stations.length < 2) return;
  for (const { station } of stations) {
    const link = document.createElement("a");
    link.href = `/?station=${encodeURIComponent(station)}`;
    link.textContent = station;
    if (station === current) link.setAttribute("aria-current", "page");
    $("stations").append(link);
  }
}

function showStation(station) {
  shown.station = station;
  $("station-title").textContent = `${station.station} · ${station.machine}`;
  const [state, word] = links[station.link];
  mark($("link"), state, station.link === "OPEN" ? word : `${word}: ${station.message}`);
  showZero(station);
  showWork();
}

function showZero(station) {
  if (station.zeroId === null) mark($("zero"), "bad", "No zero: put the bridge on a flat and zero it");
  else if (station.zeroStale) mark($("zero"), "open", "Zero is stale: take it again on a flat");
  else mark($("zero"), "good", "Zeroed");
}

function mark(element, state, words) {
  element.dataset.state = state;
  element.textContent = words;
}

function showWork() {
  const { job, station } = shown;
  $("work").textContent = job
    ? `${job.name} · ${job.part} · next: piece ${station.piece}, ${station.position}`
    : "No job is selected";
  $("radius-face").textContent = job ? `on the ${faces[job.specification.face]}, target ${job.specification.targetMm} mm` : "";
}

async function stationChanged(station) {
  const jobChanged = station.jobId !== (shown.job?.id ?? null);
  showStation(station);
  if (jobChanged) await showJob(station.jobId);
}

async function showJob(jobId) {
  shown.job = jobId === null ? null : await get(`/api/jobs/${jobId}`);
  $("readings").replaceChildren();
  shown.last = null;
  if (shown.job) {
    const page = await get(`/api/jobs/${jobId}/readings?limit=${shown.rows}`);
    page.items.reverse().forEach((reading) => addReading(reading, false));
    await refreshStatistics();
  }
  showWork();
  showLast();
}

function readingTaken(reading) {
  if (reading.jobId !== shown.job?.id || (shown.last && reading.id <= shown.last.id)) return;
  addReading(reading, true);
  showLast();
}

function addReading(reading, fresh) {
  shown.last = reading;
  const row = document.createElement("tr");
  row.dataset.reading = reading.id;
  row.classList.toggle("fresh", fresh);
  const cells = [time(reading.at), reading.piece, reading.position, fixed(reading.depthMm, 3),
    `${radius(reading)} ${plusMinus(reading)}`, decisions[reading.decision]];
  cells.forEach((cell, column) => {
    const td = document.createElement("td");
    td.classList.toggle("wide", column === 2 || column === 3);
    td.append(cell);
    row.append(td);
  });
  $("readings").prepend(row);
  while ($("readings").children.length > shown.rows) $("readings").lastElementChild.remove();
}

function showLast() {
  const { last, job } = shown;
  $("decision").dataset.decision = last ? last.decision : "none";
  $("decision").textContent = last ? decisions[last.decision] : "No reading yet";
  $("radius").textContent = last ? radius(last) : "–";
  $("plus-minus").textContent = last ? plusMinus(last) : "";
  drawRuler($("ruler"), last, job?.specification);
}

function showLive(live) {
  $("depth").textContent = fixed(live.depthMm, 3);
  const far = live.radiusMm === null || live.phase === "FREE";
  $("live-radius").textContent = far ? "–" : fixed(live.radiusMm, shown.last ? radiusDigits(shown.last) : 0);
  $("phase").textContent = phases[live.phase];
}

function showRefusal(refusal) {
  $("phase").textContent = `not taken: ${refusal.words}`;
}

let refreshing = null;
let again = false;
async function refreshStatistics() {
  if (refreshing) { again = true; return refreshing; }
  refreshing = showStatistics(shown.job).finally(() => {
    refreshing = null;
    if (again) { again = false; refreshStatistics(); }
  });
  return refreshing;
}

function showFreshness(stale) {
  const element = $("freshness");
  if (stale === (element.dataset.stale === "true") && element.textContent) return;
  element.dataset.stale = String(stale);
  element.textContent = stale ? "Not up to date: connection lost" : "Live";
}

start().catch((error) => {
  showFreshness(true);
  $("freshness").textContent = `Not up to date: ${error.message}`;
});
