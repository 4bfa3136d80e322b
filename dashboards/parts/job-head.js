// What the job is, and what can be done with it as a whole.

import { act } from "./identity.js";
import { askForm } from "./dialogs.js";
import { h, state, unfold } from "./dom.js";
import { field } from "./forms.js";
import { limitWords } from "./job-words.js";
import { csvPath, fileButton, printing } from "./download.js";
import { inches } from "./units.js";
import words from "../api/words.js";

/** What a phone shows of the job before it is asked for more. */
const SHORT = ["Target radius", "LSL, USL"];

export function showHead(place, job, changed) {
  place.replaceChildren(
    h(
      "div",
      { class: "page-head" },
      h("div", { class: "row" }, h("h1", {}, job.name), stateOf(job), jumps(place, job)),
      h("div", { class: "row no-print folds" }, actions(job, changed)),
    ),
    h(
      "dl",
      { class: "inline-facts" },
      rows(job).map(([term, value]) =>
        h("div", { class: SHORT.includes(term) ? null : "folds" }, h("dt", {}, term), h("dd", {}, value)),
      ),
    ),
  );
}

function jumps(place, job) {
  const link = (to, text) => h("a", { href: to }, text);
  return h(
    "nav",
    { class: "jumps no-print", "aria-label": "On this page" },
    link("jobs.html", "All jobs"),
    link("#files", "Report"),
    [
      ["capability", "Figures"],
      ["events", "Events"],
      ["signals", "Signals"],
      ["readings", "Readings"],
    ].map(([to, text]) => link(`#${to}`, text)),
    link(`job-changes.html?job=${job.id}`, "All changes"),
    unfold(place, "Job data"),
  );
}

function stateOf(job) {
  if (job.state === "CLOSED") return state("quiet", "closed");
  return job.active ? state("good", "being measured now") : h("span", {}, "open");
}

function rows(job) {
  return [
    ["Part", job.part || "–"],
    ["Section", job.sectionWords],
    ["Lot", job.currentLot || "–"],
    ...limitWords(job.specification),
    ["Measured", `on the ${words.faces[job.measuredFace]}, ${job.planWords}`],
    [
      "Machine",
      h(
        "span",
        {},
        h("a", { href: `machine.html?machine=${encodeURIComponent(job.machine)}` }, job.machine),
        h("span", { id: "machine-state" }),
      ),
    ],
    ["Station", job.station],
  ];
}

function actions(job, changed) {
  const open = job.state === "OPEN";
  return [
    h("a", { class: "button changes", href: `job-form.html?job=${job.id}` }, "Change"),
    h("a", { class: "button changes", href: `job-form.html?copy=${job.id}` }, "Duplicate"),
    h(
      "button",
      {
        class: "button changes",
        type: "button",
        on: { click: () => (open ? close(job, changed) : reopen(job, changed)) },
      },
      open ? "Close job" : "Reopen job",
    ),
  ];
}

function close(job, changed) {
  return ask(job, changed, {
    title: "Close this job?",
    intro: "A closed job takes no more readings. It can be reopened.",
    confirm: "Close job",
    path: "close",
  });
}

function reopen(job, changed) {
  return ask(job, changed, {
    title: "Reopen this job?",
    intro: "It can then take readings again.",
    confirm: "Reopen job",
    path: "reopen",
  });
}

async function ask(job, changed, { title, intro, confirm, path }) {
  const done = await askForm({
    title,
    intro,
    confirm,
    fields: [field({ name: "why", label: "Why (kept in the record)" })],
    act: ({ why }) => asShown(job, changed, path, why),
  });
  if (done) await changed();
}

/** Only the job as the page shows it; where it is another by now, the page shows that. */
async function asShown(job, changed, path, why) {
  try {
    return await act("POST", `api/jobs/${job.id}/${path}`, { why }, job.version);
  } catch (problem) {
    if (problem.status === 412) await changed();
    throw problem;
  }
}

/** The report is in the viewer's unit; tables are records in mm, and the words say so. */
export function files(job) {
  return h(
    "div",
    { class: "row no-print files", id: "files", role: "group", "aria-label": "Files" },
    fileButton(
      `Report, PDF in ${inches() ? "inches" : "mm"}`,
      (token) => `api/jobs/${job.id}/report.pdf?${printing()}&token=${token}`,
      `job-${job.id}-report.pdf`,
      { progress: (token) => `api/jobs/${job.id}/report-progress?token=${token}` },
    ),
    fileButton(
      "Readings, CSV in mm",
      () => csvPath(`api/jobs/${job.id}/readings.csv`, { sealed: true }),
      `job-${job.id}-readings.csv`,
      {
        lines: () => job.readings || null,
      },
    ),
    fileButton(
      "Statistics, CSV in mm",
      () => csvPath(`api/jobs/${job.id}/statistics.csv`),
      `job-${job.id}-statistics.csv`,
    ),
    fileButton(
      "Changes, CSV in mm",
      () => csvPath(`api/jobs/${job.id}/changes.csv`),
      `job-${job.id}-changes.csv`,
    ),
    fileButton(
      "Results, QIF in mm",
      () => `api/jobs/${job.id}/results.qif`,
      `job-${job.id}.qif`,
    ),
    h("button", { class: "button", type: "button", on: { click: () => print() } }, "Print this page"),
  );
}
