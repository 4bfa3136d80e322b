// The last pieces against their limits, small enough for a card and large enough for a wall: one look
// wherever pieces are shown beside a live value. The newest stands at the right edge with its figure.

import words from "../api/words.js";
import { h } from "./dom.js";
import { aimWords } from "./job-words.js";
import { fixed, inUnit, length, plainLength, radius } from "./units.js";

const NS = "http://www.w3.org/2000/svg";
const SIGNS = {
  CONFORMS: "M-1 0a1 1 0 1 0 2 0a1 1 0 1 0-2 0z",
  DOES_NOT_CONFORM: "M-1-.6-.6-1 0-.4.6-1 1-.6.4 0 1 .6.6 1 0 .4-.6 1-1 .6-.4 0z",
  UNDECIDED: "M0-1.2 1.2 0 0 1.2-1.2 0z",
  NO_LIMITS: "M-1-.3h2v.6h-2z",
};

const LEAST_PX = 24;
/** Of the limits from one another: one line of small letters. */
const LEAST_APART_PX = 16;

/** Paper has its own size, which no page is told; as high as in print.css. */
const PAPER_PX = [340, 150];
const SMALL_PAPER_PX = [200, 70];

export class RecentChart {
  constructor({ pieces = 30, small = false, wall = false } = {}) {
    Object.assign(this, { pieces, small, wall, specification: null, points: [], events: [], digits: null });
    this.svg = shape("svg", { role: "img", focusable: "false" });
    this.element = h("div", { class: "recent", data: { small: String(small) } }, this.svg);
    new ResizeObserver(() => this.draw()).observe(this.element);
    addEventListener("beforeprint", () => this.drawn(...(small ? SMALL_PAPER_PX : PAPER_PX)));
    addEventListener("afterprint", () => this.draw());
  }

  /** What /api/recent answers of a station; its part of /api/overview, for the job's limits and the digits. */
  show({ points, events }, { job, lastReading }) {
    const digits = lastReading?.radiusMm ? radius(lastReading).digits : null;
    Object.assign(this, { points, events, specification: job?.specification ?? null, digits });
    this.draw();
  }

  draw() {
    this.drawn(this.element.clientWidth, this.element.clientHeight);
  }

  drawn(width, height) {
    const columns = columnsOf(this.points, this.pieces);
    this.element.dataset.empty = String(columns.length === 0);
    this.svg.replaceChildren();
    this.element.dataset.low = String(!this.small && height < LEAST_PX);
    if (width < 40 || height < LEAST_PX) return;
    this.svg.setAttribute("viewBox", `0 0 ${width} ${height}`);
    this.svg.setAttribute("aria-label", this.specification ? told(columns, this.specification) : "No job");
    if (!this.specification || columns.length === 0) return;
    const drawing = new Drawing(this.svg, width, height, this, columns);
    this.element.dataset.low = String(!this.small && drawing.isLow());
    drawing.draw();
  }
}

/** The readings of each piece in turn, at each position the last; at most so many pieces. */
function columnsOf(points, most) {
  const columns = new Map();
  for (const point of points) {
    const earlier = (columns.get(point.piece) ?? []).filter((each) => each.position !== point.position);
    columns.set(point.piece, [...earlier, point]);
  }
  return [...columns.entries()].slice(-most);
}

function told(columns, specification) {
  const limits = aimWords(specification);
  const readings = columns.flatMap(([, each]) => each);
  if (readings.length === 0) return `No pieces yet; ${limits}`;
  const count = (decision) => readings.filter((each) => each.decision === decision).length;
  const counts = Object.keys(SIGNS)
    .filter((decision) => count(decision) > 0)
    .map((decision) => `${count(decision)} ${words.decisions[decision].toLowerCase()}`);
  const known = readings.map((each) => each.radiusMm).filter((mm) => mm !== null);
  const newest = readings.at(-1);
  return (
    `The last ${columns.length} pieces: ${counts.join(", ")}. Newest: piece ${newest.piece}, ` +
    `${newest.radiusMm === null ? "flat" : length(newest.radiusMm, 1)}` +
    `${known.length ? `; from ${length(Math.min(...known), 1)} to ${length(Math.max(...known), 1)}` : ""}; ${limits}`
  );
}

/** Letters of a chart: on a wall as large as three of them, one over the other, leave room for the pieces. */
function textOf({ small, wall }, width, height) {
  if (!wall) return Math.max(small ? 14 : 15, Math.min(32, height / 9, width / 26));
  const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
  return Math.max(15, Math.min(2.45 * rem, height / 4.6, width / 22));
}

class Drawing {
  constructor(svg, width, height, chart, columns) {
    const text = textOf(chart, width, height);
    const { events, digits } = chart;
    Object.assign(this, { svg, width, height, columns, text, events, digits, labelled: [] });
    this.specification = chart.specification;
    const { lowerLimitMm, upperLimitMm, targetMm } = this.specification;
    this.marks = [lowerLimitMm, upperLimitMm, targetMm].filter((mm) => mm !== null);
    const longest = Math.max(...this.marks.map((mm) => plainLength(mm).length));
    this.left = chart.small ? 4 : longest * text * 0.62 + 10;
    this.right = width - Math.max(6, this.figure(this.marks[0]).length) * text * 0.68 - text;
    this.top = chart.small ? 6 : text * 0.8;
    this.axis = !chart.small && height >= (chart.wall ? 7 : 5) * text; // else the pieces have its room
    this.bottom = height - (chart.small ? 6 : text * (this.axis ? 1.9 : 0.8));
    [this.low, this.high] = this.range();
  }

