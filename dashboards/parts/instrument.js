// A station as an instrument: verdict, radius with its deviation from the target, the depth to aim for, what to do
// next, and the last pieces. As large as its place allows; says at once when what it shows is not live any more.

import words from "../api/words.js";
import { serviceNow } from "./api.js";
import { h, say } from "./dom.js";
import { insteadOfJob, kindOf } from "./findings.js";
import {
  capital,
  inPlace,
  LINE,
  limitsOf,
  nowWords,
  phaseSaid,
  placeOf,
  placeWords,
  refusalSaid,
  samePlace,
  spreadWords,
} from "./instrument-words.js";
import { RecentChart } from "./recent-chart.js";
import { drawRuler } from "./ruler.js";
import { ago, shortTime } from "./times.js";
import { fixed, inUnit, length, lengthDigits, plainLength, radius, unit } from "./units.js";

/** Width of a letter in parts of its size. */
const LETTER = 0.5;

export class Instrument {
  constructor(name, { wall = false } = {}) {
    Object.assign(this, { name, summary: null, value: null, refusal: null, before: null, lostAt: null, wider: 1 });
    this.word = h("div", { class: "word" });
    this.of = h("div", { class: "of-piece" });
    this.bar = h(
      "div",
      { class: "verdict state", role: "status", data: { state: "quiet" } },
      this.word,
      this.of,
    );
    this.mode = h("span", { class: "mode" });
    this.figure = h("div", { class: "figure", id: `radius-${name}` }, "–");
    this.spread = h("div", { class: "spread" }, h("span"), h("span", { class: "meaning" }));
    this.ruler = document.createElementNS("http://www.w3.org/2000/svg", "svg");
    this.off = figureOf("Off target");
    this.aim = figureOf("Aim for depth");
    this.now = h("div", { class: "now" });
    this.chart = new RecentChart({ wall });
    this.next = h("div", { class: "next" });
    this.record = h("div", { class: "record", id: "record" });
    this.why = h("div", { class: "why" }, h("span", { class: "reason" }), " ", h("span"));
    this.body = h(
      "div",
      { class: "dial" },
      this.bar,
      h(
        "div",
        { class: "reading" },
        h("div", { class: "caption" }, this.mode),
        this.figure,
        this.spread,
        this.ruler,
      ),
      h("div", { class: "pair" }, this.off.element, this.aim.element),
      h("div", { class: "now-row" }, this.now, this.record),
      h(
        "figure",
        { class: "pieces" },
        h("figcaption", { class: "caption" }, "Last 30 pieces"),
        this.chart.element,
      ),
      h("div", { class: "instruction" }, this.next, this.why),
    );
    this.element = h(
      "section",
      { class: "instrument", "aria-label": name, data: { station: name } },
      this.body,
    );
    document.addEventListener("freshness", ({ detail }) => {
      this.lostAt = detail.since;
      this.draw();
    });
    setInterval(() => {
      this.apart();
      this.draw();
    }, 5000);
  }

  /** What the service says of the station now: its overview, and what /api/recent has of it. */
  show(summary, recent) {
    Object.assign(this, { summary });
    if (this.refusal?.place !== placeOf(summary)) this.refusal = null;
    if (recent) this.chart.show(recent, summary);
    this.apart();
    this.draw();
  }

  /** Letters that a viewer's own style sets apart are smaller by as much, so that they keep their place. */
  apart() {
    const { letterSpacing, fontSize } = getComputedStyle(this.figure);
    const gap = Number.parseFloat(letterSpacing) / Number.parseFloat(fontSize) || 0;
    this.wider = 1 + gap / LETTER;
    this.element.style.setProperty("--wider", this.wider.toFixed(2));
    this.element.dataset.apart = String(this.wider > 1);
  }

  live(value) {
    const contact = value.phase !== "FREE";
    if (contact && this.phase() === "FREE") {
      this.refusal = null;
      this.before = this.summary?.lastReading?.id ?? null;
    }
    if (value.phase !== "TAKEN" || !this.held)
      this.held = { mm: value.radiusMm ?? null, flat: Boolean(value.flat) };
    this.value = value;
    this.draw();
  }

  /** Live, or as it was when it was recorded: what a plunger shows that is lifted off is no radius. */
  radiusNow() {
    return this.held ?? NO_RADIUS;
  }

  /** A reading was refused; said until the next contact. */
  refused(reason) {
    this.refusal = { reason, place: this.summary && placeOf(this.summary) };
    this.draw();
  }

  zeroed() {
    this.refusal = null;
    this.draw();
  }

  draw() {
    if (!this.summary) return;
    const said = this.said();
    const { station } = this.summary;
    this.element.dataset.dead = String(this.lostAt !== null || station.link !== "OPEN");
    this.element.dataset.shows = said.shows;
    this.bar.dataset.state = kindOf(said.tone);
    this.fit(this.word, said.word);
    this.place(said);
    this.figures(said);
    this.nowLine();
    this.fit(this.next, said.advice || said.reason || "");
    this.element.dataset.long = String(this.next.textContent.length * this.wider > LINE);
    const rollers =
      said.shows === "recorded" && this.summary.correction?.act ? this.summary.correction : null;
    const reason = said.advice && said.reason ? said.reason : "";
    say(this.why.firstElementChild, reason);
    say(this.why.lastElementChild, rollers ? rollers.text : "");
    this.why.style.setProperty("--chars", (reason || rollers?.text || "").length || 1);
  }

  /** Words in a place whose letters are as large as their number allows. */
  fit(element, text) {
    say(element, text);
    element.style.setProperty("--chars", Math.max(4, text.length));
  }

