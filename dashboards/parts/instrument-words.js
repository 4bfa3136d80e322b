// What an instrument says: in place of a reading, of a phase, a refusal, a place, the limits.

import words from "../api/words.js";
import { length, unit } from "./units.js";

/** So many letters of what to do next stand on one line. */
export const LINE = 32;
/** What stands there where no reading of the job is shown. */
export const inPlace = (state) => ({
  tone: words.screenTones[state],
  word: words.screens[state],
  advice: words.screenAdvice[state],
});

export const placeOf = ({ station }) => `${station.piece} ${station.position} ${station.pass}`;

/** Whether a piece is to be measured again where that reading was taken. */
export const samePlace = (reading, station) =>
  ["piece", "position", "pass"].every((key) => reading[key] === station[key]);

/** A piece, with its pass where it was rolled again, and its position where the job has several. */
export function placeWords({ piece, position, pass }, { plan: { positions } }) {
  const which = pass > 1 ? `piece ${piece}, pass ${pass}` : `piece ${piece}`;
  if (positions.length === 1) return which;
  return `${which}, ${position}, ${positions.indexOf(position) + 1} of ${positions.length}`;
}

export const capital = (text) => `${text[0].toUpperCase()}${text.slice(1)}`;

export function phaseSaid(phase) {
  return { tone: phase === "RESTING" ? "OPEN" : "QUIET", word: words.phases[phase] };
}

/** How far the truth may be from what is shown, and what that means. */
export function spreadWords(recorded, { plusMinus }, live) {
  if (!recorded) return [live ? "not recorded yet" : "", ""];
  return plusMinus ? [`${plusMinus}\u00a0${unit()}`, ": true for 95 of 100 readings"] : [words.refusals.FLAT, ""];
}

/** Why and what to do in large where both fit in two lines; else why stands beside the verdict. */
export function refusalSaid(refused) {
  const [reason, advice] = [words.refusals[refused], words.refusalAdvice[refused]];
  const both = `${reason}. ${advice}`;
  return { ...inPlace("NOT_RECORDED"), ...(both.length <= 2 * LINE ? { advice: both } : { reason, advice }) };
}

export function limitsOf({ atLowerLimitMm, atUpperLimitMm }) {
  const ends = [atLowerLimitMm, atUpperLimitMm].filter((mm) => mm !== null).sort((a, b) => a - b);
  if (ends.length === 0) return "";
  return `${ends.length === 2 ? "" : "limit "}${ends.map((mm) => length(mm, 3)).join(" to ")}`;
}

/** The newest value: less the zero where there is one. */
export function nowWords({ depthMm, valueMm, phase }) {
  const figure = depthMm === null ? `indicator shows ${length(valueMm, 3)}` : `depth ${length(depthMm, 3)}`;
  return `Now: ${figure}\u00a0${unit()}, ${words.phases[phase].toLowerCase()}`;
}
