// What a station's operator is asked: why a reading is undone, zero, lot, bridge, job, place.

import { get } from "./api.js";
import { act, tryTo } from "./identity.js";
import { askChoice, askForm, note } from "./dialogs.js";
import { field } from "./forms.js";
import { askWhyOut } from "./out-reasons.js";
import { number } from "./roller-dialogs.js";
import { liveLine } from "./live-line.js";
import { session } from "./session.js";
import { length, plainLength, radius, unit } from "./units.js";
import { viewer } from "./viewer.js";

const CARE = "Rollers stopped and drive locked out? Machine manual and local rules first.";
export function undo(bench) {
  const last = bench.summary.lastReading;
  const { value, plusMinus } = radius(last);
  return askWhyOut({
    title: `Undo piece ${last.piece}, ${last.position}: why?`,
    intro:
      `Radius ${`${value} ${plusMinus}`.trim()}\u00a0${unit()}. The reading stays in the record but no longer ` +
      "counts. Measure this place again next.",
    confirm: "Undo",
    act: (reason) => out(bench, last, reason),
  });
}

/** Names the reading that was shown, so that one that came meanwhile is not taken for it. */
async function out({ path, load }, last, reason) {
  const done = await act("POST", `${path}/undo`, { reason, readingId: last.id });
  if (done) note(`Piece ${last.piece}, ${last.position}, is undone. Measure it again.`);
  await load();
  return true;
}

export function zero({ name, path, load }) {
  return askForm({
    title: "Set zero on the flat",
    care: CARE,
    confirm: "Set zero",
    intro: "Wipe the feet and the flat. Stand the bridge on the flat and let go of it.",
    fields: [liveLine(name)],
    async act() {
      const kept = await act("POST", `${path}/zero`, {});
      if (kept?.doubt) note(`${kept.doubt} Lift the bridge and set zero again, on the flat.`, "bad", "zero");
      else if (kept) note(`Zero set: ${length(kept.valueMm, 4)}\u00a0${unit()} on the flat.`);
      await load();
      return true;
    },
  });
}

export function lot({ path, summary, load }) {
  return askForm({
    title: "New material lot",
    intro: `Up to now: ${summary.job.currentLot || "no lot named"}. The chart starts anew here.`,
    confirm: "Record the lot",
    fields: [field({ name: "materialLot", label: "Name of the new lot", required: true })],
    act: ({ materialLot }) =>
      happened(path, load, `New material lot: ${materialLot}.`, { kind: "MATERIAL_LOT", materialLot }),
  });
}

async function happened(path, load, done, body) {
  if (await act("POST", `${path}/events`, body)) note(done);
  await load();
  return true;
}

export async function bridge({ path, gauge, load }) {
  const bridges = await get("api/bridges");
  const mounted = gauge.bridge?.id;
  return askChoice({
    title: "Which bridge is on the indicator?",
    intro: "Set zero again after a change.",
    choices: bridges.map((each) => [
      each.id,
      each.name,
      `span ${plainLength(each.spanMm)}\u00a0${unit()}${each.id === mounted ? ", on now" : ""}`,
    ]),
    other: [
      [
        "Add or change a bridge…",
        () => {
          location.href = "gauge.html";
        },
      ],
    ],
    async act(bridgeId) {
      if (await act("POST", `${path}/bridge`, { bridgeId })) note("Bridge changed. Set zero on the flat.");
      await load();
      return true;
    },
  });
}

export async function place({ path, summary: { station, job }, load }) {
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
    async act(wanted) {
      await act("POST", `${path}/place`, wanted);
      await load();
      return true;
    },
  });
}

export async function person({ path, summary, load }) {
  const { accounts } = await session();
  if (accounts) {
    const answer = await tryTo(`${path}/person`, {}, "Readings carry your name from now on.");
    if (answer) await load();
    return answer;
  }
  return askForm({
    title: "Who measures?",
    intro: "The name is recorded with each reading from now on.",
    confirm: "Save",
    fields: [
      field({
        name: "name",
        label: "Name or initials",
        value: summary.station.person ?? viewer("name"),
        required: true,
      }),
    ],
    async act(typed) {
      if (await act("POST", `${path}/person`, typed)) note(`${typed.name} measures from now on.`);
      await load();
      return true;
    },
  });
}

export async function masters({ path, summary, load }) {
  const active = !summary.station.onMasters;
  if (await act("POST", `${path}/on-masters`, { active }))
    note(
      active
        ? "The job is suspended. What is measured now is no piece."
        : `Back to the ${summary.station.study ? "study" : "job"}.`,
    );
  await load();
}

export async function setUp({ path, summary, load }) {
  const { scale, start } = summary.correction ?? {};
  return askForm({
    title: "New machine set-up",
    care: CARE,
    intro: "The chart starts anew here.",
    confirm: "Record the set-up",
    fields: [
      field({
        name: "settingAfter",
        label: scale?.described ? `The ${scale.name} now shows` : "Setting now",
        kind: "number",
        suffix: scale?.described ? scale.unit : "",
        hint: start ? `${number(start.setting, scale)}: ${start.text}.` : "",
      }),
      field({ name: "note", label: "What was done" }),
    ],
    act: (typed) => happened(path, load, "Set-up recorded.", { kind: "SET_UP", ...typed }),
  });
}

export async function remark({ path, load }) {
  return askForm({
    title: "Note",
    confirm: "Save note",
    fields: [field({ name: "note", label: "Note", kind: "long", required: true })],
    act: (typed) => happened(path, load, "Note saved.", { kind: "NOTE", ...typed }),
  });
}
