// All stations at a glance, those that need attention first; a single one as its instrument with its job.

import { get } from "./api.js";
import { showCertificate } from "./certificate.js";
import { showDelivery } from "./delivery.js";
import { $, h, say } from "./dom.js";
import { findingList, sameState } from "./findings.js";
import { firstSteps } from "./first-steps.js";
import { frame, showTrouble } from "./frame.js";
import { Instrument } from "./instrument.js";
import { JobFigures } from "./job-figures.js";
import { follow } from "./live.js";
import { oneByOne } from "./loads.js";
import { StationCard } from "./station-card.js";

const TICK_MS = 5000;
const cards = new Map();
let one = null;
let summaries = [];

async function start() {
  frame("stations");
  await follow(
    { liveMillis: 250 },
    {
      reading: loadSoon,
      state: stateChanged,
      happened: loadSoon,
      zeroed: loadSoon,
      again: load,
      live,
      statistics: ({ jobId }) => {
        if (jobId === one?.figures.job?.id) one.figures.refresh();
      },
    },
  ).shown;
  showCertificate(document.querySelector("main"));
  showDelivery(document.querySelector("main"));
  setInterval(() => cards.forEach((card) => card.tick()), TICK_MS);
}

const load = oneByOne(async () => {
  const [found, recent] = await Promise.all([get("api/overview"), get("api/recent")]);
  summaries = found;
  const of = (summary) => recent.find((each) => each.station === summary.station.station);
  const single = summaries.length === 1;
  say($("title"), single ? `${summaries[0].station.station} · ${summaries[0].station.machine}` : "Stations");
  $("wall").hidden = summaries.length === 0;
  if (summaries.length === 0) $("stations").replaceChildren(firstSteps());
  else if (single) await showOne(summaries[0], of(summaries[0]));
  else showMany(of);
  $("stations").removeAttribute("aria-busy");
});

let timer = 0;
function loadSoon() {
  clearTimeout(timer);
  timer = setTimeout(() => load().catch((problem) => console.warn(problem.message)), 200);
}

function stateChanged(station) {
  const known = summaries.find((each) => each.station.station === station.station)?.station;
  if (!known || !sameState(known, station, ["piece", "position"])) loadSoon();
}

/** The cards in the order of the service, the most urgent first; each stays where it is in the document. */
function showMany(recentOf) {
  let grid = $("stations").querySelector(".cards");
  if (!grid) {
    grid = h("div", { class: "cards" });
    $("stations").replaceChildren(grid);
  }
  grid.dataset.many = String(summaries.length > 6);
  const columns = summaries.length > 6 ? 4 : summaries.length > 4 ? 3 : 2;
  grid.style.setProperty("--columns", columns);
  grid.style.setProperty("--rows", Math.ceil(summaries.length / columns));
  summaries.forEach((summary, order) => {
    const { station } = summary.station;
    if (!cards.has(station)) {
      cards.set(station, new StationCard(station));
      grid.append(cards.get(station).element);
    }
    cards.get(station).element.style.order = order;
    cards.get(station).show(summary, recentOf(summary));
  });
}

async function showOne(summary, recent) {
  one ??= build(summary.station.station);
  const { station, job } = summary;
  one.instrument.show(summary, recent);
  one.findings.replaceChildren(findingList(summary) ?? "");
  one.open.href = `station.html?station=${encodeURIComponent(station.station)}`;
  one.job.replaceChildren(
    ...(job ? [h("a", { href: `job.html?job=${job.id}` }, job.name), ` ${job.part}`] : ["No job chosen"]),
  );
  await one.figures.of(job);
}

function build(name) {
  const chart = h("div", { id: "chart" });
  const instrument = new Instrument(name);
  const [job, findings] = [h("p", { id: "one-job", class: "of" }), h("div", { id: "one-needs" })];
  const open = h("a", { id: "open", class: "button main" }, "Measure at this station");
  const figures = h("dl", { id: "figures", class: "figures" });
  const cautions = h("ul", { id: "cautions", class: "cautions" });
  $("stations").replaceChildren(
    h(
      "div",
      { id: "one", class: "one" },
      h(
        "div",
        { class: "stack" },
        h("div", { class: "instrument-place" }, instrument.element),
        h("div", { class: "sheet form" }, findings, open),
      ),
      h("section", { class: "sheet form", "aria-label": "Job statistics" }, job, figures, cautions, chart),
    ),
  );
  return { instrument, job, findings, open, figures: new JobFigures(figures, cautions, chart) };
}

function live(value) {
  one?.instrument.live(value);
  cards.get(value.station)?.live(value);
}

start().catch((problem) => showTrouble($("stations"), problem));
