// What an operator does at a station, each in one or two touches.

import { get } from "./api.js";
import { act, tryTo } from "./identity.js";
import { askChoice, askForm, busy, note } from "./dialogs.js";
import { h } from "./dom.js";
import { field } from "./forms.js";
import { length, plainLength, unit } from "./units.js";

const CARE = "Rollers stopped and drive locked out? The machine’s manual and local rules come first.";

/** The buttons; bench is { name, summary, gauge, readings, out, load }. */
export function showActions(place, bench) {
  const path = `/api/stations/${encodeURIComponent(bench.name)}`;
  const { job } = bench.summary;
  const last = bench.readings.find((reading) => !bench.out.has(reading.id));
  const buttons = [
    ["Measure", "main", job && bench.gauge.bridge, () => tryTo(`${path}/trigger`, {})],
    ["Undo", "", last, () => undo(path, last, bench)],
    ["Next piece", "", job, () => nextPiece(path, bench)],
    ["Zero", "", bench.gauge.bridge, () => zero(path, bench)],
    ["Correction", "", job, () => correction(path, job, bench)],
    ["New lot", "", job, () => lot(path, job, bench)],
    ["Bridge", "", true, () => bridge(path, bench)],
    ["More", "", true, () => more(path, bench)],
  ];
  const focused = document.activeElement?.dataset?.act;
  place.replaceChildren(...buttons.map(([words, kind, able, work]) => button(words, kind, able, work)));
  if (focused) place.querySelector(`[data-act="${focused}"]`)?.focus();
}

function button(words, kind, able, work) {
  const element = h(
    "button",
    { class: `button ${kind}`, type: "button", disabled: !able, data: { act: words } },
    words,
  );
  element.addEventListener("click", () => busy(element, work, (problem) => note(problem.message, "bad")));
  return element;
}

function undo(path, last, bench) {
  return askChoice({
    title: `Exclude piece ${last.piece}, ${last.position}: why?`,
    intro: "The reading stays in the record, but no longer counts. Measure this place again next.",
    choices: [
      "Bridge moved or stood skew",
      "Dirt or scale under a foot",
      "Wrong place on the piece",
      "Not a piece of this job",
    ].map((each) => [each, each]),
    other: [["Another reason…", () => otherReason(path, bench)]],
    act: (reason) => out(path, reason, bench),
  });
}

function otherReason(path, bench) {
  return askForm({
    title: "Exclude the last reading",
    fields: [field({ name: "reason", label: "Reason", required: true })],
    confirm: "Exclude",
    act: ({ reason }) => out(path, reason, bench),
  });
}

async function out(path, reason, bench) {
  const done = await act("POST", `${path}/undo`, { reason });
  if (done) note("Reading excluded.");
  await bench.load();
  return true;
}

async function nextPiece(path, bench) {
  const place = await tryTo(`${path}/next-piece`, {});
  if (place) note(`Now piece ${place.piece}.`);
  await bench.load();
}

function zero(path, bench) {
  return askForm({
    title: "Set zero on the flat",
    care: CARE,
    confirm: "Set zero",
    intro: "Wipe the feet and the flat. Stand the bridge on the flat and let go of it.",
    async act() {
      const kept = await act("POST", `${path}/zero`, {});
      if (kept) note(`Zero set: the indicator shows ${length(kept.valueMm, 4)} ${unit()} on the flat.`);
      await bench.load();
      return true;
    },
  });
}

async function correction(path, job, bench) {
  const events = (await get(`/api/jobs/${job.id}/events`)).filter((each) => each.settingAfter !== null);
  return askForm({
    title: "Correction at the rollers",
    care: CARE,
    confirm: "Record the correction",
    intro:
      "The chart starts a new phase here. The settings help to learn what a step does; leave both " +
      "empty if there are none.",
    fields: [
      h(
        "div",
        { class: "fields" },
        field({
          name: "settingBefore",
          label: "Setting before",
          kind: "number",
          value: events.at(-1)?.settingAfter ?? "",
        }),
        field({ name: "settingAfter", label: "Setting after", kind: "number" }),
      ),
      field({ name: "note", label: "Remark" }),
    ],
    act: ({ settingBefore, settingAfter, note: remark }) =>
      happened(path, bench, "Correction recorded.", {
        kind: "CORRECTION",
        settingBefore,
        settingAfter,
        note: remark,
      }),
  });
}

