// What a machine's pieces say, in words.

import { h, state } from "./dom.js";
import { fixed } from "./units.js";
import { date } from "./times.js";

const states = {
  STEADY: ["good", "Steady"],
  CREEPING: ["open", "Creeping"],
  JUMPED: ["bad", "Jumped"],
  TOO_FEW: ["quiet", "Too few pieces to tell"],
};
export const percent = (value, digits = 2) =>
  value === null ? "–" : `${value > 0 ? "+" : ""}${fixed(value, digits)} %`;

export function verdict(machine) {
  if (machine.behind > 0) return state("quiet", "Still being worked out");
  const [kind, word] = states[machine.state];
  return state(kind, machine.sincePiece === null ? word : `${word} since piece ${machine.sincePiece}`);
}

/** The verdict as a sentence of its own, with what to do. */
export function sentences(machine) {
  if (machine.behind > 0)
    return [`${machine.behind} more readings are still being evaluated. Look again in a few seconds.`];
  const since = machine.since ? h("span", {}, "It began on ", date(machine.since), ". ") : null;
  const when =
    { JUMPED: "Since then its pieces came out", CREEPING: "Its pieces are now" }[machine.state] ??
    "Its pieces are";
  const level =
    machine.levelPercent === null
      ? ""
      : `${when} ${tight(machine.levelPercent)} than target${machine.state === "CREEPING" ? "" : ", on average"}. `;
  switch (machine.state) {
    case "CREEPING":
      return [
        since,
        level,
        `In 1,000 pieces they get ${tight(machine.slopePercent)} (95 %: ` +
          `${tight(machine.slopeLowerPercent)} to ${tight(machine.slopeUpperPercent)}). `,
        forecast(machine),
        "Look for wear, heat, or a setting that gives way.",
      ];
    case "JUMPED":
      return [
        since,
        level,
        `The step made them ${tight(machine.stepPercent)}. `,
        "Look for what was changed then: rolls, setting, tube, bridge.",
      ];
    case "STEADY":
      return [level, "Neither a trend nor a step is seen since the rollers were last set."];
    default:
      return ["Ten pieces measured since the rollers were last set are needed."];
  }
}

function tight(level) {
  return `${fixed(Math.abs(level), 2)} % ${level > 0 ? "tighter" : "wider"}`;
}

function forecast(machine) {
  if (machine.tolerancePercent === null) return "No job with two limits says how far it may go. ";
  if (machine.piecesLeft === null)
    return (
      `It moves towards the target; the limit of ± ${fixed(machine.tolerancePercent, 2)} % is not ` +
      "forecast to be reached. "
    );
  return (
    `At this pace it reaches the limit of ± ${fixed(machine.tolerancePercent, 2)} % of its newest ` +
    `job in about ${Math.round(machine.piecesLeft)} pieces. `
  );
}
