// What the service's short names mean to the person at the page.

export const decisions = {
  CONFORMS: "Conforms",
  DOES_NOT_CONFORM: "Does not conform",
  UNDECIDED: "Undecided",
  NO_LIMITS: "No limits given",
};
export const faces = { OUTER: "outer face", INNER: "inner face", CENTRELINE: "centreline" };
export const phases = {
  FREE: "In free air",
  MOVING: "Moving",
  RESTING: "At rest, hold still",
  TAKEN: "Taken, lift off",
};
export const happenings = {
  CORRECTION: "Correction",
  MATERIAL_LOT: "New material lot",
  SET_UP: "Set-up",
  ZERO: "Zero taken",
  LIMITS_FROZEN: "Control limits frozen",
  LIMITS_RELEASED: "Control limits released",
  NOTE: "Note",
};
export const links = {
  OPEN: ["good", "Indicator connected"],
  WAITING: ["open", "Waiting for the indicator"],
  SILENT: ["bad", "Indicator sends nothing"],
  LOST: ["bad", "Indicator lost"],
  STOPPED: ["bad", "Station stopped"],
};
export const indicatorSays = {
  OVER_RANGE: "Indicator: beyond its range",
  UNDER_RANGE: "Indicator: below its range",
  LOW_BATTERY: "Indicator: battery low",
  ERROR: "Indicator reports an error",
  UNSTABLE: "Indicator: value not steady",
};

/** Why a reading was not taken: what was seen, what to do. */
export const refusals = {
  MOVED: ["The bridge moved", "Hold it still until the value is taken."],
  TOO_SHORT: ["Lifted too soon", "Hold it still a little longer."],
  OUTSIDE_TRAVEL: ["At the end of the indicator’s travel", "Use a bridge that suits this radius."],
  NO_PIECE: ["No piece", "The bridge stands on the flat or on a master. Lift it before the next piece."],
  WRONG_FACE: ["Wrong face", "The bend curves the other way here. Measure the face that the job names."],
  FLAT: ["That was a flat", "Nothing to do if you were zeroing."],
  NOT_ZEROED: ["No zero yet", "Stand the bridge on the flat and press Zero."],
  STALE_ZERO: ["The zero is too old", "Stand the bridge on the flat and press Zero."],
  GAP: ["The indicator was away for a moment", "Measure again."],
  STUCK: ["The value does not move at all", "Check that the plunger moves freely."],
  UNIT_CHANGED: ["The indicator’s unit was switched", "Set it back, or go on if that was meant."],
  NO_JOB: ["No job is selected", "Select the job first."],
  NO_BRIDGE: ["No bridge is on this station", "Choose the bridge first."],
  FREE_AIR: ["The bridge stands on nothing", "Stand it on the piece."],
  REPEATED: ["Taken already", "Lift the bridge before the next reading."],
};
export const marks = {
  ZERO_MISSING: "without a zero",
  ZERO_STALE: "zero too old",
  CALIBRATION_MISSING: "without a calibration",
  CALIBRATION_OVERDUE: "calibration overdue",
  CHECK_FAILED: "after a failed check",
  CLOCK_DOUBTFUL: "time in doubt",
  IMPORTED: "imported",
};

const tests = {
  1: "beyond 3 sigma",
  2: "in a row on one side of the centre",
  3: "in a row rising or falling",
  4: "in a row alternating up and down",
  5: "beyond 2 sigma on one side",
  6: "beyond 1 sigma on one side",
  7: "in a row within 1 sigma",
  8: "in a row beyond 1 sigma on both sides",
};
const sides = { ABOVE: ", above", BELOW: ", below", BOTH: "" };

/** "Test 3: 6 points in a row rising" of a signal { test, points, side }. */
export function brokenTest({ test, points, side }) {
  const count = points.length === 1 ? "1 point" : `${points.length} points`;
  if (test === 3) return `Test 3: ${count} in a row ${side === "ABOVE" ? "rising" : "falling"}`;
  return `Test ${test}: ${count} ${tests[test]}${sides[side]}`;
}

/** What a reading means to the operator, in one sentence. */
export function meaning(reading, specification) {
  if (reading.radiusMm === null) return "This can’t be told from flat.";
  if (reading.decision === "CONFORMS") return "The bend is good here. Leave the rollers as they are.";
  if (reading.decision === "NO_LIMITS") return "This job has no limits; compare with the target.";
  const large = reading.radiusMm > nearest(reading.radiusMm, specification);
  const way = large ? "too wide: it needs more bend" : "too tight: it needs less bend";
  if (reading.decision === "DOES_NOT_CONFORM") return `The bend is ${way}. Set this piece aside.`;
  return "Too near a limit to tell. Measure again; if it stays so, ask for a finer measurement.";
}

function nearest(radiusMm, { targetMm, lowerLimitMm, upperLimitMm }) {
  const limits = [lowerLimitMm, upperLimitMm].filter((each) => each !== null);
  const order = (a, b) => Math.abs(a - radiusMm) - Math.abs(b - radiusMm);
  return limits.length ? limits.sort(order)[0] : targetMm;
}
