// A station as a card: verdict with its age, last radius, the last pieces against the limits, what is found.

import words from "../api/words.js";
import { serviceNow } from "./api.js";
import { h, say, state } from "./dom.js";
import { insteadOfJob, kindOf, OF_PIECE } from "./findings.js";
import { RecentChart } from "./recent-chart.js";
import { ago, shortTime } from "./times.js";
import { fixed, inUnit, length, radius, unit } from "./units.js";

const FINDINGS = 3;

export class StationCard {
  constructor(name) {
    this.place = h("p", { class: "where" });
    this.word = h("p", { class: "word" });
    this.age = h("p", { class: "age" });
    this.bar = h("div", { class: "verdict state", data: { state: "quiet" } }, this.word, this.age);
    this.figure = h("p", { class: "value" }, "–");
    this.off = h("p", { class: "off" });
    this.chart = new RecentChart({ small: true });
    this.found = h("ul", { class: "found" });
    this.now = h("p", { class: "now" });
    this.link = h("a", { href: `station.html?station=${encodeURIComponent(name)}` }, name);
    this.element = h(
      "article",
      { class: "card", data: { station: name } },
      h("div", { class: "top" }, h("h2", {}, this.link), this.place),
      this.bar,
      h("div", { class: "figures-line" }, this.figure, this.off),
      this.chart.element,
      this.found,
      this.now,
    );
  }

  /** The station's part of /api/overview, and of /api/recent where that was asked for anew. */
  show(summary, recent = null) {
    this.summary = summary;
    const { station, job, piece, verdict, reliable } = summary;
    const said = reliable && job && piece && !insteadOfJob(summary) ? piece : verdict;
    this.bar.dataset.state = kindOf(said.tone);
    this.element.dataset.urgent = kindOf((summary.findings[0]?.statement ?? said).tone);
    this.element.dataset.dead = String(station.link !== "OPEN");
    say(this.word, said.word);
    this.word.style.setProperty("--chars", Math.max(8, said.word.length));
    say(this.place, [station.machine, job?.name].filter(Boolean).join(" · "));
    this.figures(summary);
    this.findings(summary, said);
    if (recent) this.chart.show(recent, summary);
    this.tick();
  }

  figures({ lastReading, job }) {
    const { value, plusMinus, digits } = lastReading ? radius(lastReading) : { value: "–", plusMinus: "" };
    this.figure.replaceChildren(value, h("small", {}, plusMinus ? ` ${plusMinus}\u00a0${unit()}` : ""));
    const target = job?.specification.targetMm;
    const off = lastReading?.radiusMm && target ? inUnit(lastReading.radiusMm - target) : null;
    say(this.off, off === null ? "" : `${off > 0 ? "+" : ""}${fixed(off, digits)} off target`);
  }

  /** What is found, but for what the bar says already. */
  findings({ findings }, said) {
    const rows = findings
      .filter(({ issue, statement }) => statement.word !== said.word && !OF_PIECE.includes(issue))
      .slice(0, FINDINGS)
      .map(({ statement }) => h("li", {}, state(kindOf(statement.tone), statement.word)));
    this.found.replaceChildren(...rows);
  }

  /** The age of what is shown. */
  tick() {
    const { lastReading, station } = this.summary;
    const { study } = station;
    if (station.link !== "OPEN") this.age.replaceChildren("since ", shortTime(station.since));
    else if (study) this.age.replaceChildren(study.step ? `Step ${study.step} of ${study.of}` : "Complete");
    else if (lastReading)
      this.age.replaceChildren(
        h("span", { class: "of-which" }, `Piece ${lastReading.piece}, `),
        ago(lastReading.at, serviceNow()),
      );
    else this.age.replaceChildren();
  }

  live({ depthMm, valueMm, phase }) {
    const figure = depthMm === null ? `shows ${length(valueMm, 3)}` : `depth ${length(depthMm, 3)}`;
    say(this.now, `Now: ${figure}\u00a0${unit()}, ${words.phases[phase].toLowerCase()}`);
  }
}
