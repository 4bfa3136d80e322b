// What the plant does not have yet, in a line at the foot of the front page; nothing where there is no plant.

import { get } from "./api.js";
import { h, say } from "./dom.js";
import { time } from "./times.js";

const LOOK_MS = 10_000;
const SHOWN_FROM = 500; // fewer are on their way

export async function showDelivery(place) {
  const line = h("p", { id: "delivery", class: "state", hidden: true });
  place.append(line);
  const look = async () => {
    const { plant } = await get("health").catch(() => ({}));
    if (plant) show(line, plant);
    return plant;
  };
  if (await look()) setInterval(look, LOOK_MS);
}

function show(line, plant) {
  const text = said(plant);
  line.hidden = text === "";
  line.dataset.state = plant.problem ? "bad" : "quiet";
  say(line, text);
}

function said({ problem, readingsWaiting, waitingSince }) {
  if (!problem && readingsWaiting < SHOWN_FROM) return "";
  const why = problem ? `: ${problem}.` : "; they are being delivered.";
  if (readingsWaiting === 0) return `Nothing waits for the plant, but it can’t be told anything${why}`;
  const count = readingsWaiting === 1 ? "One reading waits" : `${readingsWaiting.toLocaleString("en")} readings wait`;
  return `${count} for the plant since ${time(waitingSince)}${why}`;
}
