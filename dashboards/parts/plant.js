// The front page of a plant: what needs somebody first, then each site with its workshop computers and machines.

import { get, serviceNow } from "./api.js";
import { $, h, state } from "./dom.js";
import { told } from "./findings.js";
import { field } from "./forms.js";
import { frame, showTrouble } from "./frame.js";
import { lookAgain } from "./look-again.js";
import { alertWords, at, delivered, findings, kindOfMachine, lastPiece, machineAt, remarks } from "./plant-words.js";

const MOST_FIRST = 8;
let shown = "";

async function start() {
  frame("plant");
  $("find").append(
    field({ name: "text", label: "Find a job in order, part, lot" }),
    h("button", { class: "button", type: "submit" }, "Find"),
  );
  await look();
  lookAgain(look);
}

async function look() {
  const plant = await get("api/plant");
  const now = Math.floor(serviceNow() / 60000) + JSON.stringify(plant);
  if (now === shown) return; // so that focus stays where it is; how long ago is said anew each minute
  shown = now;
  $("first").removeAttribute("aria-busy");
  $("first").replaceChildren(first(plant));
  $("sites").replaceChildren(...sites(plant));
}

function first({ edges, machines }) {
  if (edges.length === 0) return nobody();
  const rows = [
    ...edges.filter(needsSomebody).map(ofEdge),
    ...edges.filter(({ alerts }) => alerts.some(({ waits }) => waits)).map(alertsOfEdge),
    ...machines.filter(({ urgency }) => urgency > 0).map(ofMachine),
  ];
  const looking = edges.filter(({ looked, lastReadingId }) => !looked && lastReadingId !== null);
  if (rows.length === 0)
    return h("p", {}, looking.length > 0 ? "The records are being looked through." : state("good", "All is quiet"));
  const hidden = rows.slice(MOST_FIRST);
  return h(
    "div",
    {},
    h("ul", { class: "first" }, rows.slice(0, MOST_FIRST)),
    hidden.length === 0
      ? null
      : h("details", { class: "fold" }, h("summary", {}, `${hidden.length} more`), h("ul", { class: "first" }, hidden)),
  );
}

const nobody = () =>
  h(
    "div",
    { class: "empty" },
    h("p", {}, "No workshop computer belongs to this plant yet."),
    h(
      "p",
      {},
      "chordlog plant add-edge NAME adds one; at the workshop computer, plant.yaml says where to deliver. ",
      h("a", { href: "help/plant" }, "How that goes"),
    ),
  );

const row = (head, where, rest) =>
  h(
    "li",
    {},
    h("div", {}, head, h("p", { class: "small" }, where)),
    h(
      "ul",
      {},
      rest.map((each) => h("li", {}, each)),
    ),
  );

const needsAct = ({ statement }) => ["BAD", "OPEN"].includes(statement.tone);
const needsSomebody = (edge) => needsAct(edge) || edge.ofPlant.some(({ waits }) => waits);

const ofEdge = (edge) =>
  row(h("a", { href: at(edge.name) }, edge.name), edge.site, [
    ...(needsAct(edge) ? [edge.statement] : edge.remarks).map((each) => h("span", {}, ...told(each))),
    ...edge.ofPlant.map((each) =>
      h("span", {}, alertWords(each), " ", h("a", { href: `alerts.html#${each.id}` }, "To the alert")),
    ),
  ]);

const alertsOfEdge = (edge) => row(h("a", { href: at(edge.name, "alerts.html") }, edge.name), edge.site, remarks(edge));

function ofMachine(machine) {
  const link = (job) => h("a", { href: at(machine.edge, `job.html?job=${job.id}`) }, job.name);
  return row(
    h("a", { href: at(machine.edge, machineAt(machine.machine)) }, machine.machine),
    `${machine.site} · ${machine.edge}`,
    findings(machine, link),
  );
}

function sites({ edges, machines }) {
  const names = [...new Set(edges.map(({ site }) => site))];
  return names.map((site) => {
    const of = edges.filter((each) => each.site === site);
    return h(
      "section",
      { class: "sheet", "aria-label": site || "Without a site" },
      h("h2", {}, site || "Without a site"),
      of.map((edge) => workshop(edge, machines.filter((each) => each.edge === edge.name))),
    );
  });
}

function workshop(edge, machines) {
  const more = remarks(edge);
  return h(
    "div",
    { class: "workshop", data: { edge: edge.name } },
    h("div", { class: "workshop-head" }, h("h3", {}, h("a", { href: at(edge.name) }, edge.name)), delivered(edge)),
    more.length === 0 ? null : h("ul", {}, more.map((each) => h("li", {}, each))),
    machines.length === 0 ? null : h("div", { class: "machines-of" }, machines.map(brief)),
  );
}

function brief(machine) {
  const waiting = machine.alerts.filter(({ waits }) => waits).length;
  return h(
    "article",
    { class: "machine-brief", data: { urgency: kindOfMachine(machine), machine: machine.machine } },
    h("h4", {}, h("a", { href: at(machine.edge, machineAt(machine.machine)) }, machine.machine)),
    h("p", {}, state(machine.statement.tone.toLowerCase(), machine.statement.word)),
    waiting === 0 ? null : h("p", {}, state("bad", `${waiting} ${waiting === 1 ? "alert waits" : "alerts wait"}`)),
    h("p", { class: "small" }, lastPiece(machine)),
  );
}

start().catch((problem) => showTrouble($("first"), problem));
