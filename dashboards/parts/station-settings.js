// The settings of a station as its file has them: changed and tried at once, or the station removed.

import { asked, get } from "./api.js";
import { askForm, busy } from "./dialogs.js";
import { $, h } from "./dom.js";
import { field, showFaults, values } from "./forms.js";
import { frame, showTrouble } from "./frame.js";
import { act } from "./identity.js";

const PARTS = { link: "Link", profile: "Frame profile", indicator: "Indicator", capture: "Capture", zero: "Zero" };
const SUFFIXES = [
  [/Mm$/, "mm"],
  [/Seconds$/, "s"],
  [/Degrees$/, "°"],
];
const CHOICES = { direction: ["up", "down"], true: [true, false] };
const NOT_HERE = ["name", "bridge", "kind"];

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
    h("div", { class: "columns" }, ...sections(station)),
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
  const own = leaves(station).filter(({ keys }) => keys.length === 1);
  const parts = Object.keys(PARTS).filter((part) => typeof station[part] === "object" && station[part]);
  return [
    h("fieldset", {}, h("legend", {}, "Station"), ...own.map(input)),
    ...parts.map((part) =>
      h(
        "fieldset",
        {},
        h("legend", {}, PARTS[part]),
        ...leaves(station)
          .filter(({ keys }) => keys.length > 1 && keys[0] === part)
          .map(input),
      ),
    ),
  ];
}

/** The single values of a settings tree, each with the keys that lead to it. */
export function leaves(node, keys = []) {
  return Object.entries(node).flatMap(([key, value]) => {
    if (NOT_HERE.includes(key)) return [];
    const nested = value !== null && typeof value === "object" && !Array.isArray(value);
    return nested ? leaves(value, [...keys, key]) : [{ keys: [...keys, key], value }];
  });
}

function input({ keys, value }) {
  const key = keys.at(-1);
  const [ending, suffix] = SUFFIXES.find(([pattern]) => pattern.test(key)) ?? [/$^/, ""];
  const choices = typeof value === "boolean" ? CHOICES.true : CHOICES[key];
  return field({
    name: keys.join("."),
    label: labelOf(key.replace(ending, "")),
    kind: kindOf(value, choices),
    value: Array.isArray(value) ? value.join("\n") : value,
    options: (choices ?? []).map((each) => [each, each === true ? "yes" : each === false ? "no" : each]),
    suffix,
  });
}

function kindOf(value, choices) {
  if (choices) return "choice";
  if (Array.isArray(value)) return "long";
  return typeof value === "number" ? "number" : "text";
}

/** "permissibleError" as a person writes it. */
export function labelOf(key) {
  const words = key.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);
  return `${words[0].toUpperCase()}${words.slice(1)}`;
}

/** The tree with what was typed; an emptied field is none. */
export function filled(node, typed, keys = []) {
  return Object.fromEntries(
    Object.entries(node).map(([key, value]) => {
      const name = [...keys, key].join(".");
      if (name in typed) return [key, like(value, typed[name])];
      const nested = value !== null && typeof value === "object" && !Array.isArray(value);
      return [key, nested ? filled(value, typed, [...keys, key]) : value];
    }),
  );
}

function like(before, text) {
  if (text === "" || text === null) return null;
  if (typeof before === "boolean") return text === "true";
  if (Array.isArray(before)) return text.split("\n").filter((line) => line !== "");
  return text;
}

function removal(name, path) {
  const button = h("button", { class: "button", type: "button" }, "Remove this station …");
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
