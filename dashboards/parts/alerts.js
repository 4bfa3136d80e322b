// The alerts that are not over, by how urgent they are; those that are over; how many there were in each week.

import { get, serviceNow } from "./api.js";
import { AlertCard } from "./alert-card.js";
import { $, h, state, table } from "./dom.js";
import { kindOf, told } from "./findings.js";
import { frame, showTrouble } from "./frame.js";
import { follow } from "./live.js";
import { workshop } from "./place.js";
import { openRequests } from "./requests.js";
import { ago, date, dateTime } from "./times.js";

const PAGE = 50;
const TICK_MS = workshop === null ? 60000 : 10000; // answers of a workshop computer come with its records
const earlier = { alerts: [], next: null };
const cards = new Map();

async function start() {
  frame("alerts");
  await load();
  document.addEventListener("alerts", loadSoon);
  setInterval(loadSoon, TICK_MS); // what is overdue becomes so without an event
  follow({ liveMillis: TICK_MS }, { again: loadSoon });
}

async function load() {
  const [asked, now, past, weeks] = await Promise.all([
    openRequests(),
    get("api/alerts"),
    get(`api/alerts/history?limit=${PAGE}`),
    get("api/alerts/weeks"),
  ]);
  if (workshop === null) showService(now);
  showOpen(now, asked);
  Object.assign(earlier, { alerts: past.items, next: past.next });
  showEarlier();
  showWeeks(weeks);
  $("alerts").removeAttribute("aria-busy");
}

let timer = 0;
function loadSoon() {
  clearTimeout(timer);
  timer = setTimeout(() => load().catch((problem) => console.warn(problem.message)), 200);
}

function showService({ watchingSince, service }) {
  $("watching").replaceChildren(
    ...(watchingSince === null ? [] : ["Looked for since ", dateTime(watchingSince)]),
  );
  $("service").hidden = service.length === 0;
  $("service").replaceChildren(...service.map((each) => h("li", {}, ...told(each))));
}

const groups = [
  ["Waits for somebody", ({ state: each }) => each === "UNACKNOWLEDGED" || each === "RETURNED_UNACKNOWLEDGED"],
  ["Somebody knows", ({ state: each }) => each === "ACKNOWLEDGED"],
  ["Put aside or under repair", ({ state: each }) => each === "SHELVED" || each === "OUT_OF_SERVICE"],
];

/** In the order of the service; a card that is open stays open. */
function showOpen({ alerts, watchingSince }, asked) {
  const parts = groups.flatMap(([title, belongs]) => {
    const of = alerts.filter(belongs);
    return of.length === 0 ? [] : [h("h2", {}, `${title}: ${of.length}`), ...of.map((each) => card(each, asked))];
  });
  const ids = new Set(alerts.map(({ id }) => id));
  [...cards.keys()].filter((id) => !ids.has(id)).forEach((id) => cards.delete(id));
  $("alerts").replaceChildren(...(parts.length === 0 ? [quiet(watchingSince)] : parts));
}

function card(alert, asked) {
  if (!cards.has(alert.id)) cards.set(alert.id, new AlertCard(load));
  const about = asked.filter(({ body }) => body.alertId === alert.id);
  return cards.get(alert.id).show(alert, about);
}

function quiet(since) {
  return h(
    "section",
    { class: "sheet empty" },
    since === null ? h("p", {}, "No alert is open.") : h("p", {}, state("good", "All is quiet")),
    since === null ? null : h("p", {}, "Looked for since ", dateTime(since), ", ", ago(since, serviceNow()), "."),
  );
}

async function older() {
  const { items, next } = await get(`api/alerts/history?limit=${PAGE}&before=${earlier.next}`);
  Object.assign(earlier, { alerts: [...earlier.alerts, ...items], next });
  showEarlier();
}

function showEarlier() {
  const over = earlier.alerts.filter((each) => each.state === "NORMAL");
  $("earlier").replaceChildren(
    over.length === 0
      ? h("p", { class: "small" }, "None yet.")
      : table("Alerts that are over, the newest first", columns(), over, "lines"),
    earlier.next === null
      ? ""
      : h("button", { class: "button plain", type: "button", on: { click: older } }, "Older alerts"),
  );
}

function columns() {
  return [
    { head: "Raised", cell: (each) => dateTime(each.since) },
    { head: "Urgency", cell: (each) => state(kindOf(each.statement.tone), each.urgency) },
    { head: "What", kind: "lead new", cell: (each) => each.statement.word },
    { head: "Where", cell: (each) => each.where },
    { head: "Over since", kind: "new named", cell: (each) => dateTime(each.changedAt) },
    { head: "Said", kind: "new named", cell: (each) => each.note },
  ];
}

function showWeeks(weeks) {
  $("weeks").replaceChildren(
    table(
      "How many alerts were raised in each of the last weeks",
      [
        { head: "From", cell: (week) => date(week.from) },
        { head: "To", cell: (week) => date(week.to) },
        { head: "Alerts", number: true, cell: (week) => String(week.raised) },
      ],
      weeks,
      false,
    ),
  );
}

start().catch((problem) => showTrouble($("alerts"), problem));
