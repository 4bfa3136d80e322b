// What was asked of a workshop computer from the plant, until its records show it.

import { get } from "./api.js";
import { h, state } from "./dom.js";
import { workshop } from "./place.js";

/** Those that are on their way or were refused, the newest first; none where this is the service itself. */
export async function openRequests() {
  if (workshop === null) return [];
  const all = await get("api/requests?limit=50").catch(() => []);
  return all.filter(({ answered, refusal }) => !answered || refusal);
}

/** Such a request as a line. */
export function requestLine(request) {
  const sign = state(request.refusal ? "bad" : "open", request.stateWords);
  return h("p", { class: "request" }, sign, ` ${request.words}`);
}
