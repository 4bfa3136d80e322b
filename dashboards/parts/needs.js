// What a station needs, in words: how bad, what is the matter, what to do, and where.

import { h, state } from "./dom.js";
import { indicatorSays, links } from "./words.js";

const words = {
  READINGS_LOST: ["bad", "Readings could not be kept", "Call whoever looks after the computer."],
  CHECK_FAILED: ["bad", "Last check failed", "Don’t rely on the readings; calibrate first."],
  DOES_NOT_CONFORM: ["bad", "Last reading does not conform", ""],
  NO_JOB: ["open", "No job selected", "Select the job under More."],
  NO_BRIDGE: ["bad", "No bridge chosen", "Choose the one that stands on the piece."],
  ZERO_MISSING: ["bad", "No zero", "Stand the bridge on the flat and press Zero."],
  ZERO_STALE: ["open", "Zero is old", "Stand the bridge on the flat and press Zero."],
  CALIBRATION_OVERDUE: ["open", "Calibration overdue", "Calibrate on a master."],
  OUT_OF_CONTROL: ["open", "Not in control", "Look at the chart before you correct."],
  UNDECIDED: ["open", "Last reading undecided", "Measure again."],
  CALIBRATION_MISSING: ["open", "Never calibrated", "Calibrate on a master."],
  CALIBRATION_DUE_SOON: ["quiet", "Calibration due soon", "Plan it."],
};

// What is for the command line is left out on a page.
const forPages = (message) => message.replace(/; `[^`]+`[^.]*\.$/, ".");

/** [kind, what, advice] of a need of a station. */
export function need(name, station) {
  if (name === "LINK") return [links[station.link][0], links[station.link][1], forPages(station.message)];
  if (name === "INDICATOR")
    return [
      "bad",
      indicatorSays[station.indicatorState] ?? "Indicator reports a fault",
      "See to the indicator.",
    ];
  return words[name];
}

/** The worst kind among needs: bad, open or good. */
export function urgency(needs, station) {
  const kinds = needs.map((each) => need(each, station)[0]);
  return kinds.includes("bad") ? "bad" : kinds.includes("open") ? "open" : "good";
}

/** A list of what is needed; "All well" when there is nothing. */
export function needList(needs, station, most = 4) {
  if (needs.length === 0) return h("ul", { class: "needs" }, h("li", {}, state("good", "All well")));
  const rows = needs.slice(0, most).map((each) => {
    const [kind, what, advice] = need(each, station);
    return h("li", {}, state(kind, what), advice ? ` ${advice}` : "");
  });
  const more = needs.length - rows.length;
  return h("ul", { class: "needs" }, rows, more > 0 ? h("li", {}, `and ${more} more`) : null);
}
