// A job opened, changed or duplicated; what is wrong is said at its field.

import { act } from "./identity.js";
import { asked, get } from "./api.js";
import { busy, note } from "./dialogs.js";
import { keepDraft } from "./drafts.js";
import { $, h } from "./dom.js";
import { field, showFaults, values } from "./forms.js";
import { frame, showTrouble } from "./frame.js";
import { sketch } from "./sketch.js";
import { entered, inUnit, plainNumber, unit } from "./units.js";
import words from "../api/words.js";

const sizes = {
  ROUND_TUBE: [
    ["outsideDiameterMm", "Outside diameter"],
    ["wallMm", "Wall"],
  ],
  SOLID_ROUND: [["diameterMm", "Diameter"]],
  FLAT: [
    ["heightMm", "Height in the bend plane"],
    ["widthMm", "Width across it"],
  ],
  BOX: [
    ["heightMm", "Height in the bend plane"],
    ["widthMm", "Width across it"],
    ["wallMm", "Wall"],
  ],
  PROFILE: [
    ["heightMm", "Height in the bend plane"],
    ["centroidFromOuterMm", "Centroid from the outer face"],
  ],
};
const fresh = {
  name: "",
  part: "",
  materialLot: "",
  measuredFace: "OUTER",
  section: { kind: "ROUND_TUBE" },
  specification: { face: "CENTRELINE", targetMm: null, lowerLimitMm: null, upperLimitMm: null },
  plan: { positions: ["middle"], subgroups: "CONSECUTIVE", subgroupSize: 5 },
};

async function start() {
  frame("jobs");
  const [changes, copies] = [asked("job"), asked("copy")];
  const source = changes ?? copies;
  const [stations, job] = await Promise.all([
    get("api/stations"),
    source ? get(`api/jobs/${Number(source)}`) : fresh,
  ]);
  const title = changes ? `Change ${job.name}` : copies ? `Duplicate ${job.name}` : "New job";
  $("title").textContent = title;
  document.title = `${title} · Chordlog`;
  $("body").replaceChildren(
    ...(source ? [] : [await template()]).filter(Boolean),
    stations.length > 0 || source ? build(job, stations, changes) : noStation(),
  );
  const found = asked("station");
  if (found && stations.length > 0 && !changes) $("body").querySelector("[name=station]").value = found;
}

/** Where a job could not be measured yet: what comes first. */
function noStation() {
  return h(
    "div",
    {},
    h(
      "p",
      {},
      "There is no station yet, and a job is measured at a station. Add one first; it leads on to the job.",
    ),
    h("div", { class: "row" }, h("a", { class: "button main", href: "add-station.html" }, "Add a station")),
  );
}

/** An earlier job to begin with; none where there is none yet. */
async function template() {
  const jobs = (await get("api/jobs?limit=200")).items;
  if (jobs.length === 0) return null;
  const choice = field({
    name: "like",
    label: "Begin with an earlier job",
    kind: "choice",
    options: [
      ["", "no, with an empty form"],
      ...jobs.map((job) => [job.id, `${job.name} ${job.part}`.trim()]),
    ],
  });
  choice.addEventListener("change", ({ target }) => {
    const query = new URLSearchParams(location.search);
    query.set("copy", target.value);
    location.search = query;
  });
  return choice;
}

function build(job, stations, changes) {
  const measures = h("div", { class: "contents" });
  const general = h("p", { class: "fault general", role: "alert" });
  const submit = h("button", { class: "button main", type: "submit" }, changes ? "Save" : "Create job");
  const form = h(
    "form",
    { class: "form", novalidate: true },
    part("Job", order(job, stations)),
    part("Section", [
      field({
        name: "section.kind",
        label: "Kind",
        kind: "choice",
        value: job.section.kind,
        options: Object.entries(words.sections),
      }),
      measures,
    ]),
    part("Specification", specification(job)),
    sketch(),
    part("Where and how it is measured", plan(job)),
    ...(changes
      ? [field({ name: "why", label: "Why it is changed (kept in the record)", required: true })]
      : []),
    ...(changes
      ? [
          h(
            "p",
            { class: "hint" },
            "The statistics of this job are recalculated after a change; radii already measured stay " +
              "as they are.",
          ),
        ]
      : []),
    general,
    h(
      "div",
      { class: "row" },
      submit,
      h("a", { class: "button plain", href: changes ? `job.html?job=${changes}` : "jobs.html" }, "Cancel"),
    ),
  );
  const kind = form.querySelector("[name='section.kind']");
  kind.addEventListener("change", () => showSizes(measures, kind.value, job.section));
  showSizes(measures, kind.value, job.section);
  grouping(form);
  tolerance(form);
  form.sent = keepDraft(form, "job");
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    keep(form, submit, changes && job);
  });
  return form;
}

