// Events of a job: what is asked of one, and their table, where what can be is taken back.

import { act } from "./identity.js";
import { askForm, note } from "./dialogs.js";
import { h, table } from "./dom.js";
import { field } from "./forms.js";
import { eventWords, lotWords } from "./job-words.js";
import { dateTime, timeWords } from "./times.js";
import words from "../api/words.js";

/** `changed` is awaited where one is taken back. */
export function eventTable(rows, job, changed) {
  const all = table(
    "Events, the newest first",
    [
      { head: "Time", cell: (row) => dateTime(row.at) },
      { head: "Event", kind: "lead", cell: (row) => words.events[row.kind] },
      { head: "What", kind: "new", cell: (row) => eventWords(row) },
      { head: "By", kind: "named", cell: (row) => row.by },
      {
        head: "",
        kind: "act",
        cell: (row) => {
          if (row.takenBackReason !== null) return takenBack(row);
          if (!row.canBeTakenBack) return "";
          const back = takeBackButton(row, job, changed);
          return row.kind === "MATERIAL_LOT"
            ? h("span", { class: "row" }, putRightButton(row, job, changed), back)
            : back;
        },
      },
    ],
    rows,
    "lines",
  );
  [...all.querySelectorAll("tbody tr")].forEach((tr, i) => {
    if (rows[i].takenBackReason !== null) tr.dataset.out = "";
  });
  return all;
}

function takeBackButton(event, job, changed) {
  const what = `${words.events[event.kind]} ${eventWords(event)}`.trim();
  return h(
    "button",
    {
      class: "button changes",
      type: "button",
      "aria-label": `Take back: ${what}`,
      on: { click: () => takeBack(event, what, job, changed) },
    },
    "Take back",
  );
}

function putRightButton(event, job, changed) {
  return h(
    "button",
    {
      class: "button changes",
      type: "button",
      "aria-label": `Put right: ${lotWords(event.materialLot)}`,
      on: { click: () => putRight(event, job, changed) },
    },
    "Put right",
  );
}

/** The right lot from the same reading on, in place of the wrong one. */
async function putRight(event, job, changed) {
  const { kind, id: replaces } = event;
  const done = await askForm({
    title: "Which lot was it?",
    intro:
      `The readings since ${timeWords(event.at)} count for the lot that you name; ` +
      `${lotWords(event.materialLot)} stays in the record, crossed out.`,
    confirm: "Put right",
    fields: [
      field({ name: "materialLot", label: "Material lot", required: true }),
      field({ name: "note", label: "Reason (kept in the record)", required: true }),
    ],
    act: ({ materialLot, note }) =>
      act("POST", `api/jobs/${job.id}/events`, { kind, replaces, materialLot, note }),
  });
  if (!done) return;
  note("Put right.");
  await changed();
}

async function takeBack(event, what, job, changed) {
  const done = await askForm({
    title: "Take back this event?",
    intro: `${what}. It stays in the record, crossed out, but no longer counts.`,
    confirm: "Take back",
    fields: [field({ name: "reason", label: "Reason (kept in the record)", required: true })],
    act: (typed) => act("POST", `api/jobs/${job.id}/events/${event.id}/take-back`, typed),
  });
  if (!done) return;
  note("Taken back.");
  await changed();
}

/** What is asked of an event of that kind; `moment`: the field of when it was, or null. */
export function eventFields(kind, moment) {
  const why = field({ name: "note", label: "Note", kind: "long", required: kind === "NOTE" });
  if (kind === "CORRECTION") {
    return [
      h(
        "div",
        { class: "fields" },
        field({
          name: "settingBefore",
          label: "Setting before",
          kind: "number",
          hint: "in the machine’s own unit",
        }),
        field({ name: "settingAfter", label: "Setting after", kind: "number" }),
      ),
      moment,
      why,
    ];
  }
  return kind === "MATERIAL_LOT"
    ? [field({ name: "materialLot", label: "New material lot", required: true }), moment, why]
    : [moment, why];
}

const takenBack = ({ takenBackReason, takenBackBy }) =>
  h("span", { class: "kept" }, `taken back by ${takenBackBy}: ${takenBackReason}`);
