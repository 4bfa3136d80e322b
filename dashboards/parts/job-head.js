// What the job is, and what can be done with it as a whole.

import { act } from "./act.js";
import { askForm } from "./dialogs.js";
import { h, state } from "./dom.js";
import { field } from "./forms.js";
import { limitWords, planWords, sectionWords } from "./job-words.js";
import { fileButton } from "./take-file.js";
import { dateTime } from "./times.js";
import { faces } from "./words.js";

export function showHead(place, job, changed) {
  place.replaceChildren(
    h("p", { class: "crumb" }, h("a", { href: "/jobs.html" }, "All jobs")),
    h("div", { class: "page-head" }, h("div", { class: "row" }, h("h1", {}, job.name), stateOf(job)),
      h("div", { class: "row no-print" }, actions(job, changed))),
    h("dl", { class: "facts wide sheet" }, rows(job).map(([term, value]) => h("div", {}, h("dt", { class: "small" }, term), h("dd", {}, value)))),
    h("div", { class: "row no-print", role: "group", "aria-label": "Files" }, files(job)));
}

function stateOf(job) {
  if (job.state === "CLOSED") return state("quiet", "closed");
  return job.active ? state("good", "being measured now") : h("span", {}, "open");
}

function rows(job) {
  return [["Part", job.part || "–"], ["Section", sectionWords(job.section)], ["Material lot", job.materialLot || "–"],
    ...limitWords(job.specification), ["Measured on", faces[job.measuredFace]], ["Measured", planWords(job.plan)],
    ["Machine", h("a", { href: `/machine.html?machine=${encodeURIComponent(job.machine)}` }, job.machine)],
    ["Station", job.station], ["Opened", dateTime(job.openedAt)]];
}

function actions(job, changed) {
  const open = job.state === "OPEN";
  return [
    h("a", { class: "button", href: `/job-form.html?job=${job.id}` }, "Change"),
    h("a", { class: "button", href: `/job-form.html?copy=${job.id}` }, "Duplicate"),
    h("button", { class: "button", type: "button", on: { click: () => (open ? close(job, changed) : reopen(job, changed)) } }, open ? "Close job" : "Reopen job"),
  ];
}

function close(job, changed) {
  return ask(job, changed, { title: "Close this job?", intro: "A closed job takes no more readings. It can be reopened.", confirm: "Close job", path: "close" });
}

function reopen(job, changed) {
  return ask(job, changed, { title: "Reopen this job?", intro: "It can then take readings again.", confirm: "Reopen job", path: "reopen" });
}

async function ask(job, changed, { title, intro, confirm, path }) {
  const done = await askForm({
    title, intro, confirm, fields: [field({ name: "why", label: "Why (kept in the record)" })],
    act: ({ why }) => act("POST", `/api/jobs/${job.id}/${path}`, { why }),
  });
  if (done) await changed();
}

function files(job) {
  const zone = encodeURIComponent(Intl.DateTimeFormat().resolvedOptions().timeZone || "UTC");
  return [
    fileButton("Report, PDF", () => `/api/jobs/${job.id}/report.pdf?zone=${zone}`, `job-${job.id}-report.pdf`),
    fileButton("Readings, CSV", () => `/api/jobs/${job.id}/readings.csv`, `job-${job.id}-readings.csv`, () => job.readings || null),
    fileButton("Statistics, CSV", () => `/api/jobs/${job.id}/statistics.csv`, `job-${job.id}-statistics.csv`),
    h("button", { class: "button", type: "button", on: { click: () => print() } }, "Print this page"),
  ];
}
