// One study: what to measure next and who, then what it found. No value is shown before its end.

import { get, needed } from "./api.js";
import { act, tryTo } from "./identity.js";
import { askForm } from "./dialogs.js";
import { $, facts, h, state } from "./dom.js";
import { csvPath, fileButton, printing } from "./download.js";
import { field } from "./forms.js";
import { frame, showTrouble } from "./frame.js";
import { follow } from "./live.js";
import { oneByOne } from "./loads.js";
import { StudyCharts } from "./study-charts.js";
import { resultOf } from "./study-result.js";
import { CARE, stateSign } from "./study-states.js";
import { dateTime } from "./times.js";
import { inches, plainLength, unit } from "./units.js";
import words from "../api/words.js";

let path = "";
let refusal = "";

async function start() {
  frame("gauges");
  path = `api/studies/${needed("id", "study")}`;
  const study = await get(path);
  document.title = `${study.name} · Chordlog`;
  $("title").textContent = study.name;
  $("ways").replaceChildren(
    h("a", { class: "button", href: "studies.html" }, "All studies"),
    h("a", { class: "button changes", href: `gauge.html?station=${encodeURIComponent(study.station)}` }, "The gauge"),
  );
  await follow(
    { stations: [study.station], liveMillis: 1000 },
    {
      state: () => load(),
      refused: (told) => refused(told),
      again: () => load(),
    },
  ).shown;
}

const load = oneByOne(async () => {
  const study = await get(path);
  await show(study).catch((problem) => showTrouble($("study"), problem));
});

let shown = "";

async function show(study) {
  const now = JSON.stringify(study);
  if (now === shown) return;
  shown = now;
  refusal = "";
  const complete = study.next === null;
  const result = complete ? await get(`${path}/result`).catch(untold) : null;
  const charts = result?.figures ? new StudyCharts(path, result.figures, study) : null;
  const found = !result ? [] : charts ? resultOf(result, study, again, charts.element) : [result.untold];
  $("study").replaceChildren(
    study.state === "DONE" || study.state === "ABANDONED" ? "" : running(study),
    ...found,
    planOf(study),
  );
  $("study").removeAttribute("aria-busy");
  await charts?.show();
}

/** A study that is complete and shows nothing, as when all its measurements read the same. */
function untold(problem) {
  if (problem.status !== 400) throw problem;
  const said = [h("h2", {}, "What it found"), h("p", {}, state("open", "Nothing")), h("p", {}, problem.message)];
  return { untold: h("section", { class: "sheet", "aria-label": "What it found" }, ...said) };
}

function refused(told) {
  const place = $("refused");
  refusal = [`Not taken: ${told.words}`, told.detail].filter(Boolean).join("; ").concat(".");
  if (place) place.textContent = refusal;
}

const become = (to, done) => tryTo(`${path}/state`, { state: to, why: "" }, done);

const button = (caption, work, kind = "") =>
  h("button", { class: `button ${kind}`, type: "button", on: { click: work } }, caption);

function running(study) {
  const { next, state: now } = study;
  const going = now === "RUNNING";
  return h(
    "section",
    { class: "sheet", "aria-label": "Measuring" },
    h("p", { class: "care-note" }, CARE),
    next ? step(study, going) : h("p", { class: "empty" }, "Everything is measured."),
    h("progress", {
      class: "step-progress",
      "aria-label": "Measured so far",
      max: study.steps,
      value: study.measured,
    }),
    h(
      "div",
      { class: "row changes" },
      !next ? button("Finish the study", () => become("DONE", "Study finished."), "main") : null,
      next && !going ? button(study.measured ? "Go on" : "Start", () => become("RUNNING"), "main") : null,
      going && next ? button("Pause", () => become("PAUSED", "Paused. The station is back at its job.")) : null,
      study.lastMeasurementId ? button("Last one was spoilt", () => again(null)) : null,
      button("Give up", giveUp, "plain"),
    ),
  );
}

function step(study, going) {
  const { next } = study;
  const more = next.leftForOperator === 1 ? "then the next person" : `${next.leftForOperator} in a row`;
  return h(
    "div",
    { class: "next-step", role: "status" },
    h("p", { class: "who" }, going ? `${next.operator} measures` : `Next: ${next.operator}`),
    h("p", { class: "where" }, next.where),
    h("p", {}, `Step ${next.step} of ${study.steps}, repeat ${next.repeat} of ${study.repeats}, ${more}.`),
    going
      ? h(
          "p",
          {},
          `${next.handling} Earlier values are hidden on purpose.`,
        )
      : h("p", {}, "Paused. It may rest for days. Set zero before you go on."),
    next.notBefore
      ? h("p", {}, state("open", "This day is complete"), " Go on ", dateTime(next.notBefore), " or later.")
      : null,
    h("p", { id: "refused", class: "refused", role: "alert" }, refusal),
  );
}

async function again(measurementId) {
  const done = await askForm({
    title: "Measure this step again?",
    intro: "The measurement stays in the record and no longer counts.",
    confirm: "Measure again",
    fields: [field({ name: "reason", label: "What went wrong", required: true })],
    act: ({ reason }) => act("POST", `${path}/measure-again`, { measurementId, reason }),
  });
  if (done) {
    await become("RUNNING");
    await load();
  }
}

async function giveUp() {
  await askForm({
    title: "Give up this study?",
    intro: "It can’t be taken up again. What was measured stays in the record.",
    confirm: "Give up",
    fields: [field({ name: "why", label: "Why", required: true })],
    act: ({ why }) => act("POST", `${path}/state`, { state: "ABANDONED", why }),
  });
  await load();
}

function planOf(study) {
  const limits = [study.lowerLimitMm, study.upperLimitMm].map(plainLength).join(" to ");
  return h(
    "section",
    { class: "sheet", "aria-label": "Plan" },
    h("div", { class: "sheet-head" }, h("h2", {}, "Plan"), stateSign(study.state)),
    facts([
      ["Examines", words.studyKinds[study.kind]],
      [study.partsAre, study.parts.join(", ")],
      ["Places", study.places.join(", ")],
      ["Operators", study.operators.join(", ")],
      ["Repeats", String(study.repeats)],
      ["Nominal", `${plainLength(study.nominalMm)}\u00a0${unit()}`],
      ["Limits", study.lowerLimitMm === null && study.upperLimitMm === null ? "" : `${limits}\u00a0${unit()}`],
      ["Order drawn from", String(study.seed)],
      ["Planned", h("span", {}, dateTime(study.plannedAt), `, ${study.plannedBy}`)],
    ]),
    study.next === null
      ? h(
          "div",
          { class: "row" },
          fileButton(
            `Report, PDF in ${inches() ? "inches" : "mm"}`,
            () => `${path}/report.pdf?${printing()}`,
            `study-${study.id}-report.pdf`,
          ),
          fileButton("Measurements, CSV in mm", () => csvPath(`${path}/measurements.csv`), `study-${study.id}.csv`),
        )
      : null,
  );
}

start().catch((problem) => showTrouble($("study"), problem));
