// A page without a stream of events: what it shows is asked for again and again while somebody looks at it.

import { tell } from "./live.js";

const LOOK_MS = 10000;

/** Calls look() every 10 s; the page says since when that fails. */
export function lookAgain(look) {
  let lost = null;
  setInterval(async () => {
    if (document.hidden) return;
    try {
      await look();
      lost = null;
    } catch (problem) {
      console.warn(problem.message);
      lost ??= new Date();
    }
    tell(lost);
  }, LOOK_MS);
}
