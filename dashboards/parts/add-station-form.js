// Name, indicator, bridge and capture of a station that is added; its channel and direction as they were seen.

import { act } from "./identity.js";
import { busy } from "./dialogs.js";
import { keepDraft } from "./drafts.js";
import { $, h } from "./dom.js";
import { field, showFaults, values } from "./forms.js";
import { sketch } from "./sketch.js";
import words from "../api/words.js";

const MODES = [
  ["settled", words.settingChoices["capture.mode=settled"]],
  ["highest", "at the highest point while the bridge is rocked"],
  ["lowest", "at the lowest point while the bridge is turned on a tube"],
  ["trigger", words.settingChoices["capture.mode=trigger"]],
];
const CAPTURES = {
  settled: { mode: "settled" },
  highest: { mode: "extremum", extreme: "highest" },
  lowest: { mode: "extremum", extreme: "lowest" },
  trigger: { mode: "trigger" },
  button: { mode: "trigger", everyFrame: true },
};

/** The form for what was picked; names are those of the stations there are. */
export function showForm(chosen, names) {
  $("name").hidden = false;
  const form = $("form");
  const submit = h("button", { class: "button main", type: "submit" }, "Add the station");
  form.replaceChildren(
    h("div", { class: "fields" }, ...nameFields(names)),
    group("Indicator, from its data sheet", ...indicatorFields(chosen)),
    group("How it measures", ...measureFields(chosen)),
    bridgeGroup(),
    h("p", { class: "fault general", role: "alert" }),
    h("div", { class: "row" }, submit),
  );
  form.onsubmit = (event) => {
    event.preventDefault();
    showFaults(form);
    busy(
      submit,
      () => add(chosen, values(form)),
      (problem) => showFaults(form, problem),
    );
  };
  followDepth(form, chosen);
  form.sent = keepDraft(form, "station");
  [...form.querySelectorAll("input")].find((input) => input.value === "")?.focus();
}

const group = (title, ...fields) =>
  h("fieldset", {}, h("legend", {}, title), h("div", { class: "fields" }, ...fields));

function nameFields(names) {
  return [
    field({
      name: "name",
      label: "Name of the station",
      value: freeName(names),
      hint: "e.g. bend-1; no spaces",
      required: true,
    }),
    field({ name: "machine", label: "Machine", hint: "Which machine it measures at", required: true }),
  ];
}

/** bench-1, or the first of its kind that is free. */
function freeName(names) {
  let number = 1;
  while (names.includes(`bench-${number}`)) number++;
  return `bench-${number}`;
}

function indicatorFields({ proposal }) {
  const lengthField = (name, more) =>
    field({ name, label: words.settings[name], kind: "length", required: true, ...more });
  return [
    lengthField("indicator.resolutionMm", { value: stepOf(proposal) ?? "", hint: "Of the last digit" }),
    lengthField("indicator.permissibleErrorMm", { hint: "Also called accuracy or MPE" }),
    lengthField("indicator.travelMm", { hint: "How far the plunger goes in" }),
  ];
}

/** The step of the last digit: what all values are whole multiples of, from 1 mm down to 0.0001 mm. */
function stepOf({ channels }) {
  const all = channels.flatMap(({ valuesMm }) => valuesMm);
  const whole = (mm, step) => Math.abs(mm / step - Math.round(mm / step)) < 1e-6;
  return (
    [1, 0.1, 0.01, 0.005, 0.001, 0.0005, 0.0001].find((step) => all.every((mm) => whole(mm, step))) ?? null
  );
}

function measureFields(chosen) {
  const fields = [
    field({
      name: "direction",
      label: words.settings.direction,
      kind: "choice",
      value: chosen.direction ?? "",
      options: [
        ...(chosen.direction ? [] : [["", "please choose"]]),
        ...["counts_up", "counts_down"].map((each) => [each, words.settingChoices[`direction=${each}`]]),
      ],
      required: true,
    }),
  ];
  const channels = chosen.proposal.channels.map(({ channel }) => channel);
  if (channels.length > 1) fields.unshift(depthField(channels, chosen.channel));
  if (chosen.way.way !== "button")
    fields.push(
      field({ name: "mode", label: words.settings["capture.mode"], kind: "choice", options: MODES }),
    );
  return fields;
}

