// How the readings behind a point of a chart were decided.

import words from "../api/words.js";
import { get } from "./api.js";
import { h } from "./dom.js";

const MOST = 25;

/** A line as "4 good, 1 too close to call", or the one decision of a single reading. */
export async function decisionsOf(jobId, point) {
  const query = new URLSearchParams({
    above: point.firstReadingId - 1,
    upTo: point.lastReadingId,
    oldestFirst: true,
    limit: MOST,
  });
  if (point.position && point.size === 1) query.set("position", point.position);
  const readings = (await get(`api/jobs/${jobId}/readings?${query}`)).items;
  if (readings.length === 1) return line(readings[0].decision, words.decisions[readings[0].decision]);
  const counts = new Map();
  readings.forEach(({ decision }) => counts.set(decision, (counts.get(decision) ?? 0) + 1));
  const parts = [...counts].map(([decision, count]) => `${count} ${words.decisions[decision].toLowerCase()}`);
  return parts.length > 0 ? h("p", {}, `Readings: ${parts.join(", ")}`) : null;
}

const line = (decision, text) => h("p", { class: "decision", data: { decision } }, text);
