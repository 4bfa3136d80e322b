// All machines, those that need attention first.

import { get, serviceNow } from "./api.js";
import { $, h, state } from "./dom.js";
import { kindOf } from "./findings.js";
import { frame, showTrouble } from "./frame.js";
import { sentences, verdict } from "./machine-words.js";
import { ago } from "./times.js";

const HEIGHT_PX = 300; // the name of its axis fits
const MOST_PX = 1040; // its letters are of 7 pt on a sheet of A4

async function start() {
  frame("machines");
  const machines = await get("api/machines");
  $("machines").className = "form";
  $("machines").replaceChildren(
    ...(machines.length > 0
      ? machines.map(card)
      : [
          h(
            "div",
            { class: "sheet empty" },
            h("p", {}, "No machine is known yet."),
            h("p", {}, "A machine comes with the first station or job that names it."),
          ),
        ]),
  );
  document.querySelectorAll(".machine-picture").forEach((place) => draw(place));
}

function card(machine) {
  return h(
    "section",
    { class: "sheet machine-of-all", data: { machine: machine.machine } },
    h(
      "div",
      { class: "machine-card" },
      h(
        "h2",
        {},
        h("a", { href: `machine.html?machine=${encodeURIComponent(machine.machine)}` }, machine.machine),
      ),
      verdict(machine),
      machine.rollers === null ? "" : state(kindOf(machine.rollers.tone), machine.rollers.word),
      h("p", {}, ...sentences(machine).filter(Boolean)),
      h("p", { class: "small" }, ...measured(machine)),
    ),
    machine.pieces > 0 ? h("div", { class: "machine-picture", data: { machine: machine.machine } }) : null,
  );
}

function measured({ pieces, lastReadingAt }) {
  const last = lastReadingAt === null ? [] : [", the last one ", ago(lastReadingAt, serviceNow())];
  return [`${pieces} pieces that count, in all`, ...last];
}

/** The machine's picture, small. */
async function draw(place) {
  const width = Math.max(240, Math.min(MOST_PX, Math.floor(place.clientWidth / 20) * 20));
  const path = `api/machines/${encodeURIComponent(place.dataset.machine)}/chart`;
  const { svg } = await get(`${path}?width=${width}&height=${HEIGHT_PX}`);
  place.replaceChildren(
    document.importNode(new DOMParser().parseFromString(svg, "image/svg+xml").documentElement, true),
  );
}

start().catch((problem) => showTrouble($("machines"), problem));
