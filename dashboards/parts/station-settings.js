// The settings of a station as its file has them: changed and tried at once, or the station removed.

import { get, needed } from "./api.js";
import { askForm, busy } from "./dialogs.js";
import { $, h } from "./dom.js";
import { field, showFaults, values } from "./forms.js";
import { frame, showTrouble } from "./frame.js";
import { act } from "./identity.js";
import { asFilled, keepTyped } from "./stale-form.js";
import words from "../api/words.js";

const PARTS = ["link", "indicator", "capture", "feed", "zero"];
const ALWAYS = Object.keys(words.settings).filter((key) => /^(capture|feed)\.(?!link$|profile$)/.test(key));
const NOT_HERE = ["name", "machine", "bridge", "link.kind", "profile.kind", "feed.link.kind", "feed.profile.kind"];

/** Of a link for the length that the file does not have yet. */
const OWN_LINK = ["feed.link.kind", "feed.link.port", "feed.link.host", "feed.link.rate"];

/** One number a line, as encoders with an interface send; other frames are written in the file. */
const COUNTS = {
  framing: { kind: "terminator", terminator: "\n" },
  pattern: "(?P<value>[+-]?[0-9]+)\\r?",
  unit: "MM",
};

async function start() {
  frame("stations");
  const name = needed("station", "station");
  const path = `api/stations/${encodeURIComponent(name)}`;
  const known = await get(`${path}/settings`);
  $("title").textContent = `Settings of ${name}`;
  const query = `?station=${encodeURIComponent(name)}`;
  $("back").replaceChildren(
    h("a", { class: "button", href: `station.html${query}` }, "Station"),
    h("a", { class: "button", href: `gauge.html${query}` }, "Gauge"),
  );
  $("settings").replaceChildren(form(name, path, known), removal(name, path, known));
  $("settings").removeAttribute("aria-busy");
}

/** `known` has the settings and their version as the form shows them. */
function form(name, path, known) {
  const save = h("button", { class: "button main", type: "submit" }, "Save and try");
  const element = h(
    "form",
    { class: "sheet form", novalidate: true },
    h("p", {}, "The station stops and starts with the new settings; its job, zero and readings stay."),
    ...sections(known.station),
    h("p", { class: "fault general", role: "alert" }),
    h("div", { class: "row" }, save),
  );
  const filled = asFilled(element);
  element.addEventListener("submit", (event) => {
    event.preventDefault();
    showFaults(element);
    busy(
      save,
      () => change(name, path, known, values(element)),
      (problem) => {
        if (!problem.present) return showFaults(element, problem);
        Object.assign(known, problem.present);
        anew(element, filled, form(name, path, known));
      },
    );
  });
  return element;
}

/** Somebody else changed the settings: shown as they are now, with what was typed here. */
function anew(from, filled, to) {
  from.replaceWith(to);
  const words = keepTyped({ from, filled, to }, "these settings");
  to.querySelector(".fault.general").textContent = words;
  to.querySelector("button.main").focus();
}

async function change(name, path, { station, version }, typed) {
  const changed = filled(station, typed);
  const answer = await act("PUT", `${path}/settings`, { station: changed }, version);
  if (answer !== null) location.assign(`station.html?station=${encodeURIComponent(name)}`);
}

/** One part of the form for each part of the file; what has no part of its own comes first. */
function sections(station) {
  const all = leaves(station);
  const sent = all.filter(({ keys }) => keys[0] === "feed" && keys[1] === "profile");
  const of = (part) => all.filter((each) => each.keys[0] === part && !sent.includes(each));
  const own = all.filter(({ keys }) => ![...PARTS, "profile"].includes(keys[0]));
  return [
    group("Station", own),
    ...PARTS.filter((part) => part === "capture" || of(part).length).map((part) =>
      group(words.settings[part], [...of(part), ...missing(part, station)]),
    ),
    ...(station.feed ? [] : [folded("feed", missing("feed", station))]),
    folded("profile", of("profile")),
    ...(sent.length ? [folded("feed.profile", sent)] : []),
  ];
}

const group = (title, fields) =>
  h("fieldset", {}, h("legend", {}, title), h("div", { class: "fields" }, ...fields.map(input)));

/** What is seldom changed by hand: how frames are read, and a section that runs through where none does. */
function folded(part, fields) {
  return h(
    "details",
    { class: "wide" },
    h("summary", { class: "button plain" }, words.settings[part]),
    h("div", { class: "fields" }, ...fields.map(input)),
  );
}

/** What the file does not say, and takes its default, can be said here. */
function missing(part, station) {
  const own = part === "feed" && !station.feed?.link ? OWN_LINK : [];
  return [...ALWAYS, ...own]
    .map((key) => key.split("."))
    .filter(([of, name]) => of === part && (name === "link" || !(name in (station[part] ?? {}))))
    .map((keys) => ({ keys, value: "" }));
}

/** Whether it holds settings of its own. */
const isPart = (value) => value !== null && typeof value === "object" && !Array.isArray(value);

/** The single values of a settings tree, each with the keys that lead to it. */
export function leaves(node, keys = []) {
  return Object.entries(node).flatMap(([key, value]) => {
    if (NOT_HERE.includes([...keys, key].join("."))) return [];
    return isPart(value) ? leaves(value, [...keys, key]) : [{ keys: [...keys, key], value }];
  });
}

