// Adding a station: choose the port, see what comes, accept the proposed frame profile, name it.

import { act } from "./identity.js";
import { get } from "./api.js";
import { busy, note } from "./dialogs.js";
import { keepDraft } from "./drafts.js";
import { $, h, say, state, table } from "./dom.js";
import { field, showFaults, values } from "./forms.js";
import { frame, showTrouble } from "./frame.js";
import { sketch } from "./sketch.js";
import { length, unit } from "./units.js";
import words from "/api/words.js";

const SURE = 0.7;
const chosen = { link: null, profile: null };

async function start() {
  frame("stations");
  const [ports, stations] = await Promise.all([get("/api/ports"), get("/api/stations")]);
  const used = new Map(stations.map((station) => [station.target, station.station]));
  chosen.names = stations.map((station) => station.station);
  const list = ports.map((port) => portButton(port, used));
  const other = h(
    "form",
    { class: "form", novalidate: true },
    field({
      name: "port",
      label: ports.length ? "Or another port" : "Port",
      hint: "A device’s path as /dev/ttyUSB0, COM3, or the address of a device server as 192.168.1.20:4001",
    }),
    h("div", { class: "row" }, h("button", { class: "button", type: "submit" }, "Listen here")),
  );
  other.addEventListener("submit", (event) => {
    event.preventDefault();
    showFaults(other);
    busy(
      other.querySelector("button"),
      () => listen(values(other).port),
      (problem) => showFaults(other, problem),
    );
  });
  $("ports").replaceChildren(
    ports.length
      ? h("div", { class: "choices" }, list)
      : h(
          "p",
          { class: "empty" },
          "No serial port is plugged in. Plug the indicator’s cable or Bluetooth adapter in and load " +
            "this page again, or name a port.",
        ),
    other,
  );
}

function portButton(port, used) {
  const path =
    (port.alike.length > 0
      ? port.stableLinks.find((link) => link.includes("/by-path/"))
      : port.stableLinks[0]) ?? port.path;
  const taken =
    used.get(path) ?? used.get(port.path) ?? port.stableLinks.map((link) => used.get(link)).find(Boolean);
  const what = [port.description, port.serialNumber].filter(Boolean).join(", ");
  const element = h(
    "button",
    { class: "button", type: "button", disabled: Boolean(taken) },
    port.path,
    h("small", {}, taken ? `in use by station ${taken}` : what || "serial port"),
  );
  element.addEventListener("click", () =>
    busy(
      element,
      () => listen(path),
      (problem) => note(problem.message, "bad"),
    ),
  );
  return element;
}

/** Tries the usual settings in turn until what comes makes sense; shows how far it is. */
async function listen(port) {
  const tries = await get(`/api/ports/tries?port=${encodeURIComponent(port)}`);
  $("hear").hidden = false;
  $("name").hidden = true;
  let best = null;
  let silent = 0;
  for (const each of tries) {
    progress(each, tries.length);
    const heard = await act("POST", "/api/ports/hear", { port, attempt: each.attempt, seconds: 1.5 });
    if (heard === null) {
      $("hear").hidden = true;
      return;
    }
    if (heard.bytes === 0) silent++;
    if (
      !best ||
      confidence(heard) > confidence(best) ||
      (confidence(heard) === confidence(best) && heard.bytes > best.bytes)
    )
      best = heard;
    if (confidence(best) >= SURE || silent === 8) break;
  }
  showHeard(port, best);
}

const confidence = (heard) => heard.proposals[0]?.confidence ?? 0;

function progress(each, count) {
  $("heard").replaceChildren(
    h("p", { role: "status" }, `Listening at ${each.words}: try ${each.attempt + 1} of ${count}`),
    h("progress", { value: each.attempt, max: count, "aria-label": "Settings tried" }),
    h("p", { class: "hint" }, "Move the plunger meanwhile, or press the indicator’s data button."),
  );
}

function showHeard(port, { tried, bytes, pieces, proposals }) {
  const again = h("button", { class: "button", type: "button" }, "Listen again");
  again.addEventListener("click", () =>
    busy(
      again,
      () => listen(port),
      (problem) => say($("heard"), problem.message),
    ),
  );
  if (bytes === 0) {
    $("heard").replaceChildren(
      h("p", {}, state("bad", "Nothing came"), " Is the indicator on, its cable in, and is it set to send?"),
      h("div", { class: "row" }, again),
    );
    return;
  }
  const stream = h(
    "pre",
    { class: "stream", tabindex: "0", "aria-label": "What came" },
    pieces.slice(-12).map((piece) => `${piece.atSeconds.toFixed(2).padStart(6)} s  ${named(piece.text)}\n`),
  );
  $("heard").replaceChildren(
    h("p", {}, `At ${tried.words} came:`),
    stream,
    ...(proposals.length
      ? [
          h("p", {}, "It may be read like this; choose the line that shows what the indicator shows:"),
          proposalTable(tried, proposals),
        ]
      : [
          h(
            "p",
            {},
            state("bad", "Nothing fits"),
            " Move the plunger up and down and listen again. If that does not help, set the indicator to send " +
              "plain text, or ask the person who looks after the computer.",
          ),
        ]),
    h("div", { class: "row" }, again),
  );
}

