// Which readings are looked at: position, phase, times.

import { h } from "./dom.js";
import { field, options, values } from "./forms.js";
import { phasesOf } from "./job-words.js";

export class Filter {
  constructor(job, changed) {
    const { positions, subgroups } = job.plan;
    this.position = pick("characteristic", "Position", []);
    this.part = pick("part", "Readings", [["phase", "Since the last change"]]);
    this.from = day("from", "From (day)");
    this.to = day("to", "To (day)");
    this.fault = h("p", { class: "fault general", role: "alert" });
    this.element = h(
      "form",
      { class: "filter", "aria-label": "What is looked at" },
      this.position,
      this.part,
      this.from,
      this.to,
      this.fault,
    );
    this.list = [];
    this.element.addEventListener("change", () => {
      this.days();
      changed();
    });
    this.element.addEventListener("submit", (event) => event.preventDefault());
    this.days();
    this.known({
      characteristics:
        subgroups !== "PIECE" ? positions : ["whole piece", ...(positions.length > 1 ? positions : [])],
    });
  }

  /** Offers the phases that the events make; while nothing was measured since the last change, the one before. */
  phases(events, newestReadingId) {
    this.list = phasesOf(events);
    const several = this.list.length > 1;
    const older = `phase-${this.list.length - 2}`;
    const waiting = several && this.list.at(-1).above >= newestReadingId;
    const first = waiting
      ? [older, "Before the last change: nothing measured since"]
      : ["phase", several ? "Since the last change" : "All readings"];
    const phases = this.list.map((phase, i) => [`phase-${i}`, phase.words]);
    const wanted = this.waiting && !waiting && values(this.element).part === older ? "phase" : undefined;
    this.waiting = waiting;
    options(
      this.part,
      [
        first,
        ...(several ? [["job", "Whole job"], ...phases.filter(([value]) => value !== first[0])] : []),
        ["days", "Between two days"],
      ],
      wanted,
    );
  }

  known({ characteristics, characteristic = characteristics[0] }) {
    options(
      this.position,
      characteristics.map((each) => [each, each[0].toUpperCase() + each.slice(1)]),
      characteristic,
    );
    this.position.hidden = characteristics.length < 2;
  }

  days() {
    const wanted = values(this.element).part === "days";
    this.from.hidden = this.to.hidden = !wanted;
  }

  /** Bounds for readings: above, upTo, from, to, position. */
  bounds() {
    const chosen = values(this.element);
    const query = new URLSearchParams();
    const phase =
      this.list[Number(chosen.part?.split("-")[1])] ?? (chosen.part === "phase" ? this.list.at(-1) : null);
    if (phase?.above) query.set("above", phase.above);
    if (phase?.upTo) query.set("upTo", phase.upTo);
    if (chosen.part === "days") {
      if (chosen.from) query.set("from", new Date(`${chosen.from}T00:00:00`).toISOString());
      if (chosen.to) query.set("to", new Date(`${chosen.to}T23:59:59.999`).toISOString());
    }
    if (chosen.characteristic && chosen.characteristic !== "whole piece")
      query.set("position", chosen.characteristic);
    return query;
  }

  /** The query of statistics and charts; the newest phase is at hand without going over readings. */
  query() {
    const chosen = values(this.element);
    const query = chosen.part === "phase" ? new URLSearchParams() : this.bounds();
    query.delete("position");
    query.set("scope", chosen.part === "phase" ? "phase" : "job");
    if (chosen.characteristic) query.set("characteristic", chosen.characteristic);
    return query;
  }

  words() {
    const text = (part) => part.querySelector("select").selectedOptions[0]?.textContent ?? "";
    const where = this.position.hidden ? "" : `${text(this.position)}, `;
    const part = text(this.part);
    return `${where}${part.slice(0, 1).toLowerCase()}${part.slice(1)}`;
  }
}

function pick(name, label, choices) {
  return field({ name, label, kind: "choice", options: choices });
}

function day(name, label) {
  return field({ name, label, kind: "date" });
}