function part(title, fields) {
  return h("fieldset", { class: "form" }, h("legend", {}, title), h("div", { class: "fields" }, fields));
}

function order(job, stations) {
  const names = [
    ...new Set([...stations.map((each) => each.station), ...(job.station ? [job.station] : [])]),
  ];
  return [
    field({ name: "name", label: "Order", value: job.name, required: true }),
    field({ name: "part", label: "Part or drawing", value: job.part }),
    field({ name: "materialLot", label: "Material lot", value: job.materialLot }),
    field({
      name: "station",
      label: "Station",
      kind: "choice",
      value: job.station ?? names[0],
      options: names.map((each) => [each, each]),
      required: true,
    }),
  ];
}

function specification({ specification: asked, measuredFace }) {
  const given = [
    ["OUTER", "Outer face"],
    ["INNER", "Inner face"],
    ["CENTRELINE", "Centreline"],
  ];
  return [
    field({
      name: "specification.targetMm",
      label: "Target radius",
      kind: "length",
      value: asked.targetMm,
      required: true,
    }),
    field({
      name: "tolerance",
      label: "Tolerance ±",
      kind: "length",
      hint: "fills in both limits; they may differ",
    }),
    field({
      name: "specification.lowerLimitMm",
      label: "Lower limit (LSL)",
      kind: "length",
      value: asked.lowerLimitMm,
      hint: "leave empty if none",
    }),
    field({
      name: "specification.upperLimitMm",
      label: "Upper limit (USL)",
      kind: "length",
      value: asked.upperLimitMm,
      hint: "leave empty if none",
    }),
    field({
      name: "specification.face",
      label: "Radius is specified on",
      kind: "choice",
      value: asked.face,
      options: given,
    }),
    field({
      name: "specification.decideBy",
      label: "Inside the limits must be",
      kind: "choice",
      value: asked.decideBy ?? "MEAN",
      options: [
        ["MEAN", "the mean of a piece"],
        ["EVERYWHERE", "each place of it"],
        ["BOTH", "mean and each place"],
      ],
      hint: "counts where pieces run through a gauge in a line",
    }),
    field({
      name: "measuredFace",
      label: "The bridge stands on",
      kind: "choice",
      value: measuredFace,
      options: given.slice(0, 2),
    }),
  ];
}

function plan({ plan: { positions, subgroups, subgroupSize } }) {
  return [
    field({
      name: "plan.positions",
      label: "Positions along a piece",
      value: positions.join(", "),
      hint: "in measuring order, separated by commas",
      required: true,
    }),
    field({
      name: "plan.subgroups",
      label: "Grouping",
      kind: "choice",
      value: subgroups,
      options: Object.entries(words.subgroups),
    }),
    field({
      name: "plan.subgroupSize",
      label: "Readings per group",
      kind: "number",
      value: subgroupSize,
      hint: "2 to 25",
    }),
  ];
}

function showSizes(place, kind, section) {
  place.replaceChildren(
    ...sizes[kind].map(([name, label]) =>
      field({ name: `section.${name}`, label, kind: "length", value: section[name] ?? null, required: true }),
    ),
  );
}

/** Both limits follow target and tolerance while these are typed. */
function tolerance(form) {
  const input = (name) => form.querySelector(`[name="${name}"]`);
  const [target, plusMinus] = [input("specification.targetMm"), input("tolerance")];
  const fill = () => {
    const [middle, half] = [entered(target.value), entered(plusMinus.value)];
    if (!(middle > 0) || !(half > 0)) return;
    input("specification.lowerLimitMm").value = plainNumber(middle - half);
    input("specification.upperLimitMm").value = plainNumber(middle + half);
  };
  [target, plusMinus].forEach((each) => each.addEventListener("input", fill));
}

