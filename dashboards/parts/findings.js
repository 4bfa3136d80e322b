// What the service finds of a station, as it says it: a word, why, and what to do.

import { h, state } from "./dom.js";

/** The kind of a state (good, open, bad, quiet) for a tone of the service. */
export const kindOf = (tone) => tone.toLowerCase();

/** A statement of the service as a state, with its reason and its advice behind it. */
export function told({ tone, word, reason, advice }) {
  const more = [reason, advice].filter(Boolean).join(" ");
  return [state(kindOf(tone), word), more ? ` ${more}` : ""];
}

/** What a bar or an instrument says of the last piece in its own words. */
export const OF_PIECE = ["OUT_OF_TOLERANCE", "TOO_CLOSE_TO_CALL"];

/** What is found beside what the instrument says of the last piece; null where there is nothing. */
export function findingList({ findings }, most = 4) {
  const beside = findings.filter(({ issue }) => !OF_PIECE.includes(issue));
  if (beside.length === 0) return null;
  const rows = beside.slice(0, most).map((each) => h("li", {}, ...told(each.statement)));
  const more = beside.length - rows.length;
  return h("ul", { class: "needs" }, rows, more > 0 ? h("li", {}, `and ${more} more`) : null);
}

/** The finding said in place of the job's state while masters or a study are measured; else undefined. */
export const insteadOfJob = ({ findings }) =>
  findings.find(({ issue }) => issue === "IN_STUDY" || issue === "ON_MASTERS");

/** Of a station's state what every page shows in some way; its counters move all the time. */
const SHOWN = ["link", "jobId", "bridgeId", "zeroId", "zeroStale", "indicatorState", "onMasters"];

/** Whether a station's new state differs in none of those, of what else a page shows, and of a study's step. */
export const sameState = (before, after, more) =>
  [...SHOWN, ...more].every((key) => before[key] === after[key]) && before.study?.step === after.study?.step;
