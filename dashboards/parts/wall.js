// Stations on a wall: ?stations=a,b names them, without it all are shown. To the edges of the screen.

import { asked, get } from "./api.js";
import { stayAwake } from "./awake.js";
import { note } from "./dialogs.js";
import { $, h, say } from "./dom.js";
import { kindOf, sameState } from "./findings.js";
import { showTrouble } from "./frame.js";
import { Instrument } from "./instrument.js";
import { followKeys } from "./keys.js";
import { follow } from "./live.js";
import { oneByOne } from "./loads.js";
import { askSettings } from "./settings.js";
import { listenForTouch, signal, soundWaits } from "./signals.js";
import { byKey } from "./station-actions.js";

const wanted = (asked("stations") ?? "").split(",").filter(Boolean);
const tiles = new Map();

async function start() {
  $("settings").addEventListener("click", () => askSettings());
  stayAwake();
  $("full").hidden = !document.fullscreenEnabled;
  $("full").addEventListener("click", toggleFull);
  document.addEventListener("fullscreenchange", () =>
    say($("full"), document.fullscreenElement ? "Leave full screen" : "Full screen"),
  );
  listenForTouch();
  for (const event of ["pointerdown", "keydown"]) addEventListener(event, showSound);
  document.addEventListener("viewer", showSound);
  showSound();
  followKeys(pedal);
  await follow(
    { stations: wanted, liveMillis: 150 },
    {
      live: (value) => tiles.get(value.station)?.instrument.live(value),
      reading: recorded,
      refused,
      zeroed: ({ station }) => {
        tiles.get(station)?.instrument.zeroed();
        loadSoon();
      },
      state: changed,
      happened: loadSoon,
      statistics: loadSoon,
      again: load,
    },
  ).shown;
}

const load = oneByOne(async () => {
  const query = wanted.map((each) => `station=${encodeURIComponent(each)}`).join("&");
  const [found, recent] = await Promise.all([get("api/overview"), get(`api/recent?${query}`)]);
  const shown = found
    .filter(({ station }) => wanted.length === 0 || wanted.includes(station.station))
    .sort(byPlace);
  if (shown.length === 0) throw new Error(nothing(found));
  shown.forEach((summary) => tileOf(summary).show(summary, recent));
  const columns = [1, 1, 2, 2, 2, 3, 3, 3, 3, 3, 4, 4, 4][shown.length] ?? Math.ceil(Math.sqrt(shown.length));
  $("wall").style.setProperty("--columns", columns);
  $("wall").removeAttribute("aria-busy");
  document.title = `${shown.map(({ station }) => station.station).join(", ")} · Chordlog`;
});

/** In the order asked for, else by name: on a wall a station stays where it is. */
function byPlace({ station: { station: a } }, { station: { station: b } }) {
  return wanted.length ? wanted.indexOf(a) - wanted.indexOf(b) : a.localeCompare(b);
}

function nothing(found) {
  const known = found.map(({ station }) => station.station).join(", ");
  if (known === "") return "There is no station yet.";
  return `There is no station ${wanted.join(", ")}. The stations are: ${known}.`;
}

class Tile {
  constructor(name) {
    this.instrument = new Instrument(name, { wall: true });
    this.name = h("h2", {}, name);
    this.job = h("p", {});
    this.element = h(
      "div",
      { class: "tile" },
      h("div", { class: "tile-head" }, this.name, this.job),
      this.instrument.element,
    );
    $("wall").append(this.element);
  }

  show(summary, recent) {
    const { station, job } = summary;
    this.summary = summary;
    const where = [station.machine, job?.name].filter(Boolean).join(" · ");
    say(this.job, where);
    this.job.parentElement.style.setProperty("--chars", where.length || 1);
    this.instrument.show(
      summary,
      recent.find((each) => each.station === station.station),
    );
  }
}

function tileOf({ station: { station } }) {
  if (!tiles.has(station)) tiles.set(station, new Tile(station));
  return tiles.get(station);
}

let timer = 0;
function loadSoon() {
  clearTimeout(timer);
  timer = setTimeout(() => load().catch((problem) => console.warn(problem.message)), 150);
}

/** A screen of one station takes the keys of its pedal; of several, none could be meant. */
async function pedal(key) {
  if (tiles.size !== 1) {
    note("A pedal works where the wall shows one station.");
    return;
  }
  const [[name, { summary }]] = tiles;
  const path = `api/stations/${encodeURIComponent(name)}`;
  const gauge = await get(`${path}/gauge`);
  byKey({ name, path, summary, gauge, points: [], load }, key);
}

async function recorded({ station }) {
  const tile = tiles.get(station);
  if (!tile) return;
  await load().catch((problem) => console.warn(problem.message));
  const { piece } = tile.summary;
  signal(piece ? kindOf(piece.tone) : "quiet");
}

function refused({ station, reason }) {
  tiles.get(station)?.instrument.refused(reason);
  signal("refused");
}

function changed(station) {
  const tile = tiles.get(station.station);
  const old = tile?.summary.station;
  if (!old || !sameState(old, station, ["piece"])) loadSoon();
}

/** A screen on a wall may never be touched; then it is silent, which it says. */
function showSound() {
  $("sound").hidden = !soundWaits();
}

function toggleFull() {
  if (document.fullscreenElement) document.exitFullscreen();
  else document.documentElement.requestFullscreen();
}

start().catch((problem) => showTrouble($("wall"), problem));
