// One machine: verdict, forecast, picture, and its jobs.

import { AlertsHere } from "./alerts-here.js";
import { get, needed } from "./api.js";
import { Chart } from "./chart.js";
import { $, h, state, table } from "./dom.js";
import { kindOf } from "./findings.js";
import { frame, showTrouble } from "./frame.js";
import { eventWords } from "./job-words.js";
import { LineRollers } from "./line-rollers.js";
import { MachineLogbook } from "./machine-logbook.js";
import { MachineRollers } from "./machine-rollers.js";
import { moved, percent, sentences, verdict } from "./machine-words.js";
import { ShortRuns } from "./short-runs.js";
import { date, dateTime } from "./times.js";
import { length, plainLength, plainNumber, unit } from "./units.js";
import words from "../api/words.js";

/** Where the verdict does not say it itself. */
const CARE =
  "Inspect the machine only with the rollers stopped and the drive locked out; its manual and local rules come first.";

async function start() {
  frame("machines");
  const name = needed("machine", "machine");
  const path = `api/machines/${encodeURIComponent(name)}`;
  const machine = await get(path);
  document.title = `${machine.machine} · Chordlog`;
  $("head").replaceChildren(
    h("p", { class: "crumb" }, h("a", { href: "machines.html" }, "All machines")),
    h(
      "div",
      { class: "page-head" },
      h("h1", {}, machine.machine),
      h("button", { class: "button", type: "button", on: { click: () => print() } }, "Print this page"),
    ),
  );
  const chart = new Chart(h("div", { class: "chart-box" }), { height: 420, narrowHeight: 360 });
  const short = new ShortRuns(path);
  const rollers = new MachineRollers(path);
  const passed = new LineRollers(path);
  const logbook = new MachineLogbook(path, name);
  const beside = async () => (await get(path).catch(() => machine)).besideAlert;
  const alerts = new AlertsHere("machine", name, beside);
  const [jobs, events] = [h("div"), h("div")];
  $("body").className = "form";
  $("body").replaceChildren(
    alerts.element,
    now(machine),
    drifts(machine),
    logbook.element,
    rollers.element,
    passed.element,
    h(
      "section",
      { class: "sheet form", "aria-label": "Drift" },
      h("h2", {}, "Deviation from the target, piece by piece"),
      chart.container,
      h(
        "p",
        { class: "small" },
        "Each dot is a piece (its readings averaged; of long runs, several pieces): how much tighter " +
          "(above 0) or wider (below 0) than the target of its job, in % of curvature, so that jobs of " +
          "different radius compare. Flags are corrections, set-ups, new lots and work from the log book, posts " +
          "where a job begins; touch one to read it. A creep is followed through corrections; a jump is looked for " +
          "since the last one.",
      ),
    ),
    h("section", { class: "sheet" }, h("h2", {}, "Jobs on this machine"), jobs),
    short.element,
    h("section", { class: "sheet" }, h("h2", {}, "Corrections, lots and set-ups"), events),
  );
  await Promise.all([
    machine.pieces > 0
      ? chart.show(`${path}/chart`)
      : chart.clear(h("p", { class: "empty" }, "No pieces measured yet.")),
    showJobs(jobs, path),
    showEvents(events, path),
    short.show(),
    rollers.show(machine.pieces),
    passed.show(),
    logbook.show(),
    alerts.show(),
  ]);
}

function now(machine) {
  const said = sentences(machine).filter(Boolean);
  const tests =
    machine.trendPValue === null
      ? ""
      : `Trend by Mann-Kendall, ${small(machine.trendPValue)}; step by Pettitt, ` +
        `${small(machine.changePValue)}; slope by Theil and Sen. A steady machine is called so in 99 % ` +
        "of looks.";
  return h(
    "section",
    { class: "sheet machine-card", "aria-label": "Verdict" },
    h("h2", {}, "Machine status"),
    verdict(machine),
    machine.rollers === null ? "" : state(kindOf(machine.rollers.tone), machine.rollers.word),
    h("p", {}, ...said),
    h("p", { class: "small" }, `${machine.pieces} pieces that count, in all. ${tests}`),
    said.some((each) => typeof each === "string" && each.includes("locked out"))
      ? ""
      : h("p", { class: "care-note" }, CARE),
  );
}