/** Another depth may count the other way, by what was seen of its channels while the plunger was pushed in. */
function followDepth(form, { read }) {
  const depth = form.querySelector("[name='depth']");
  const direction = form.querySelector("[name='direction']");
  depth?.addEventListener("change", () => {
    const moved = movedBy(depth.value, read ?? []);
    if (moved) direction.value = moved > 0 ? "counts_up" : "counts_down";
  });
}

/** How far the depth moved; undefined where one of its channels was not seen. */
function movedBy(depth, read) {
  const [kind, first, second] = depth.split(" ");
  const [a, b] = [first, second].map((each) => {
    const seen = read.find(({ channel }) => channel === Number(each));
    return seen && seen.lastMm - seen.firstMm;
  });
  return { channel: a, difference: a - b, mean: a + b }[kind];
}

/** One channel, or two of them together. */
function depthField(channels, seen) {
  const pairs = channels.flatMap((a) => channels.filter((b) => b !== a).map((b) => [a, b]));
  return field({
    name: "depth",
    label: "Depth is",
    kind: "choice",
    value: seen === undefined ? `channel ${channels[0]}` : `channel ${seen}`,
    options: [
      ...channels.map((each) => [`channel ${each}`, `channel ${each}`]),
      ...pairs.map(([a, b]) => [`difference ${a} ${b}`, `channel ${a} less channel ${b}`]),
      ...pairs
        .filter(([a, b]) => a < b)
        .map(([a, b]) => [`mean ${a} ${b}`, `mean of channels ${a} and ${b}`]),
    ],
  });
}

function bridgeGroup() {
  return h(
    "fieldset",
    {},
    h("legend", {}, "Bridge that carries it"),
    sketch(),
    h(
      "div",
      { class: "fields" },
      field({ name: "bridge.name", label: "Name", value: "bridge 1", required: true }),
      field({ name: "bridge.spanMm", label: "Span", kind: "length", required: true }),
      field({
        name: "bridge.spanUncertaintyMm",
        label: "Standard uncertainty of the span",
        kind: "length",
        value: 0.05,
        hint: "0.05 mm with a calliper, 0.01 mm on a measuring machine",
        required: true,
      }),
      field({
        name: "bridge.footRadiusMm",
        label: "Foot radius",
        kind: "length",
        value: 0,
        hint: "0 for an edge",
      }),
      field({
        name: "bridge.footKind",
        label: "Feet",
        kind: "choice",
        value: "",
        options: [["", "not known (taken as points)"], ...Object.entries(words.feet)],
        hint: "How they touch the piece: it decides what standing askew does to a reading",
      }),
      field({
        name: "bridge.skewLimitDegrees",
        label: "Skew, at most ±",
        kind: "number",
        value: 0.5,
        suffix: "degrees",
      }),
    ),
  );
}

/** As the station file has it. */
function stationOf({ heard, proposal, way }, told) {
  const station = {
    name: told.name,
    machine: told.machine,
    link: heard.tried.link,
    profile: proposal.profile,
    direction: told.direction,
    indicator: {},
    bridge: {},
    capture: CAPTURES[told.mode ?? way.way] ?? CAPTURES.settled,
  };
  for (const [key, value] of Object.entries(told)) {
    const [part, name] = key.split(".");
    if (name && value !== null && value !== "") station[part][name] = value;
  }
  if (way.way === "button") station.silenceSeconds = 0;
  const [kind, first, second] = (told.depth ?? "").split(" ");
  if (kind === "channel") station.channel = Number(first);
  else if (kind) station.combine = { kind, first: Number(first), second: Number(second) };
  else station.channel = proposal.channels[0].channel;
  return station;
}

async function add(chosen, told) {
  if (told.direction === "") {
    throw { faults: [{ field: "direction", problem: "is missing", allowed: "counts up, or counts down" }] };
  }
  if (!(await act("POST", "api/stations", { station: stationOf(chosen, told) }))) return;
  $("form").sent();
  location.href = `station.html?station=${encodeURIComponent(told.name)}`;
}
