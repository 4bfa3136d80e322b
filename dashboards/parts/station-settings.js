// The settings of a station as its file has them: changed and tried at once, or the station removed.

import { asked, get } from "./api.js";
import { askForm, busy } from "./dialogs.js";
import { $, h } from "./dom.js";
import { field, showFaults, values } from "./forms.js";
import { frame, showTrouble } from "./frame.js";
import { act } from "./identity.js";
import words from "/api/words.js";

const PARTS = ["link", "indicator", "capture", "feed", "zero"];
const ALWAYS = Object.keys(words.settings).filter((key) => key.startsWith("capture."));
const NOT_HERE = ["name", "machine", "bridge", "link.kind", "profile.kind"];

async function start() {
  frame("stations");
  const name = asked("station");
  const path = `/api/stations/${encodeURIComponent(name)}`;
  const { station } = await get(`${path}/settings`);
  $("title").textContent = `Settings of ${name}`;
  const query = `?station=${encodeURIComponent(name)}`;
  $("back").replaceChildren(
    h("a", { class: "button", href: `/station.html${query}` }, "Station"),
    h("a", { class: "button", href: `/gauge.html${query}` }, "Gauge"),
  );
  $("settings").replaceChildren(form(name, path, station), removal(name, path));
  $("settings").removeAttribute("aria-busy");
}

function form(name, path, station) {
  const save = h("button", { class: "button main", type: "submit" }, "Save and try");
  const element = h(
    "form",
    { class: "sheet form", novalidate: true },
    h("p", {}, "The station stops and starts with the new settings; its job, zero and readings stay."),
    ...sections(station),
    h("p", { class: "fault general", role: "alert" }),
    h("div", { class: "row" }, save),
  );
  element.addEventListener("submit", (event) => {
    event.preventDefault();
    showFaults(element);
    busy(
      save,
      () => change(name, path, station, values(element)),
      (problem) => showFaults(element, problem),
    );
  });
  return element;
}

async function change(name, path, station, typed) {
  const changed = filled(station, typed);
  const answer = await act("PUT", `${path}/settings`, { station: changed });
  if (answer !== null) location.assign(`/station.html?station=${encodeURIComponent(name)}`);
}

/** One part of the form for each part of the file; what has no part of its own comes first. */
function sections(station) {
  const all = leaves(station);
  const of = (part) => all.filter(({ keys }) => keys[0] === part);
  const own = all.filter(({ keys }) => ![...PARTS, "profile"].includes(keys[0]));
  return [
    group("Station", own),
    ...PARTS.filter((part) => part === "capture" || of(part).length).map((part) =>
      group(words.settings[part], [...of(part), ...missing(part, station)]),
    ),
    frames(of("profile")),
  ];
}

const group = (title, fields) =>
  h("fieldset", {}, h("legend", {}, title), h("div", { class: "fields" }, ...fields.map(input)));

/** How frames are read is seldom changed by hand. */
function frames(fields) {
  return h(
    "details",
    { class: "wide" },
    h("summary", { class: "button plain" }, words.settings.profile),
    h("div", { class: "fields" }, ...fields.map(input)),
  );
}

/** What the file does not say, and takes its default, can be said here. */
function missing(part, station) {
  return ALWAYS.map((key) => key.split("."))
    .filter(([of, name]) => of === part && !(name in (station[part] ?? {})))
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
  const key = keys.join(".");
  const choices = choicesOf(key, value);
  const unit = words.settingUnits[key] ?? "";
  return field({
    name: key,
    label: labelOf(keys),
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

/** Settings name constants in any case; choices do in small letters. */
const asChosen = (value, choices) => (choices.length ? value.toLowerCase() : value);

function kindOf(value, choices, unit) {
  if (choices.length) return "choice";
  if (Array.isArray(value)) return "long";
  if (unit === "mm") return "length";
  return typeof value === "number" || unit ? "number" : "text";
}

const YES_OR_NO = [
  ["true", "yes"],
  ["false", "no"],
];

/** What may be chosen, with its words; none where it is to be typed. */
function choicesOf(key, value) {
  if (typeof value === "boolean") return YES_OR_NO;
  if (key === "capture.everyFrame") return [["", "as usual: no"], ...YES_OR_NO];
  const named = Object.entries(words.settingChoices)
    .filter(([each]) => each.startsWith(`${key}=`))
    .map(([each, said]) => [each.slice(key.length + 1), said]);
  if (key === "direction" && value === null) return [["", "not said yet"], ...named];
  return named.length && value === "" ? [["", "as usual"], ...named] : named;
}

/** As the service calls it; a text that a profile lists under the list's name. */
function labelOf(keys) {
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
  return keys.length ? tree : { ...tree, capture: { ...tree.capture, ...added(node, typed) } };
}

/** What the file did not say of captures and does now. */
function added({ capture }, typed) {
  return Object.fromEntries(
    ALWAYS.map((key) => [key.slice("capture.".length), typed[key]])
      .filter(([name, value]) => !(name in (capture ?? {})) && value !== "" && value !== null)
      .map(([name, value]) => [name, name === "everyFrame" ? value === "true" : value])
      .filter(([, value]) => value !== undefined),
  );
}

function like(before, told) {
  if (told === "" || told === null) return null;
  if (typeof before === "boolean") return told === "true";
  if (Array.isArray(before)) return told.split("\n").filter((line) => line !== "");
  return told;
}

function removal(name, path) {
  const button = h("button", { class: "button", type: "button" }, "Remove this station…");
  button.addEventListener("click", async () => {
    const removed = await askForm({
      title: `Remove ${name}?`,
      intro:
        "It is no longer read and leaves the station file. Its jobs, readings and calibrations stay; a " +
        "station of the same name takes them up again.",
      confirm: "Remove",
      act: () => act("DELETE", path),
    });
    if (removed !== null) location.assign("/");
  });
  return h("section", { class: "sheet" }, h("div", { class: "row" }, button));
}

start().catch(showTrouble);