/** The size of a subgroup is asked for only where readings in a row make it. */
function grouping(form) {
  const kind = form.querySelector("[name='plan.subgroups']");
  const size = form.querySelector("[name='plan.subgroupSize']");
  const apply = () => {
    size.closest(".field").hidden = kind.value !== "CONSECUTIVE";
  };
  kind.addEventListener("change", apply);
  apply();
}

/** `job` is the job that is changed as it was when the form was filled; null for a new one. */
async function keep(form, submit, job) {
  showFaults(form);
  await busy(
    submit,
    async () => {
      const body = nested(values(form));
      const kept = job
        ? await act("PUT", `api/jobs/${job.id}`, body, job.version)
        : await act("POST", "api/jobs", body);
      if (!kept) return;
      form.sent();
      location.href = await placeOf(kept);
    },
    (problem) => {
      showFaults(form, problem);
      if (job && problem.present) {
        form.querySelector(".fault.general").textContent = changedMeanwhile(form, job, problem.present);
        return;
      }
      if (!form.querySelector("[aria-invalid]")) note(problem.message, "bad");
    },
  );
}

/**
 * What somebody else changed since the form was filled, in words. Fields that were left alone take the present
 * state, so that saving again changes only what was typed here.
 */
function changedMeanwhile(form, job, now) {
  const [before, typed] = [{ ...job }, values(form)];
  Object.assign(job, now);
  const kind = form.querySelector("[name='section.kind']");
  if (kind.value === before.section.kind) put(kind, now.section.kind);
  const parts = [...form.querySelectorAll("[name]")]
    .filter((input) => stated(before, input) !== stated(now, input))
    .map((input) => {
      if (input !== kind && leftAlone(typed, before, input.name)) put(input, at(now, input.name));
      return `${labelOf(input)} was ${stated(before, input)}, is now ${stated(now, input)}`;
    });
  const what = parts.length ? parts.join("; ") : "something that is not on this form";
  return (
    `Somebody changed this job after this form was opened: ${what}. Nothing of yours was saved yet. What you ` +
    "typed is still here, all other fields show the job as it is now. Look at it, then save again."
  );
}

const at = (job, name) => name.split(".").reduce((part, key) => part?.[key], job);
const labelOf = (input) => input.closest(".field").querySelector("label").textContent;
const plain = (value) => (Array.isArray(value) ? value.join(", ") : String(value ?? ""));
const leftAlone = (typed, before, name) => plain(typed[name]) === plain(at(before, name));

/** Shows a value as the form did when it was filled. */
function put(input, value) {
  const isLength = input.dataset.kind === "length" && typeof value === "number";
  input.value = isLength ? String(Number(inUnit(value).toFixed(6))) : plain(value);
  if (isLength) Object.assign(input.dataset, { mm: value, before: input.value });
  input.dispatchEvent(new Event("change"));
}

/** A field of a job in words; a length in the viewer's unit. */
function stated(job, { name, dataset }) {
  const value = at(job, name);
  if (value === null || value === undefined || value === "") return "empty";
  return dataset.kind === "length" && typeof value === "number"
    ? `${plainNumber(inUnit(value))} ${unit()}`
    : plain(value);
}

/** Back to the station that asked for a job, which measures it from now on; else the job's own page. */
async function placeOf(job) {
  if (asked("station") !== job.station) return `job.html?job=${job.id}`;
  const station = encodeURIComponent(job.station);
  await act("POST", `api/stations/${station}/job`, { jobId: job.id });
  return `station.html?station=${station}`;
}

/** Values by dotted name as an object; positions as a list, the size that the grouping implies. */
function nested(flat) {
  const body = {};
  for (const [name, value] of Object.entries(flat)) {
    if (name === "tolerance") continue;
    const [first, second] = name.split(".");
    if (second) (body[first] ??= {})[second] = value;
    else body[first] = value;
  }
  body.plan.positions = body.plan.positions
    .split(",")
    .map((each) => each.trim())
    .filter(Boolean);
  if (body.plan.subgroups === "PIECE") body.plan.subgroupSize = Math.max(2, body.plan.positions.length);
  if (body.plan.subgroups === "INDIVIDUAL") body.plan.subgroupSize = 1;
  return body;
}

start().catch((problem) => showTrouble($("body"), problem));