// The signs for control characters are in few fonts.
function named(text) {
  return text.replace(
    /[\u2400-\u2421]/g,
    (sign) =>
      ({ "\u240a": "‹LF›", "\u240d": "‹CR›", "\u2402": "‹STX›", "\u2403": "‹ETX›" })[sign] ??
      `‹${(sign.charCodeAt(0) - 0x2400).toString(16).padStart(2, "0")}›`,
  );
}

function proposalTable(tried, proposals) {
  return table(
    "Ways to read it",
    [
      {
        head: `Newest values, ${unit()}`,
        cell: (p) =>
          h(
            "strong",
            {},
            p.valuesMm
              .slice(-4)
              .map((mm) => length(mm, 3))
              .join("  "),
          ),
      },
      { head: "Match", number: true, cell: (p) => `${Math.round(100 * p.confidence)} %` },
      { head: "Frames", number: true, cell: (p) => `${p.frames} read, ${p.refused} rejected` },
      { head: "To be confirmed", cell: (p) => p.assumptions.join("; ") || "nothing" },
      { head: "Choose", cell: (p) => accept(tried, p) },
    ],
    proposals,
  );
}

/** The step of the last digit: what all values are whole multiples of, from 1 mm down to 0.0001 mm. */
function stepOf({ valuesMm }) {
  const whole = (mm, step) => Math.abs(mm / step - Math.round(mm / step)) < 1e-6;
  return (
    [1, 0.1, 0.01, 0.005, 0.001, 0.0005, 0.0001].find((step) => valuesMm.every((mm) => whole(mm, step))) ??
    null
  );
}

/** bench-1, or the first of its kind that is free. */
function freeName() {
  let number = 1;
  while (chosen.names.includes(`bench-${number}`)) number++;
  return `bench-${number}`;
}

function accept(tried, proposal) {
  return h(
    "button",
    {
      class: "button",
      type: "button",
      on: {
        click() {
          Object.assign(chosen, { link: tried.link, profile: proposal.profile, stepMm: stepOf(proposal) });
          showForm();
        },
      },
    },
    "Use this",
  );
}

function showForm() {
  $("name").hidden = false;
  const form = $("form");
  const submit = h("button", { class: "button main", type: "submit" }, "Add the station");
  form.replaceChildren(
    h(
      "div",
      { class: "fields" },
      field({
        name: "name",
        label: "Name of the station",
        value: freeName(),
        hint: "e.g. bend-1; no spaces",
        required: true,
      }),
      field({ name: "machine", label: "Machine", hint: "Which machine it measures at", required: true }),
    ),
    h(
      "fieldset",
      {},
      h("legend", {}, "Indicator, from its data sheet"),
      h(
        "div",
        { class: "fields" },
        field({
          name: "indicator.resolutionMm",
          label: "Step",
          kind: "length",
          value: chosen.stepMm ?? "",
          hint: "Of the last digit",
          required: true,
        }),
        field({
          name: "indicator.permissibleErrorMm",
          label: "Permissible error ±",
          kind: "length",
          required: true,
        }),
        field({ name: "indicator.travelMm", label: "Travel", kind: "length", required: true }),
      ),
    ),
    h(
      "fieldset",
      {},
      h("legend", {}, "Bridge that is on it"),
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
    ),
    h("p", { class: "fault general", role: "alert" }),
    h("div", { class: "row" }, submit),
  );
  form.onsubmit = (event) => {
    event.preventDefault();
    showFaults(form);
    busy(
      submit,
      () => add(values(form)),
      (problem) => showFaults(form, problem),
    );
  };
  form.sent = keepDraft(form, "station");
  form.querySelector("input").focus();
}

async function add(told) {
  const station = {
    name: told.name,
    machine: told.machine,
    link: chosen.link,
    profile: chosen.profile,
    indicator: {},
    bridge: {},
  };
  for (const [key, value] of Object.entries(told)) {
    const [part, name] = key.split(".");
    if (name && value !== null && value !== "") station[part][name] = value;
  }
  if (!(await act("POST", "/api/stations", { station }))) return;
  $("form").sent();
  location.href = `/station.html?station=${encodeURIComponent(told.name)}`;
}

start().catch((problem) => showTrouble($("ports"), problem));
