// What a machine's pieces say, as the service judges it.

import { h, state } from "./dom.js";
import { kindOf } from "./findings.js";
import { dateTime } from "./times.js";
import { fixed, length, unit } from "./units.js";

export const percent = (value, digits = 2) =>
  value === null ? "–" : `${value > 0 ? "+" : ""}${fixed(value, digits)}\u00a0%`;

export function verdict({ behind, statement }) {
  if (behind > 0) return state("quiet", "Still being worked out");
  return state(kindOf(statement.tone), statement.word);
}

/** The verdict as sentences of their own, with what to do. */
export function sentences({ behind, statement, since }) {
  if (behind > 0)
    return [`${behind} more readings are still being evaluated. Look again in a few seconds.`];
  const begun = since ? h("span", {}, "It began on ", dateTime(since), ". ") : null;
  return [begun, [statement.reason, statement.advice].filter(Boolean).join(" ")];
}

/** A change of curvature with that of the radius at the target of the newest job with limits. */
export function moved(partPercent, mm) {
  if (partPercent === null) return "";
  return mm === null
    ? percent(partPercent)
    : `${percent(partPercent)}, ${mm > 0 ? "+" : ""}${length(mm, 1)}\u00a0${unit()}`;
}
