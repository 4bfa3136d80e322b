// The readings that are looked at, a page at a time.

import { get, turns } from "./api.js";
import { h, state, table } from "./dom.js";
import { field, values } from "./forms.js";
import { movePieces } from "./job-move.js";
import { exclude, movedFrom, placeOf, reasonOf } from "./job-point.js";
import { dateTime } from "./times.js";
import { length, radius, unit } from "./units.js";
import words from "../api/words.js";

const atOnce = () => (matchMedia("(max-width: 43.75em)").matches ? 10 : 15);

export class Readings {
  constructor(changed) {
    Object.assign(this, { changed, turn: turns() });
    this.filter = h(
      "form",
      { class: "filter no-print", "aria-label": "Filter of the readings" },
      field({
        name: "decision",
        label: "Decision",
        kind: "choice",
        options: [
          ["", "All"],
          ["conforms", words.decisions.CONFORMS],
          ["does-not-conform", words.decisions.DOES_NOT_CONFORM],
          ["undecided", words.decisions.UNDECIDED],
        ],
      }),
      field({
        name: "excluded",
        label: "Excluded readings",
        kind: "choice",
        options: [
          ["", "Shown"],
          ["false", "Not shown"],
          ["true", "Only these"],
        ],
      }),
    );
    this.filter.addEventListener("change", () => this.list());
    this.place = h("div");
    this.more = h(
      "button",
      { class: "button", type: "button", hidden: true, on: { click: () => this.list(this.next) } },
      "Show more",
    );
    this.elsewhere = h(
      "button",
      { class: "button changes", type: "button", on: { click: () => movePieces(this.job, this.changed) } },
      "Pieces belong to another job",
    );
    this.element = h(
      "section",
      { class: "sheet form", id: "readings", "aria-label": "Readings" },
      h("div", { class: "sheet-head" }, h("h2", {}, "Readings"), this.elsewhere),
      this.filter,
      this.place,
      h("p", {}, this.more),
    );
  }

  async show(job, bounds) {
    Object.assign(this, { job, bounds });
    this.elsewhere.hidden = job.state === "CLOSED" || job.readings === 0;
    await this.list();
  }

  async list(after = null) {
    const current = this.turn();
    const query = new URLSearchParams(this.bounds);
    for (const [name, value] of Object.entries(values(this.filter))) if (value) query.set(name, value);
    query.set("limit", atOnce());
    if (after !== null) query.set("after", after);
    const [page, exclusions] = await Promise.all([
      get(`api/jobs/${this.job.id}/readings?${query}`),
      get(`api/jobs/${this.job.id}/exclusions`),
    ]);
    if (!current()) return; // the filter was changed meanwhile
    this.items = after === null ? page.items : [...this.items, ...page.items];
    this.next = page.next;
    this.more.hidden = page.next === null;
    this.place.replaceChildren(
      this.items.length > 0 ? this.rows(exclusions) : h("p", { class: "small" }, "No reading matches."),
    );
  }

  rows(exclusions) {
    const all = table(
      "Readings, the newest first",
      [
        { head: "Time", cell: (row) => dateTime(row.at) },
        { head: "Piece", number: true, kind: "named", cell: (row) => String(row.piece) },
        ...(several(this.items, "position") ? [{ head: "Position", cell: (row) => row.position }] : []),
        ...(several(this.items, "pass")
          ? [{ head: "Pass", number: true, kind: "named", cell: (row) => String(row.pass) }]
          : []),
        { head: `Radius, ${unit()}`, number: true, kind: "new lead", cell: radiusOf },
        {
          head: `Depth, ${unit()}`,
          number: true,
          short: "Depth",
          kind: "named",
          cell: (row) => length(row.depthMm, 3),
        },
        {
          head: "Decision",
          cell: (row) =>
            h("span", { class: "decision", data: { decision: row.decision } }, words.decisions[row.decision]),
        },
        ...this.lot(),
        { head: "Measured by", short: "by", kind: "named wide-only", cell: (row) => row.measuredBy ?? "" },
        { head: "Remarks", cell: (row) => remarks(row, reasonOf(row, exclusions)) },
        {
          head: "",
          kind: "act",
          cell: (row) => (movedFrom(row, exclusions) ? "" : this.button(row, reasonOf(row, exclusions))),
        },
      ],
      this.items,
      "lines",
    );
    [...all.querySelectorAll("tbody tr")].forEach((row, i) => {
      row.dataset.reading = this.items[i].id;
    });
    return all;
  }

  /** Where the job has several; one alone is told in its head. */
  lot() {
    const { materialLot, currentLot } = this.job;
    const several = materialLot !== currentLot || this.items.some((each) => (each.materialLot ?? "") !== currentLot);
    return several ? [{ head: "Lot", kind: "named wide-only", cell: (row) => row.materialLot ?? "" }] : [];
  }

  button(reading, reason) {
    return h(
      "button",
      {
        class: "button changes",
        type: "button",
        "aria-label": `${reason ? "Include" : "Exclude"} ${placeOf(reading)}`,
        on: { click: () => exclude(reading, !reason, this.changed) },
      },
      reason ? "Include" : "Exclude",
    );
  }
}

const several = (rows, key) =>
  new Set(rows.map((row) => row[key])).size > 1 || rows.some((row) => row[key] > 1);

function radiusOf(reading) {
  const { value, plusMinus } = radius(reading);
  return h("span", {}, `${value} ${plusMinus}`, h("span", { class: "narrow-only" }, ` ${unit()}`));
}

function remarks(reading, reason) {
  const parts = reading.marks.map((mark) => words.marks[mark]).join(", ");
  return h("span", {}, parts, reason ? state("open", `excluded: ${reason}`) : null);
}