  /**
   * What is said in large, and which radius is shown with it: what hinders measuring first, then what
   * happens now, then the last piece. shows: past, live, recorded or nothing.
   */
  said() {
    const { job, reliable, verdict, piece, station, lastReading } = this.summary;
    if (this.lostAt) return { ...inPlace("NOT_LIVE"), shows: "past" };
    if (!reliable) return { ...verdict, shows: this.onPiece() ? "live" : "past" };
    const instead = insteadOfJob(this.summary);
    if (instead) {
      const shows = this.onPiece() && instead.issue !== "IN_STUDY" ? "live" : "nothing";
      return { ...instead.statement, shows };
    }
    if (!job || job.state === "CLOSED") return { ...verdict, shows: this.onPiece() ? "live" : "past" };
    if (this.refusal)
      return { ...refusalSaid(this.refusal.reason), shows: this.onPiece() ? "live" : "nothing" };
    if (this.onPiece())
      return { ...phaseSaid(this.phase()), advice: `Measuring ${placeWords(station, job)}.`, shows: "live" };
    if (this.phase() === "TAKEN" && this.before === (lastReading?.id ?? null))
      return { ...phaseSaid("TAKEN"), advice: "", shows: "live" };
    if (piece && !samePlace(lastReading, station)) return { ...piece, shows: "recorded" };
    return { tone: "QUIET", word: "Ready", advice: `Measure ${placeWords(station, job)}.`, shows: "nothing" };
  }

  phase() {
    return this.value?.phase ?? "FREE";
  }

  onPiece() {
    return this.phase() === "MOVING" || this.phase() === "RESTING";
  }

  /** Of which piece the verdict is, how old it is, and which piece comes next. */
  place({ shows, reason, advice }) {
    const { lastReading, station, job } = this.summary;
    const since = this.lostAt?.toISOString() ?? (station.link === "OPEN" ? null : station.since);
    const last = job &&
      lastReading && [`${capital(placeWords(lastReading, job))}, `, ago(lastReading.at, serviceNow())];
    const lines = [];
    if (since) lines.push(["since ", shortTime(since)]);
    if (advice && reason) lines.push([h("span", { class: "reason" }, reason)]);
    if (shows === "recorded" && this.phase() === "TAKEN")
      lines.push([`Recorded – ${words.phases.TAKEN.toLowerCase()}`]);
    else if (last && shows === "recorded") lines.push(last);
    if (job && !since && shows !== "past" && !insteadOfJob(this.summary))
      lines.push([
        shows === "live" ? capital(placeWords(station, job)) : `Next: ${placeWords(station, job)}`,
      ]);
    const rows = lines.map((line) => h("span", {}, ...line));
    const text = rows.map((row) => row.textContent).join("\n");
    if (this.placed === text) return;
    this.placed = text;
    this.of.replaceChildren(...rows);
  }

  figures({ shows }) {
    const { lastReading, measuring } = this.summary;
    const job = insteadOfJob(this.summary) ? null : this.summary.job;
    const { mm: live, flat } = shows === "live" ? this.radiusNow() : NO_RADIUS;
    const recorded = shows === "recorded" || shows === "past" ? lastReading : null;
    const shown = recorded
      ? radius(recorded)
      : { value: flat ? "flat" : length(live, 1), digits: lengthDigits(1) };
    const old = shows === "past" && lastReading && job;
    const which = old
      ? `${capital(placeWords(lastReading, job))}, ${ago(lastReading.at, serviceNow()).textContent}: `
      : "";
    say(this.mode, `${which}${shows === "live" ? "Live radius" : old ? "radius" : "Radius"}, ${unit()}`);
    this.fit(this.figure, shown.value);
    const [spread, meaning] = spreadWords(recorded, shown, (live !== null || flat) && this.onPiece());
    say(this.spread.firstElementChild, spread);
    say(this.spread.lastElementChild, meaning);
    this.deviation(job, recorded ? recorded.radiusMm : live, shown.digits);
    const aim = job && measuring.aim;
    this.fit(this.aim.value, aim ? length(aim.depthMm, 3) : "–");
    say(this.aim.note, aim ? limitsOf(aim) : job ? "not within reach of this bridge" : "");
    this.drawRuler(job, recorded, live);
  }

  deviation(job, radiusMm, digits) {
    const target = job?.specification.targetMm ?? null;
    const off = target === null || radiusMm === null ? null : inUnit(radiusMm - target);
    const shown = fixed(off, digits);
    this.fit(this.off.value, `${off > 0 && Number(shown) !== 0 ? "+" : ""}${shown}`);
    say(this.off.note, target === null ? "" : `target ${plainLength(target)}\u00a0${unit()}`);
  }

  drawRuler(job, recorded, live) {
    const of = recorded ?? (live === null ? null : { radiusMm: live, lowerMm: live, upperMm: live });
    const ruled = JSON.stringify([of?.radiusMm, of?.lowerMm, of?.upperMm, job?.specification, unit()]);
    if (this.ruled === ruled) return;
    this.ruled = ruled;
    this.ruler.replaceChildren();
    if (of && job) drawRuler(this.ruler, of, job.specification);
  }

  /** The indicator's own value always, so that a live one and a dead one look different. */
  nowLine() {
    if (!this.value) {
      say(this.now, "No value from the indicator yet");
      return;
    }
    say(this.now, nowWords(this.value));
    this.now.dataset.phase = this.value.phase;
  }
}

function figureOf(title) {
  const value = h("div", { class: "value" }, "–");
  const note = h("div", { class: "note-line" });
  return {
    value,
    note,
    element: h("div", { class: "part" }, h("div", { class: "caption" }, title), value, note),
  };
}

/** Of free air, and of a depth that no bend gives. */
const NO_RADIUS = { mm: null, flat: false };
