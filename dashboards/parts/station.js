// One station for its operator.

import { AlertsHere } from "./alerts-here.js";
import { asked, get, send } from "./api.js";
import { act } from "./identity.js";
import { CaptureLog } from "./captures.js";
import { busy, note } from "./dialogs.js";
import { $, h, say, state } from "./dom.js";
import { kindOf, sameState } from "./findings.js";
import { frame, showTrouble } from "./frame.js";
import { Instrument } from "./instrument.js";
import { followKeys } from "./keys.js";
import { follow } from "./live.js";
import { oneByOne } from "./loads.js";
import { over, showsNow } from "./notes.js";
import { showReadings } from "./readings.js";
import { Rollers } from "./rollers.js";
import { listenForTouch, signal } from "./signals.js";
import { Actions } from "./station-actions.js";
import { lotWords } from "./job-words.js";
import { StationQuestion } from "./station-question.js";
import { followPerson } from "./session.js";
import { shortTime } from "./times.js";

const ROWS = 12;
/** What is said of the process beside the piece. */
const PROCESS = ["NOT_IN_CONTROL", "MACHINE_MOVED"];
const now = { name: asked("station"), summary: null, gauge: null, readings: [], points: [] };
let actions;
let instrument;
let log;
let rollers;
let question;

async function start() {
  frame("stations", { care: false });
  now.name ??= (await get("api/stations"))[0]?.station;
  if (!now.name) {
    location.replace("./");
    return;
  }
  now.path = `api/stations/${encodeURIComponent(now.name)}`;
  log = new CaptureLog($("trace"), $("log"));
  instrument = new Instrument(now.name);
  actions = new Actions($("acts"));
  rollers = new Rollers({ slot: instrument.record, band: $("rollers"), sheet: $("rollers-in-full") });
  question = new StationQuestion($("question"));
  $("instrument").replaceChildren(instrument.element);
  followPerson({
    comes: () => send("POST", `${now.path}/person`).then(load, trouble),
    leaves: () => send("DELETE", `${now.path}/person`).catch(trouble),
  });
  const alerts = new AlertsHere("station", now.name);
  document.querySelector(".details").prepend(alerts.element);
  alerts.show();
  await listen();
  for (const part of [$("acts"), document.querySelector(".details")]) part.hidden = false;
  measureAround();
  listenForTouch();
  followKeys((key) => actions.byKey(key));
}

/** Shows what there is, and from then on what comes. */
function listen() {
  return follow(
    { stations: [now.name], liveMillis: 100 },
    {
      live,
      reading: recorded,
      refused,
      zeroed,
      again: load,
      state: changed,
      happened: loadSoon,
      statistics: loadSoon,
    },
  ).shown;
}

/** What is above and below the instrument on the first screen, so that it takes the rest. */
function measureAround() {
  const line = document.querySelector(".station-line");
  const parts = [document.querySelector(".bar"), line, document.querySelector(".acts"), $("stale")];
  const measure = () => {
    const below = getComputedStyle(line).order !== "0";
    const heights = parts.filter((part) => part !== line || !below).map((part) => part.offsetHeight);
    const gaps = below ? 8 : 22;
    document.body.style.setProperty("--around", `${heights.reduce((a, b) => a + b) + gaps}px`);
  };
  const changes = new ResizeObserver(measure);
  parts.forEach((part) => changes.observe(part));
  addEventListener("resize", measure);
}

/** Everything but the live values, as the service has it. */
const load = oneByOne(async () => {
  const [summary, gauge, [recent]] = await Promise.all([
    get(`${now.path}/overview`),
    get(`${now.path}/gauge`),
    get(`api/recent?station=${encodeURIComponent(now.name)}`),
  ]);
  Object.assign(now, { summary, gauge, points: recent.points });
  instrument.show(summary, recent);
  show();
  showsNow(stateOf(summary, gauge));
  await list(summary.job);
});

/** What messages at this page are about. */
const stateOf = ({ station, job, lastReading }, { zero, bridge }) =>
  [
    [job?.id, job?.currentLot, lastReading?.id, zero?.id, bridge?.id],
    [station.piece, station.pass, station.position, station.onMasters, station.study?.step, station.person],
  ].join();