  /** Covers the limits and the pieces; what lies far beyond is shown at the edge. */
  range() {
    const least = Math.min(...this.marks);
    const most = Math.max(...this.marks);
    const width = most - least || most * 0.02;
    const values = this.columns.flatMap(([, each]) => each.map((point) => point.radiusMm ?? Infinity));
    const low = Math.max(least - width, Math.min(least, ...values));
    const high = Math.min(most + width, Math.max(most, ...values));
    const more = 0.08 * (high - low || width);
    return [low - more, high + more];
  }

  /** So low that the limits run together. */
  isLow() {
    const { lowerLimitMm: lower, upperLimitMm: upper } = this.specification;
    if (lower === null || upper === null) return false;
    return this.y(lower) - this.y(upper) < LEAST_APART_PX;
  }

  x(column) {
    const step = (this.right - this.left) / Math.max(12, this.columns.length);
    return this.right - step * (this.columns.length - 1 - column + 0.5);
  }

  y(mm) {
    const at = ((mm ?? Infinity) - this.low) / (this.high - this.low);
    return this.bottom - Math.max(0, Math.min(1, at)) * (this.bottom - this.top);
  }

  draw() {
    this.band();
    this.changes();
    this.line();
    this.columns.forEach(([, readings], column) =>
      readings.forEach((reading) =>
        this.sign(reading, this.x(column), this.size(column === this.columns.length - 1)),
      ),
    );
    this.newest();
    if (this.axis) this.pieceNumbers();
  }

  size(newest) {
    const room = (this.right - this.left) / Math.max(12, this.columns.length);
    const high = (this.bottom - this.top) * 0.13;
    return Math.max(3, Math.min(room * 0.33, this.text * 0.36, high)) * (newest ? 1.7 : 1);
  }

  band() {
    const { lowerLimitMm, upperLimitMm, targetMm } = this.specification;
    const top = upperLimitMm === null ? this.top - 4 : this.y(upperLimitMm);
    const bottom = lowerLimitMm === null ? this.bottom + 4 : this.y(lowerLimitMm);
    this.add("rect", {
      x: this.left,
      y: top,
      width: this.right - this.left + this.text * 0.6,
      height: Math.max(0, bottom - top),
      class: "allowed",
    });
    this.level(upperLimitMm, "limit");
    this.level(lowerLimitMm, "limit");
    this.level(targetMm, "target"); // last: where it is tight, the limits have the figures
  }

  level(mm, kind) {
    if (mm === null) return;
    const y = this.y(mm);
    this.add("line", { x1: this.left, y1: y, x2: this.right + this.text * 0.6, y2: y, class: kind });
    if (this.left > 20 && this.free(y)) {
      this.labelled.push(y);
      this.label(plainLength(mm), this.left - 6, y + this.text * 0.36, "end", "soft");
    }
  }

  /** Whether no level's figure stands there yet. */
  free(y) {
    return this.labelled.every((each) => Math.abs(each - y) > this.text);
  }

  /** Corrections, lots and set-ups: a post before the first piece after them, its words where there is room. */
  changes() {
    let free = this.left;
    for (const event of this.events) {
      const after = this.columns.findIndex(([, each]) =>
        each.some((p) => p.readingId > event.afterReadingId),
      );
      if (after < 1) continue;
      const x = (this.x(after) + this.x(after - 1)) / 2;
      this.add("line", { x1: x, y1: this.top, x2: x, y2: this.bottom, class: "change" });
      const name = words.events[event.kind];
      const wide = name.length * this.text * 0.55;
      if (this.axis && x - wide / 2 > free && x + wide / 2 < this.right) {
        this.label(name, x, this.height - this.text * 0.3, "middle", "soft");
        free = x + wide / 2 + this.text;
      }
    }
    this.free = free;
  }

  line() {
    const means = this.columns.map(([, each], column) => {
      const known = each.map((point) => point.radiusMm).filter((mm) => mm !== null);
      return known.length ? `${this.x(column)},${this.y(known.reduce((a, b) => a + b) / known.length)}` : "";
    });
    this.add("polyline", { points: means.join(" "), class: "run" });
  }

  sign({ radiusMm, decision }, x, size) {
    this.add("path", {
      d: SIGNS[decision],
      transform: `translate(${x} ${this.y(radiusMm)}) scale(${size})`,
      class: "sign",
      "data-decision": decision,
    });
  }

  /** A radius with the digits that it has beside the chart. */
  figure(mm) {
    if (mm === null) return "flat";
    return this.digits === null ? length(mm, 1) : fixed(inUnit(mm), this.digits);
  }

  newest() {
    const newest = this.columns.at(-1)[1].at(-1);
    const y = Math.min(this.height - 4, this.y(newest.radiusMm) + this.text * 0.36);
    this.label(this.figure(newest.radiusMm), this.right + this.text * 0.8, y, "start", "newest");
  }

  pieceNumbers() {
    const y = this.height - this.text * 0.3;
    const last = this.columns.length - 1;
    if (this.free < this.right - this.text * 4)
      this.label(`piece ${this.columns[last][0]}`, this.right + this.text * 0.6, y, "end", "soft");
    const first = this.x(0) - this.text * 0.3;
    if (last > 8 && !(this.free > this.left))
      this.label(String(this.columns[0][0]), first, y, "start", "soft");
  }

  label(text, x, y, anchor, kind) {
    const label = this.add("text", { x, y, "text-anchor": anchor, class: kind, "font-size": this.text });
    label.textContent = text;
  }

  add(name, attributes) {
    const element = shape(name, attributes);
    this.svg.append(element);
    return element;
  }
}

function shape(name, attributes) {
  const element = document.createElementNS(NS, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  return element;
}
