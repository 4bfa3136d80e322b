// One workshop computer at a plant: what it delivered, its machines, and what was asked of it from here.

import { get } from "./api.js";
import { $, facts, h, state, table } from "./dom.js";
import { told } from "./findings.js";
import { frame, showTrouble } from "./frame.js";
import { lookAgain } from "./look-again.js";
import { sentences, verdict } from "./machine-words.js";
import { workshop } from "./place.js";
import { counted, grouped, lastPiece, machineAt, remarks } from "./plant-words.js";
import { dateTime } from "./times.js";

async function start() {
  frame("workshop");
  $("name").textContent = workshop;
  document.title = `${workshop} · Chordlog`;
  await look();
  lookAgain(look);
}

async function look() {
  const edge = await get("api/edge");
  $("delivered").removeAttribute("aria-busy");
  $("delivered").replaceChildren(...deliveredOf(edge));
  const nothing = edge.lastReadingId === null;
  for (const place of document.querySelectorAll(".after-delivery")) place.hidden = nothing;
  if (nothing) return;
  const [machines, requests] = await Promise.all([get("api/machines"), get("api/requests?limit=20")]);
  $("machines").replaceChildren(
    machines.length === 0 ? h("p", { class: "small" }, "None yet.") : machineTable(machines),
  );
  $("requests").replaceChildren(
    requests.length === 0
      ? h("p", { class: "small" }, "Nothing yet. Alerts can be answered here, and work written into a log book.")
      : requestTable(requests),
  );
}

function deliveredOf(edge) {
  const time = (iso) => (iso === null ? null : dateTime(iso));
  return [
    h("p", {}, ...told(edge.statement)),
    ...remarks(edge).map((each) => h("p", {}, each)),
    facts([
      ["Site", edge.site],
      ["Complete up to reading", edge.lastReadingId === null ? null : grouped(edge.lastReadingId)],
      ["Not here yet", edge.backlogRows > 0 ? counted(edge.backlogRows, "record") : null],
      ["Last heard", time(edge.seenAt)],
      ["Last delivery", time(edge.receivedAt)],
      ["Newest record, its clock", time(edge.newestAt)],
      ["Program", edge.program],
    ]),
  ];
}

function machineTable(machines) {
  return table(
    "Machines, those that need attention first",
    [
      { head: "Machine", cell: ({ machine }) => h("a", { href: machineAt(machine) }, machine) },
      { head: "Status", cell: verdict },
      { head: "Why", kind: "told", cell: (each) => h("span", {}, ...sentences(each).filter(Boolean)) },
      { head: "Pieces", cell: lastPiece },
    ],
    machines,
  );
}

function requestTable(requests) {
  return table(
    "Asked of it from here, the newest first",
    [
      { head: "When", cell: (each) => dateTime(each.at) },
      { head: "What", kind: "lead new", cell: (each) => each.words },
      { head: "By", kind: "named", cell: (each) => each.by },
      { head: "State", kind: "new", cell: stateOf },
    ],
    requests,
    "lines",
  );
}

const stateOf = ({ answered, refusal, stateWords }) =>
  state(refusal ? "bad" : answered ? "good" : "open", stateWords);

start().catch((problem) => showTrouble($("delivered"), problem));
