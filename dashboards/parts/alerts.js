// The alerts that are not over, by how urgent they are; those that are over; how many there were in each week.

import { get, serviceNow } from "./api.js";
import { AlertCard } from "./alert-card.js";
import { $, h, state, table } from "./dom.js";
import { kindOf, told } from "./findings.js";
import { frame, showTrouble } from "./frame.js";
import { follow } from "./live.js";
import { oneByOne } from "./loads.js";
import { workshop } from "./place.js";
import { openRequests } from "./requests.js";
import { ago, date, dateTime } from "./times.js";

const PAGE = 50;
const TICK_MS = workshop === null ? 60000 : 10000; // answers of a workshop computer come with its records
const earlier = { alerts: [], next: null };
const cards = new Map();

async function start() {
  frame("alerts");
  await follow({ liveMillis: TICK_MS }, { again: load }).shown;
  toLinked();
  addEventListener("hashchange", () => load().then(toLinked));
  document.addEventListener("alerts", loadSoon);
  setInterval(loadSoon, TICK_MS); // what is overdue becomes so without an event
}

const load = oneByOne(async () => {
  const [asked, now, past, weeks] = await Promise.all([
    openRequests(),
    get("api/alerts"),
    get(`api/alerts/history?limit=${PAGE}`),
    get("api/alerts/weeks"),
  ]);
  if (workshop === null) showService(now);
  const focused = document.activeElement;
  showOpen(now, asked);
  await showLinked(now, asked);
  if (focused?.matches("article.alert")) focused.focus({ preventScroll: true }); // drawn anew, it lost it
  Object.assign(earlier, { alerts: past.items, next: past.next });
  showEarlier();
  showWeeks(weeks);
  $("alerts").removeAttribute("aria-busy");
});

let timer = 0;
function loadSoon() {
  clearTimeout(timer);
  timer = setTimeout(() => load().catch((problem) => console.warn(problem.message)), 200);
}

function showService({ watchingSince, service }) {
  $("watching").replaceChildren(
    ...(watchingSince === null ? [] : ["Watching since ", dateTime(watchingSince)]),
  );
  $("service").hidden = service.length === 0;
  $("service").replaceChildren(...service.map((each) => h("li", {}, ...told(each))));
}

/** The alert that the address names, as a link in a mail does: alerts.html#17. */
const linked = () => Number(/^#(\d+)$/.exec(location.hash)?.[1] ?? 0);

/** It is here also where it is over. */
async function showLinked({ alerts }, asked) {
  const id = linked();
  const here = id === 0 || alerts.some((each) => each.id === id);
  const alert = here ? null : await get(`api/alerts/${id}`).catch(() => null);
  const said = alert ? [h("h2", {}, "Over, from your link"), card(alert, asked)] : [];
  const none = h("p", { class: "sheet" }, `There is no alert ${id} here: the link is of another database.`);
  $("linked").replaceChildren(...(here || alert ? said : [none]));
  for (const each of document.querySelectorAll("article.alert")) {
    each.toggleAttribute("data-linked", each.id === `alert-${id}`);
  }
}

/** Scrolls to it and gives it the focus, once. */
function toLinked() {
  const card = document.querySelector("[data-linked]");
  if (!card) return;
  card.tabIndex = -1;
  card.scrollIntoView({ block: "start" });
  card.focus({ preventScroll: true });
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
  [...cards.keys()].filter((id) => !ids.has(id) && id !== linked()).forEach((id) => cards.delete(id));
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
    since === null ? null : h("p", {}, "Watching since ", dateTime(since), ", ", ago(since, serviceNow()), "."),
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
