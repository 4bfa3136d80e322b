// A job in words.

import { timeWords } from "./times.js";
import { plainLength, plainNumber, unit, withUnit } from "./units.js";
import words from "../api/words.js";

export const sectionKinds = [
  ["ROUND_TUBE", "Round tube"],
  ["SOLID_ROUND", "Solid round"],
  ["FLAT", "Flat bar"],
  ["BOX", "Rectangular tube"],
  ["PROFILE", "Other profile"],
];

export function sectionWords(s) {
  const lengths = (...all) => `${all.map(plainLength).join(" × ")} ${unit()}`;
  switch (s.kind) {
    case "ROUND_TUBE":
      return `Round tube ${lengths(s.outsideDiameterMm, s.wallMm)}`;
    case "SOLID_ROUND":
      return `Solid round ${lengths(s.diameterMm)}`;
    case "FLAT":
      return `Flat bar ${lengths(s.heightMm, s.widthMm)}`;
    case "BOX":
      return `Rectangular tube ${lengths(s.heightMm, s.widthMm, s.wallMm)}`;
    default:
      return `Profile, ${lengths(s.heightMm)} high`;
  }
}

export function planWords({ positions, subgroups, subgroupSize }) {
  const where = positions.length === 1 ? `at ${positions[0]}` : `at ${positions.join(", ")}`;
  if (subgroups === "PIECE") return `${where}; the positions of a piece are a group`;
  if (subgroups === "CONSECUTIVE") return `${where}; ${subgroupSize} in a row are a group`;
  return `${where}; single readings`;
}

export function limitWords({ targetMm, lowerLimitMm, upperLimitMm, face }) {
  const side = (value) => (value === null ? "none" : withUnit(plainLength(value)));
  return [
    ["Target radius", `${side(targetMm)} on the ${words.faces[face]}`],
    ["LSL, USL", `${side(lowerLimitMm)}, ${side(upperLimitMm)}`],
  ];
}

/** What an event says beside its kind. */
export function eventWords(event) {
  const parts = [];
  if (event.settingAfter !== null)
    parts.push(
      `setting ${event.settingBefore === null ? "?" : plainNumber(event.settingBefore)} → ` +
        `${plainNumber(event.settingAfter)}`,
    );
  if (event.materialLot) parts.push(event.materialLot);
  if (event.note) parts.push(event.note);
  return parts.join("; ");
}

/** The stretches between corrections, lots and set-ups: [{ above, upTo, words, event }]. */
export function phasesOf(events) {
  const starts = events.filter((each) => each.startsPhase && each.takenBackReason === null);
  return [null, ...starts]
    .map((event, i) => ({
      above: event?.afterReadingId ?? 0,
      upTo: starts[i]?.afterReadingId ?? null,
      event,
      words: event ? phaseWords(event) : "Before the first change",
    }))
    .filter((phase) => phase.upTo === null || phase.upTo > phase.above);
}

function phaseWords(event) {
  const when = timeWords(event.at);
  if (event.kind === "MATERIAL_LOT") return `Lot ${event.materialLot}, from ${when}`;
  const what = [words.events[event.kind], eventWords(event)].filter(Boolean).join(" ");
  return `After ${what[0].toLowerCase()}${what.slice(1)}, ${when}`;
}
