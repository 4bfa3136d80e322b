// What was asked of a workshop computer from the plant, until its records show it.

import { get } from "./api.js";
import { h, state } from "./dom.js";
import { workshop } from "./place.js";
import words from "../api/words.js";

/** In words: what is asked for. */
export function requestWords({ kind, body }) {
  const more = [body.word, body.reason, body.note].filter(Boolean).join(", ");
  const what = {
    ACKNOWLEDGE_ALERT: () => `Acknowledge alert ${body.alertId}`,
    SHELVE_ALERT: () => `Put alert ${body.alertId} aside`,
    ASSIGN_ALERT: () => (body.to ? `Alert ${body.alertId} is ${body.to}’s` : `Alert ${body.alertId} is nobody’s`),
    LOGBOOK_ENTRY: () => [`${body.machine}: ${words.work[body.kind]}`, body.roller].filter(Boolean).join(", "),
  }[kind]();
  return more ? `${what}: ${more}` : what;
}

/** Those that are on their way or were refused, the newest first; none where this is the service itself. */
export async function openRequests() {
  if (workshop === null) return [];
  const all = await get("api/requests?limit=50").catch(() => []);
  return all.filter(({ answered, refusal }) => !answered || refusal);
}

/** Such a request as a line. */
export function requestLine(request) {
  const sign = state(request.refusal ? "bad" : "open", request.stateWords);
  return h("p", { class: "request" }, sign, ` ${requestWords(request)}`);
}
