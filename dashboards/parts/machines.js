// All machines, those that need attention first.

import { get } from "./api.js";
import { $, h, state } from "./dom.js";
import { kindOf } from "./findings.js";
import { frame, showTrouble } from "./frame.js";
import { sentences, verdict } from "./machine-words.js";

async function start() {
  frame("machines");
  const machines = await get("/api/machines");
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
}

function card(machine) {
  return h(
    "section",
    { class: "sheet machine-card", data: { machine: machine.machine } },
    h(
      "h2",
      {},
      h("a", { href: `/machine.html?machine=${encodeURIComponent(machine.machine)}` }, machine.machine),
    ),
    verdict(machine),
    machine.rollers === null ? "" : state(kindOf(machine.rollers.tone), machine.rollers.word),
    h("p", {}, ...sentences(machine).filter(Boolean)),
    h("p", { class: "small" }, `${machine.pieces} pieces measured in all`),
  );
}

start().catch((problem) => showTrouble($("machines"), problem));