function input({ keys, value }) {
  const name = keys.join(".");
  const key = known(name);
  const choices = choicesOf(key, value);
  const unit = words.settingUnits[key] ?? "";
  return field({
    name,
    label: labelOf(known(name).split(".")),
    kind: kindOf(value, choices, unit),
    value: Array.isArray(value)
      ? value.join("\n")
      : typeof value === "string"
        ? asChosen(value, choices)
        : value,
    options: choices,
    suffix: unit === "mm" ? "" : unit,
    hint: words.settingHints[key] ?? "",
  });
}

/** The link of a length, and its frames, are called as those of the indicator. */
function known(name) {
  const shared = name !== OWN_KIND && ["feed.link.", "feed.profile."].some((part) => name.startsWith(part));
  return shared ? name.slice("feed.".length) : name;
}

/** Settings name constants in any case; choices do in small letters. */
const asChosen = (value, choices) => (choices.length ? value.toLowerCase() : value);

function kindOf(value, choices, unit) {
  if (choices.length) return "choice";
  if (Array.isArray(value)) return "long";
  if (unit === "mm") return "length";
  return typeof value === "number" || unit ? "number" : "text";
}

const OWN_KIND = "feed.link.kind";
const OWN_KINDS = [
  ["", "none"],
  ["serial", "a serial port"],
  ["tcp", "the network"],
];

/** Not said in the file: no. */
const FLAGS = ["capture.everyFrame", "feed.reversed", "feed.bothWays"];

const YES_OR_NO = [
  ["true", "yes"],
  ["false", "no"],
];

/** What may be chosen, with its words; none where it is to be typed. */
function choicesOf(key, value) {
  if (typeof value === "boolean") return YES_OR_NO;
  if (key === OWN_KIND) return OWN_KINDS;
  if (FLAGS.includes(key)) return [["", "as usual: no"], ...YES_OR_NO];
  const named = Object.entries(words.settingChoices)
    .filter(([each]) => each.startsWith(`${key}=`))
    .map(([each, said]) => [each.slice(key.length + 1), said]);
  if (key === "direction" && value === null) return [["", "not said yet"], ...named];
  return named.length && value === "" ? [["", "as usual"], ...named] : named;
}

/** As the service calls it; a text that a profile lists under the list's name. */
function labelOf(keys) {
  if (keys.join(".") === OWN_KIND) return "Length on a link of its own";
  const own = words.settings[keys.join(".")];
  return own ?? `${words.settings[keys.slice(0, -1).join(".")] ?? keys[0]}: ${keys.at(-1)}`;
}

/** The tree with what was typed; an emptied field is none. */
export function filled(node, typed, keys = []) {
  const tree = Object.fromEntries(
    Object.entries(node).map(([key, value]) => {
      const name = [...keys, key].join(".");
      if (name in typed) return [key, like(value, typed[name])];
      return [key, isPart(value) ? filled(value, typed, [...keys, key]) : value];
    }),
  );
  if (keys.length) return tree;
  const capture = { ...tree.capture, ...added("capture", node, typed) };
  const feed = { ...tree.feed, ...added("feed", node, typed), ...ownLink(node, typed) };
  const passing = String(capture.mode ?? "").toLowerCase() === "passing";
  return { ...tree, capture, feed: passing ? feed : null };
}

/** What the file did not say of that part and does now. */
function added(part, node, typed) {
  return Object.fromEntries(
    ALWAYS.filter((key) => key.startsWith(`${part}.`) && !(key.slice(part.length + 1) in (node[part] ?? {})))
      .map((key) => [key.slice(part.length + 1), typed[key], FLAGS.includes(key)])
      .filter(([, value]) => value !== undefined && value !== "" && value !== null)
      .map(([name, value, flag]) => [name, flag ? value === "true" : value]),
  );
}

/** A link for the length where the file has none and one is chosen. */
function ownLink({ feed }, typed) {
  const kind = typed[OWN_KIND];
  if (feed?.link || !kind) return {};
  const keys = kind === "tcp" ? ["host", "port"] : ["port", "rate"];
  const said = keys
    .map((key) => [key, typed[`feed.link.${key}`]])
    .filter(([, value]) => value !== "" && value !== null);
  return { link: { kind, ...Object.fromEntries(said) }, profile: COUNTS };
}

function like(before, told) {
  if (told === "" || told === null) return null;
  if (typeof before === "boolean") return told === "true";
  if (Array.isArray(before)) return told.split("\n").filter((line) => line !== "");
  return told;
}

function removal(name, path, known) {
  const button = h("button", { class: "button", type: "button" }, "Remove this station…");
  button.addEventListener("click", async () => {
    const removed = await askForm({
      title: `Remove ${name}?`,
      intro:
        "It is no longer read and leaves the station file. Its jobs, readings and calibrations stay; a " +
        "station of the same name takes them up again.",
      confirm: "Remove",
      act: () => act("DELETE", path, undefined, known.version),
    });
    if (removed !== null) location.assign("./");
  });
  return h("section", { class: "sheet" }, h("div", { class: "row" }, button));
}

start().catch((problem) => showTrouble($("settings"), problem));
