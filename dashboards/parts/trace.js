// The depth as it runs, drawn in the browser: phases, the window a reading was taken from, refusals.

import { length } from "./units.js";

const SECONDS = 20;
const STRIP = 12;

export class Trace {
  constructor(canvas) {
    Object.assign(this, { canvas, samples: [], signs: [], windows: [], due: false });
    new ResizeObserver(() => this.draw()).observe(canvas);
    document.addEventListener("viewer", () => this.draw());
  }

  /** A live value: { at (ms), depthMm, phase }. */
  add(sample) {
    this.samples.push(sample);
    const oldest = sample.at - SECONDS * 1000;
    while (this.samples.length > 1 && this.samples[1].at < oldest) this.samples.shift();
    this.signs = this.signs.filter((sign) => sign.at >= oldest);
    this.windows = this.windows.filter((window) => window.to >= oldest);
    this.drawSoon();
  }

  /** Something that happened then: kind "taken" or "refused", with its words. */
  sign(at, kind, words) {
    this.signs.push({ at, kind, words });
    this.drawSoon();
  }

  /** The samples from which a reading was taken. */
  window(from, to) {
    this.windows.push({ from, to });
    this.drawSoon();
  }

  newest() {
    return this.samples.at(-1)?.at ?? null;
  }

  drawSoon() {
    if (this.due) return;
    this.due = true;
    requestAnimationFrame(() => {
      this.due = false;
      this.draw();
    });
  }

  draw() {
    const ratio = devicePixelRatio || 1;
    const { clientWidth: width, clientHeight: height } = this.canvas;
    if (width === 0) return;
    this.canvas.width = width * ratio;
    this.canvas.height = height * ratio;
    const pen = this.canvas.getContext("2d");
    pen.scale(ratio, ratio);
    const style = getComputedStyle(this.canvas);
    const colour = (name) => style.getPropertyValue(`--${name}`);
    if (this.samples.length > 1) new Picture(pen, width, height, colour, style.fontFamily, this).draw();
  }
}

class Picture {
  constructor(pen, width, height, colour, font, trace) {
    Object.assign(this, { pen, width, height: height - STRIP, colour, trace });
    pen.font = `600 15px ${font}`;
    this.end = trace.newest();
    [this.low, this.high] = range(trace.samples);
  }

  x(at) {
    return this.width - 4 - ((this.end - at) / (SECONDS * 1000)) * this.width;
  }

  y(mm) {
    return 26 + (1 - (mm - this.low) / (this.high - this.low)) * (this.height - 40);
  }

  draw() {
    this.trace.windows.forEach((window) =>
      this.block(window.from, window.to, this.colour("good-ground"), 0, this.height),
    );
    this.lines();
    this.phases();
    this.curve();
    this.free = this.width;
    [...this.trace.signs].reverse().forEach((sign) => this.signs(sign));
  }

  lines() {
    const { pen } = this;
    pen.fillStyle = this.colour("soft");
    pen.strokeStyle = this.colour("line");
    const middle = this.height > 90 ? [(this.low + this.high) / 2] : [];
    for (const mm of [this.low, ...middle, this.high]) {
      const y = this.y(mm);
      pen.beginPath();
      pen.moveTo(0, y);
      pen.lineTo(this.width, y);
      pen.stroke();
      pen.fillText(length(mm, this.high - this.low < 0.5 ? 3 : 2), 6, y - 4);
    }
  }

  // The strip at the foot: blank in free air, ruled while moving, half high at rest, full when taken.
  phases() {
    const { samples } = this.trace;
    samples.slice(1).forEach((sample, i) => {
      const [fill, top] = { MOVING: ["edge", STRIP - 3], RESTING: ["open", STRIP / 2], TAKEN: ["good", 0] }[
        sample.phase
      ] ?? [null, 0];
      if (fill) this.block(samples[i].at, sample.at, this.colour(fill), this.height + top, STRIP - top);
    });
  }

  block(from, to, fill, top, height) {
    this.pen.fillStyle = fill;
    const left = this.x(from);
    this.pen.fillRect(left, top, Math.max(1.5, this.x(to) - left), height);
  }

  curve() {
    const { pen } = this;
    pen.strokeStyle = this.colour("ink");
    pen.lineWidth = 2.5;
    pen.lineJoin = "round";
    pen.save();
    pen.beginPath();
    pen.rect(0, 0, this.width, this.height);
    pen.clip();
    pen.beginPath();
    let before = null;
    for (const { at, depthMm } of this.trace.samples) {
      if (before === null || at - before > 1500) pen.moveTo(this.x(at), this.y(depthMm));
      else pen.lineTo(this.x(at), this.y(depthMm));
      before = at;
    }
    pen.stroke();
    pen.restore();
  }

  // The newest first; older words that would run into newer ones are left to the list beneath.
  signs({ at, kind, words }) {
    const { pen } = this;
    const x = this.x(at);
    pen.strokeStyle = pen.fillStyle = this.colour(kind === "taken" ? "good" : "bad");
    pen.lineWidth = 2;
    pen.setLineDash(kind === "taken" ? [] : [5, 4]);
    pen.beginPath();
    pen.moveTo(x, 22);
    pen.lineTo(x, this.height);
    pen.stroke();
    pen.setLineDash([]);
    const text = `${kind === "taken" ? "●" : "✕"} ${words}`;
    const wide = pen.measureText(text).width;
    const left = Math.max(2, Math.min(this.width - wide - 4, x - 6));
    if (left + wide > this.free) return;
    pen.fillText(text, left, 16);
    this.free = left - 8;
  }
}

// Free air is left out, so that what happens on the piece can be seen; at least 0.1 mm high.
function range(samples) {
  const touched = samples.filter((sample) => sample.phase !== "FREE").map((sample) => sample.depthMm);
  const depths = touched.length > 3 ? touched : samples.map((sample) => sample.depthMm);
  const resting = samples
    .filter((sample) => sample.phase === "RESTING" || sample.phase === "TAKEN")
    .map((sample) => sample.depthMm);
  const middle = resting.length ? resting.at(-1) : depths.at(-1);
  const low = Math.max(Math.min(...depths), middle - 1);
  const high = Math.min(Math.max(...depths), middle + 1);
  const more = Math.max(0, 0.1 - (high - low)) / 2 + (high - low) * 0.12;
  return [low - more, high + more];
}
