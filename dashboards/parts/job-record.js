// What happened: signals, control limits, events, excluded readings.

import { act } from "./identity.js";
import { get } from "./api.js";
import { askChoice, askForm, note } from "./dialogs.js";
import { h, table } from "./dom.js";
import { field } from "./forms.js";
import { exclude, placeOf, toldOf } from "./job-point.js";
import { eventFields, eventTable } from "./job-events.js";
import { counted, limitTable, signalTable } from "./job-signals.js";
import { askCause, of, spellTable } from "./job-spells.js";
import { momentField, momentsOf, withMoment } from "./job-moments.js";
import { phasesOf } from "./job-words.js";
import { dateTime } from "./times.js";
import words from "../api/words.js";

const SIGNALS = 8;

export class Records {
  constructor(changed) {
    this.changed = changed;
    const place = () => h("div");
    this.shown = SIGNALS;
    this.more = h(
      "button",
      {
        class: "button",
        type: "button",
        hidden: true,
        on: {
          click: () => {
            this.shown += SIGNALS;
            this.list();
          },
        },
      },
      "Show more",
    );
    Object.assign(this, { spells: place(), signals: place(), limits: place(), events: place(), out: place() });
    this.elements = [
      h(
        "section",
        { class: "sheet", id: "events", "aria-label": "Events" },
        h(
          "div",
          { class: "sheet-head" },
          h("h2", {}, "Events and lots"),
          h(
            "button",
            { class: "button changes", type: "button", on: { click: () => this.happen() } },
            "Record an event",
          ),
        ),
        this.events,
        fold("Excluded readings", this.out),
      ),
      h(
        "section",
        { class: "sheet", id: "signals", "aria-label": "Signals" },
        h(
          "div",
          { class: "sheet-head" },
          h("h2", {}, "Signals and control limits"),
          h("div", { class: "row" }, this.freeze()),
        ),
        this.spells,
        fold("Points that broke a rule", this.signals, h("p", { class: "no-print" }, this.more)),
        fold("Control limits of each chart", this.limits),
      ),
    ];
  }

  async show(job, part, events) {
    this.job = job;
    const [facts, excluded, exclusions, answers] = await Promise.all([
      get(`api/jobs/${job.id}/chart-facts?${part}`),
      excludedOf(job),
      get(`api/jobs/${job.id}/exclusions`),
      get(`api/jobs/${job.id}/signal-answers`),
    ]);
    this.facts = facts;
    fill(
      this.spells,
      facts.spells,
      (rows) => spellTable(rows, of(facts.characteristic, answers), (spell) => this.answer(spell)),
      "No stretch of these readings is out of control.",
    );
    this.list();
    fill(
      this.limits,
      facts.limits,
      (rows) => limitTable(rows, phasesOf(events)),
      "Control limits come with the first points of a chart.",
    );
    this.limits.append(h("p", { class: "small" }, facts.settings));
    fill(
      this.events,
      [...events].reverse(),
      (rows) => eventTable(rows, this.job, this.changed),
      "Nothing recorded. The charts start anew after a correction or a new lot.",
    );
    fill(
      this.out,
      newest(exclusions, excluded),
      (rows) => this.outTable(rows),
      "None. Choose a point on a chart to exclude a reading, with the reason.",
    );
  }

  /** The newest first; more of them on demand. */
  list() {
    const { signals } = this.facts;
    fill(
      this.signals,
      signals,
      (rows) => signalTable(rows.slice(0, this.shown)),
      "No rule was broken by these readings.",
    );
    if (signals.length > 0) this.signals.append(counted(this.facts, this.shown));
    this.more.hidden = signals.length <= this.shown;
  }

  async answer(spell) {
    if (await askCause(this.job.id, this.facts.characteristic, spell)) await this.changed();
  }

  freeze() {
    const button = (caption, kind) =>
      h("button", { class: "button changes", type: "button", on: { click: () => this.limitsTo(kind) } }, caption);
    return [button("Fix limits", "LIMITS_FROZEN"), button("Recalculate limits", "LIMITS_RELEASED")];
  }

  limitsTo(kind) {
    const frozen = kind === "LIMITS_FROZEN";
    return this.ask(
      {
        title: frozen ? "Fix the control limits?" : "Recalculate the control limits?",
        intro: frozen
          ? "From here on, new points are judged against today’s limits."
          : "From here on, the limits are calculated from the points again.",
        confirm: frozen ? "Fix limits" : "Recalculate limits",
        fields: [field({ name: "note", label: "Why (kept in the record)" })],
      },
      kind,
    );
  }

  async happen() {
    const kind = await askChoice({
      title: "What happened?",
      act: (value) => value,
      choices: [
        ["CORRECTION", "Correction", "the rollers were set; the charts start anew"],
        ["MATERIAL_LOT", "New material lot", "the charts start anew"],
        ["SET_UP", "New machine set-up", "rollers changed, machine cleaned; the charts start anew"],
        ["NOTE", "Note", "anything worth knowing"],
      ],
    });
    if (!kind) return;
    const moments = kind === "NOTE" ? [] : await momentsOf(this.job);
    const fields = eventFields(kind, momentField(moments));
    await this.ask({ title: words.events[kind], confirm: "Record", fields }, kind, moments);
  }

  async ask(form, kind, moments = []) {
    const done = await askForm({
      ...form,
      act: (values) => act("POST", `api/jobs/${this.job.id}/events`, { kind, ...withMoment(values, moments) }),
    });
    if (!done) return;
    note("Recorded.");
    await this.changed();
  }

  outTable(rows) {
    return table(
      "Excluded readings",
      [
        { head: "Reading", kind: "lead", cell: (row) => toldOf(row.reading) },
        { head: "Reason", kind: "new", cell: (row) => row.reason },
        { head: "By, when", kind: "new", cell: (row) => h("span", {}, `${row.by}, `, dateTime(row.at)) },
        {
          head: "",
          kind: "act",
          cell: (row) => (row.moved ? "" : this.includeButton(row.reading)),
        },
      ],
      rows,
      "lines",
    );
  }

  includeButton(reading) {
    return h(
      "button",
      {
        class: "button changes",
        type: "button",
        "aria-label": `Include ${placeOf(reading)}`,
        on: { click: () => exclude(reading, false, this.changed) },
      },
      "Include",
    );
  }
}

function fill(place, rows, made, otherwise) {
  place.replaceChildren(rows.length > 0 ? made(rows) : h("p", { class: "small" }, otherwise));
}

/** The readings that are excluded now. */
async function excludedOf(job) {
  const readings = [];
  let after = "";
  do {
    const page = await get(`api/jobs/${job.id}/readings?excluded=true&limit=1000${after}`);
    readings.push(...page.items);
    after = page.next === null ? null : `&after=${page.next}`;
  } while (after !== null);
  return readings;
}

/** Each with its reading, the newest first. */
function newest(exclusions, readings) {
  const last = new Map(exclusions.map((each) => [each.readingId, each]));
  const of = new Map(readings.map((each) => [each.id, each]));
  return [...last.values()]
    .filter((each) => each.excluded && of.has(each.readingId))
    .map((each) => ({ ...each, reading: of.get(each.readingId) }))
    .reverse();
}

function fold(words, ...within) {
  return h("details", { class: "fold" }, h("summary", {}, words), ...within);
}