const trouble = (problem) => note(problem.message, "bad");

let timer = 0;
function loadSoon() {
  clearTimeout(timer);
  timer = setTimeout(() => load().catch((problem) => console.warn(problem.message)), 150);
}

async function list(job) {
  now.readings = job ? (await get(`api/jobs/${job.id}/readings?limit=${ROWS}`)).items : [];
  showReadings($("readings"), now.readings, job ? await excluded(job.id) : new Set());
}

async function excluded(jobId) {
  const out = new Set();
  for (const each of await get(`api/jobs/${jobId}/exclusions`))
    out[each.excluded ? "add" : "delete"](each.readingId);
  return out;
}

function show() {
  const { station, job } = now.summary;
  document.title = `${station.station} · Chordlog`;
  say($("title"), `${station.station} · ${station.machine}`);
  $("job").replaceChildren(
    ...(job
      ? [
          h("a", { href: `job.html?job=${job.id}` }, job.name),
          h(
            "span",
            { class: "part" },
            ` ${[job.part, lotWords(job.currentLot)].filter(Boolean).join(", ")}`,
          ),
        ]
      : []),
    ...study(station),
    ...nextJob(),
  );
  showFitness();
  actions.show({ ...now, load });
  rollers.show({ ...now, load });
  question.show({ ...now, load });
}

/** Its page leads through a study that is measured here. */
function study({ study: now }) {
  return now ? [" ", h("a", { class: "button", href: `study.html?id=${now.id}` }, "The study’s page")] : [];
}

/** Where the job is closed, or none is chosen: the next one in one tap. */
function nextJob() {
  const { nextJob: next, station } = now.summary;
  if (!next || station.study) return [];
  const button = h("button", { class: "button", type: "button" }, `Start ${next.name}`);
  button.addEventListener("click", () =>
    busy(
      button,
      async () => {
        if (await act("POST", `${now.path}/job`, { jobId: next.id })) note(`Job ${next.name} chosen.`);
        await load();
      },
      (problem) => note(problem.message, "bad"),
    ),
  );
  return [" ", button];
}

/** The gauge in short, and what is found of it beside what the instrument says in large. */
function showFitness() {
  const { findings, verdict, reliable, job } = now.summary;
  const { zero, bridge } = now.gauge;
  const large = reliable && job ? null : verdict.word;
  const rows = findings
    .filter(
      ({ statement, issue }) =>
        statement.word !== large && (now.gauge.attention.includes(issue) || PROCESS.includes(issue)),
    )
    .map(({ statement, issue }) => {
      const said = state(kindOf(statement.tone), statement.word);
      return issue === "NOT_IN_CONTROL" ? h("a", { href: `job.html?job=${job.id}#signals` }, said) : said;
    });
  if (zero && !now.gauge.zeroStale) rows.push(state("good", h("span", {}, "Zero ", shortTime(zero.takenAt))));
  if (now.summary.station.person) rows.push(h("span", {}, `Measured by ${now.summary.station.person}`));
  rows.push(
    h(
      "a",
      { href: `gauge.html?station=${encodeURIComponent(now.name)}` },
      bridge ? `Gauge: ${bridge.name}` : "Gauge",
    ),
  );
  $("fitness").replaceChildren(...rows.map((row) => h("li", {}, row)));
}

function live(value) {
  instrument.live(value);
  log.live(value);
}

async function recorded(reading) {
  if (now.readings.some((each) => each.id === reading.id)) return;
  log.taken(reading);
  await load().catch((problem) => console.warn(problem.message));
  const { piece } = now.summary;
  signal(piece ? kindOf(piece.tone) : "quiet");
}

function refused(refusal) {
  instrument.refused(refusal.reason);
  log.refused(refusal);
  signal("refused");
  loadSoon(); // it may come with a question
}

function zeroed({ doubt }) {
  if (!doubt) over("zero");
  instrument.zeroed();
  loadSoon();
}

function changed(station) {
  if (!now.summary) return;
  const old = now.summary.station;
  now.summary.station = station;
  if (sameState(old, station, ["person", "question"])) instrument.show(now.summary);
  else loadSoon();
}

start().catch((problem) => showTrouble($("instrument"), problem));