function lot(path, job, bench) {
  return askForm({
    title: "New material lot",
    intro: `Up to now: ${job.materialLot || "no lot named"}. The chart starts a new phase here.`,
    confirm: "Record the lot",
    fields: [field({ name: "materialLot", label: "Name of the new lot", required: true })],
    act: ({ materialLot }) =>
      happened(path, bench, `New material lot: ${materialLot}.`, { kind: "MATERIAL_LOT", materialLot }),
  });
}

async function happened(path, bench, done, body) {
  if (await act("POST", `${path}/events`, body)) note(done);
  await bench.load();
  return true;
}

async function bridge(path, bench) {
  const bridges = await get("/api/bridges");
  const mounted = bench.gauge.bridge?.id;
  return askChoice({
    title: "Which bridge is on the indicator?",
    intro: "Set zero again after a change.",
    choices: bridges.map((each) => [
      each.id,
      each.name,
      `span ${plainLength(each.spanMm)} ${unit()}${each.id === mounted ? ", on now" : ""}`,
    ]),
    other: [
      [
        "Add or change a bridge…",
        () => {
          location.href = "/gauge.html";
        },
      ],
    ],
    async act(bridgeId) {
      if (await act("POST", `${path}/bridge`, { bridgeId })) note("Bridge changed. Set zero on the flat.");
      await bench.load();
      return true;
    },
  });
}

function more(path, bench) {
  const { job } = bench.summary;
  const ways = { job: selectJob, place: goTo, setUp, remark };
  const choices = [
    ["job", "Choose the job"],
    ...(job
      ? [
          ["place", "Choose piece and position"],
          ["setUp", "New machine set-up", "rollers changed, machine cleaned"],
          ["remark", "Write a note"],
        ]
      : []),
  ];
  return askChoice({
    title: "More",
    choices,
    act: (way) => {
      setTimeout(() => ways[way](path, bench));
      return true;
    },
  });
}

async function selectJob(path, bench) {
  const jobs = (await get("/api/jobs?limit=200")).items.filter(
    (job) => job.station === bench.name && job.state === "OPEN",
  );
  return askChoice({
    title: "Which job is on the machine?",
    intro: jobs.length ? "" : "There is no open job for this station.",
    choices: jobs.map((job) => [
      job.id,
      job.name,
      [job.part, job.materialLot].filter(Boolean).join(", lot "),
    ]),
    other: [
      [
        "Create a job…",
        () => {
          location.href = "/job-form.html";
        },
      ],
    ],
    async act(jobId) {
      if (await act("POST", `${path}/job`, { jobId })) note("Job chosen.");
      await bench.load();
      return true;
    },
  });
}

function goTo(path, bench) {
  const { station, job } = bench.summary;
  return askForm({
    title: "Choose piece and position",
    confirm: "Save",
    fields: [
      field({ name: "piece", label: "Piece", kind: "number", value: station.piece }),
      field({
        name: "position",
        label: "Position",
        kind: "choice",
        value: station.position,
        options: job.plan.positions.map((each) => [each, each]),
      }),
    ],
    async act(place) {
      await act("POST", `${path}/place`, place);
      await bench.load();
      return true;
    },
  });
}

function setUp(path, bench) {
  return askForm({
    title: "New machine set-up",
    care: CARE,
    intro: "The chart starts a new phase here.",
    confirm: "Record it",
    fields: [field({ name: "note", label: "What was done" })],
    act: ({ note: remark }) => happened(path, bench, "Recorded.", { kind: "SET_UP", note: remark }),
  });
}

function remark(path, bench) {
  return askForm({
    title: "Note",
    confirm: "Save note",
    fields: [field({ name: "note", label: "Note", kind: "long", required: true })],
    act: ({ note: words }) => happened(path, bench, "Note saved.", { kind: "NOTE", note: words }),
  });
}
