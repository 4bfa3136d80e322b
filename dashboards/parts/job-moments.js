// Between which pieces of a job something happened: also told late, by who forgot to.

import { get } from "./api.js";
import { field } from "./forms.js";

/** As many pieces back as somebody may remember. */
const PIECES = 12;
const READINGS = 100;

/** [last reading before it, words], the newest first; none before the first reading of a job. */
export async function momentsOf(job) {
  return moments((await get(`api/jobs/${job.id}/readings?limit=${READINGS}`)).items);
}

/** readings: the newest first. */
export function moments(readings) {
  if (readings.length === 0) return [];
  const earlier = readings
    .slice(1)
    .map((before, i) => [before, readings[i]])
    .filter(([before, { piece }]) => before.piece !== piece)
    .slice(0, PIECES)
    .map(([before, { piece }]) => [before.id, `Before piece ${piece}`]);
  return [["", `Just now, after piece ${readings[0].piece}`], ...earlier, [0, "Before the first piece"]];
}

/** Nothing to choose before the first reading. */
export const momentField = (all) =>
  all.length > 0 ? field({ name: "afterReadingId", label: "When", kind: "choice", options: all }) : null;

/** What is sent of a form with that field; the note says that it was told later. */
export function withMoment({ afterReadingId, ...values }, all) {
  if (!afterReadingId) return values;
  const [, where] = all.find(([id]) => String(id) === afterReadingId);
  const later = `told later: ${where.toLowerCase()}`;
  return { ...values, afterReadingId: Number(afterReadingId), note: [values.note, later].filter(Boolean).join("; ") };
}