/** What moves it now, and what did before; the newest first. */
function drifts({ findings, history }) {
  const all = [...findings, ...[...history].reverse()];
  if (all.length === 0) return "";
  return h(
    "section",
    { class: "sheet" },
    h("h2", {}, "What moved it"),
    table(
      "What moved the machine, the newest first",
      [
        { head: "What", kind: "told", cell: (each) => h("strong", {}, capital(each.told)) },
        { head: "Since", cell: (each) => dateTime(each.since) },
        { head: "Until", cell: (each) => (each.until === null ? "goes on" : dateTime(each.until)) },
        {
          head: "In 100 pieces",
          number: true,
          cell: (each) => moved(each.perHundredPiecesPercent, each.perHundredPiecesMm),
        },
        {
          head: "In a shift (8 h)",
          kind: "wide-only",
          number: true,
          cell: (each) => moved(each.perShiftPercent, each.perShiftMm),
        },
        { head: "Corrected", number: true, cell: corrected },
      ],
      all,
    ),
    h(
      "p",
      { class: "small" },
      "Above 0 %: tighter. Pieces of a shift by the pace of the newest 20 pieces; radius at the target " +
        "of the newest job with two limits.",
    ),
  );
}

const capital = (text) => text[0].toUpperCase() + text.slice(1);

function corrected({ corrections, correctedBy }) {
  if (corrections === 0) return "";
  if (correctedBy === null) return `${corrections} ×`;
  const amount = plainNumber(correctedBy).replace("-", "−");
  return `${corrections} ×, ${correctedBy > 0 ? "+" : ""}${amount} altogether`;
}

const small = (p) => (p < 0.001 ? "p below 0.001" : `p = ${p.toFixed(3)}`);

async function showJobs(place, path) {
  const jobs = await get(`${path}/jobs`);
  place.replaceChildren(
    jobs.length === 0
      ? h("p", { class: "small" }, "No job yet.")
      : table(
          "Jobs, the newest first",
          [
            { head: "Order", cell: (job) => h("a", { href: `job.html?job=${job.jobId}` }, job.name) },
            { head: "Opened", cell: (job) => date(job.openedAt) },
            { head: "Readings taken", number: true, cell: (job) => String(job.readings) },
            { head: `Target, ${unit()}`, number: true, cell: (job) => plainLength(job.targetMm) },
            { head: `Mean, ${unit()}`, number: true, cell: (job) => length(job.meanMm, 2) },
            { head: "Deviation of curvature", number: true, cell: (job) => percent(job.deviationPercent) },
            {
              head: "95 % interval",
              number: true,
              cell: (job) =>
                job.lowerPercent === null
                  ? ""
                  : `${percent(job.lowerPercent)} to ${percent(job.upperPercent)}`,
            },
          ],
          jobs,
        ),
  );
}

async function showEvents(place, path) {
  const events = (await get(`${path}/events`))
    .filter((each) => each.startsPhase)
    .sort((one, other) => other.id - one.id)
    .slice(0, 20);
  place.replaceChildren(
    events.length === 0
      ? h("p", { class: "small" }, "None recorded.")
      : table(
          "Events, the newest first",
          [
            { head: "Time", cell: (each) => dateTime(each.at) },
            { head: "Event", cell: (each) => words.events[each.kind] },
            { head: "What", cell: eventWords },
            { head: "By", cell: (each) => each.by },
          ],
          events,
        ),
  );
}

start().catch((problem) =>
  showTrouble(
    $("head"),
    problem.status === 404
      ? { status: 404, message: "There is no such machine. Choose one from the list of machines." }
      : problem,
  ),
);
