// The piece that runs through the gauge now: its profile as it grows.

import { get } from "./api.js";
import { Chart } from "./chart.js";
import { h } from "./dom.js";
import { LengthOfLine } from "./line-delay.js";
import { length, unit } from "./units.js";

const EACH_MS = 1000;

export class RunningPiece {
  constructor(station) {
    this.path = `api/stations/${encodeURIComponent(station)}/running`;
    this.said = h("p", { role: "status" });
    this.length = new LengthOfLine(station);
    this.chart = new Chart(h("div", { class: "chart-box" }), {
      height: 300,
      narrowHeight: 300,
      newestFirst: false,
    });
    this.element = h(
      "section",
      { class: "sheet no-print", "aria-label": "Running through now", hidden: true },
      h("h2", {}, "Running through now"),
      this.said,
      this.chart.container,
      this.length.element,
    );
  }

  /** Looks each second while the page is seen; nothing is shown of a station that is not in a line. */
  async start() {
    const now = await get(this.path).catch(() => null);
    this.element.hidden = !now?.inLine;
    if (this.element.hidden) return;
    await this.put(now);
    setInterval(() => {
      if (!document.hidden) this.look().catch(() => {});
    }, EACH_MS);
  }

  async look() {
    if (this.looking) return;
    this.looking = true;
    try {
      await this.put(await get(this.path));
    } finally {
      this.looking = false;
    }
  }

  async put(now) {
    this.length.put(now.length);
    const words = told(now);
    if (this.said.textContent !== words) this.said.textContent = words;
    if (now.running) {
      this.shown = true;
      await this.chart.show(`${this.path}/chart`);
    } else if (this.shown !== false) {
      this.shown = false;
      this.chart.clear(h("p", { class: "empty" }, "Waiting for the next piece."));
    }
  }
}

function told({ running, placeMm, stopped, backwards }) {
  if (!running) return "No piece is under the gauge.";
  const place = `${length(placeMm, 0)}\u00a0${unit()}`;
  if (stopped) return `Stopped at ${place}: nothing is counted twice.`;
  return backwards ? `Running back, at ${place}: the last passage counts.` : `At ${place}.`;
}
