// A job in words.

import { timeWords } from "./times.js";
import { length, plainLength, plainNumber, unit, withUnit } from "./units.js";
import words from "../api/words.js";

export function limitWords({ targetMm, lowerLimitMm, upperLimitMm, face }) {
  const side = (value) => (value === null ? "none" : withUnit(plainLength(value)));
  return [
    ["Target radius", `${side(targetMm)} on the ${words.faces[face]}`],
    ["LSL, USL", `${side(lowerLimitMm)}, ${side(upperLimitMm)}`],
  ];
}

/** "target 1800, limits 1788 to 1812 mm". */
export function aimWords({ targetMm, lowerLimitMm, upperLimitMm }) {
  const limit = (mm) => (mm === null ? "none" : plainLength(mm));
  return `target ${limit(targetMm)}, limits ${limit(lowerLimitMm)} to ${limit(upperLimitMm)}\u00a0${unit()}`;
}

/** What tells a job from another of that name: aim, part, lot in the machine, how far it is. */
export function jobAsOneOfSome(job) {
  const readings = job.readings === 1 ? "1 reading" : `${job.readings} readings`;
  return [aimWords(job.specification), job.part, lotWords(job.currentLot), job.readings ? readings : "not begun"]
    .filter(Boolean)
    .join(", ");
}

/** What an event says beside its kind. */
export function eventWords(event) {
  const parts = [];
  if (event.settingAfter !== null)
    parts.push(
      `setting ${event.settingBefore === null ? "?" : plainNumber(event.settingBefore)} → ` +
        `${plainNumber(event.settingAfter)}`,
    );
  if (typeof event.zeroMm === "number") parts.push(`${withUnit(length(event.zeroMm, 4))} on the flat`);
  if (event.materialLot) parts.push(event.materialLot);
  if (event.note) parts.push(event.note);
  return parts.join("; ");
}

/**
 * The stretches between corrections, lots and set-ups: [{ number, above, upTo, words, event }], without those
 * that have no reading; the number is that of the service and its files, which counts them too.
 */
export function phasesOf(events) {
  const starts = events
    .filter((each) => each.startsPhase && each.takenBackReason === null)
    .sort((one, other) => one.afterReadingId - other.afterReadingId || one.id - other.id);
  return [null, ...starts]
    .map((event, i) => ({
      number: i + 1,
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

/** A lot as one says it, also where its name begins with the word. */
export const lotWords = (lot) => lot && (/^lot\b/i.test(lot) ? lot : `lot ${lot}`);
