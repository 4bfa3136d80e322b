// Which channel moves and which way it counts, seen while the plunger is pushed in.

import { act } from "./identity.js";
import { busy } from "./dialogs.js";
import { $, h, say, state } from "./dom.js";
import { length, withUnit } from "./units.js";
import words from "../api/words.js";

const WATCH_SECONDS = 5;

/** Asks to push the plunger in; then next() with the channel and direction in chosen. */
export function showPush(chosen, next) {
  const { way } = chosen.way;
  $("push").hidden = false;
  const watch = h("button", { class: "button main", type: "button" }, "Watch for 5 seconds");
  const skip = h("button", { class: "button", type: "button" }, "Go on without");
  const said = h("p", { role: "status" });
  skip.addEventListener("click", next);
  watch.addEventListener("click", () =>
    busy(
      watch,
      () => watched(chosen, said, next),
      (problem) => say(said, problem.message),
    ),
  );
  $("pushed").replaceChildren(
    h(
      "p",
      { class: "lead" },
      way === "button"
        ? "Watch, press the data button with the plunger out, push the plunger in and press it again."
        : "Let the plunger out, press Watch, push the plunger in at once and hold it.",
    ),
    said,
    h("div", { class: "row" }, watch, skip),
  );
  watch.focus();
}

async function watched(chosen, said, next) {
  said.textContent = "Push the plunger in now and hold it.";
  const { port, heard, proposal } = chosen;
  const asked = { port, attempt: heard.tried.attempt, profiles: [proposal.profile], seconds: WATCH_SECONDS };
  const read = await act("POST", "api/ports/read", asked);
  if (read === null) return;
  const moved = read[0].channels.filter((each) => each.direction);
  if (moved.length === 0) {
    said.replaceChildren(
      state("open", "It hardly moved"),
      " Let the plunger out, press Watch, and push it in within the five seconds.",
    );
    return;
  }
  const most = moved.reduce((a, b) => (way(b) > way(a) ? b : a));
  Object.assign(chosen, { channel: most.channel, direction: most.direction, read: read[0].channels });
  said.replaceChildren(state("good", sentence(most, proposal.channels.length > 1)));
  next();
}

const way = ({ firstMm, lastMm }) => Math.abs(lastMm - firstMm);

function sentence(read, several) {
  const counts = words.settingChoices[`direction=${read.direction}`];
  const from = several ? `Channel ${read.channel}: pushing in` : "Pushing in";
  return `${from} ${counts}, by ${withUnit(length(way(read), 3))}`;
}
