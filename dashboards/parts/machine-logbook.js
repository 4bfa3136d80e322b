// The log book of a machine: what was done on it, when, by whom; corrected by new entries, never changed.

import { get } from "./api.js";
import { askChoice, askForm, note } from "./dialogs.js";
import { h, table } from "./dom.js";
import { act } from "./identity.js";
import { backInService, fields, setUp, why, work } from "./logbook-fields.js";
import { workshop } from "./place.js";
import { openRequests, requestLine } from "./requests.js";
import { may } from "./session.js";
import { dateTime } from "./times.js";
import words from "../api/words.js";

const CARE =
  "Work on the machine only with the rollers stopped and the drive locked out; its manual and local rules " +
  "come first.";
const PAGE = 50;

/** A section of the machine page; path is the machine's in the API, name what people call it. */
export class MachineLogbook {
  constructor(path, name) {
    this.path = path;
    this.name = name;
    this.entries = [];
    this.causes = [];
    this.corrected = false;
    this.asked = [];
    this.mayWrite = false;
    this.writing = h(
      "button",
      { class: "button", type: "button", hidden: true, on: { click: () => this.write() } },
      "Write an entry",
    );
    this.body = h("div", { class: "form" });
    this.element = h(
      "section",
      { class: "sheet form", "aria-label": "Log book" },
      h(
        "div",
        { class: "page-head" },
        h("h2", {}, "Log book"),
        this.writing,
      ),
      this.body,
    );
  }

  async show() {
    this.mayWrite = await may("MACHINE");
    this.writing.hidden = !this.mayWrite;
    const [page, causes, asked] = await Promise.all([
      get(`${this.path}/logbook?limit=${PAGE}`),
      get(`${this.path}/signal-answers`),
      openRequests(),
    ]);
    this.causes = causes;
    this.asked = asked.filter(({ kind, body }) => kind === "LOGBOOK_ENTRY" && body.machine === this.name);
    this.take(page, []);
  }

  async older() {
    this.take(await get(`${this.path}/logbook?limit=${PAGE}&before=${this.next}`), this.entries);
  }

  take({ items, next }, before) {
    this.entries = [...before, ...items];
    this.next = next;
    this.draw();
  }

  /** Entries that hold, by the time of the work; with those that were corrected where asked for. */
  draw() {
    const shown = this.entries.filter((each) => this.corrected || holds(each));
    const hidden = this.entries.length - this.entries.filter(holds).length;
    shown.sort((one, other) => Date.parse(other.doneAt) - Date.parse(one.doneAt) || other.id - one.id);
    this.body.replaceChildren(
      ...this.asked.map(requestLine),
      shown.length === 0
        ? h("p", { class: "small" }, "Nothing written yet. What is changed, renewed, lubricated or set belongs here.")
        : table("Log book, the newest work first", this.columns(), shown, "lines"),
      h(
        "div",
        { class: "row" },
        hidden === 0
          ? null
          : this.button(this.corrected ? "Hide what was corrected" : "Show what was corrected", this.turn),
        this.next === null ? null : this.button("Older entries", this.older),
      ),
      ...(this.causes.length === 0 ? [] : [h("h3", {}, "Causes found for signals"), causeTable(this.causes)]),
    );
  }

  button(caption, click) {
    return h("button", { class: "button plain", type: "button", on: { click: () => click.call(this) } }, caption);
  }

  turn() {
    this.corrected = !this.corrected;
    this.draw();
  }

  columns() {
    return [
      { head: "When", cell: (each) => dateTime(each.doneAt) },
      { head: "Work", kind: "lead new", cell: (each) => told(each) },
      { head: "Before", kind: "new named", cell: (each) => each.before },
      { head: "After", kind: "named", cell: (each) => each.after },
      { head: "Remark", kind: "new", cell: (each) => remark(each) },
      { head: "By", kind: "new named", cell: (each) => by(each) },
      { head: "", kind: "act", cell: (each) => (this.mayWrite && holds(each) ? this.correct(each) : "") },
    ];
  }

  correct(entry) {
    const ask = () =>
      askChoice({
        title: `${told(entry)}: what is wrong?`,
        intro: "The entry stays readable; a new one takes its place.",
        choices: [
          ["change", "It says something wrong", "Write it again as it was"],
          ["withdraw", "No such work was done", "Take the entry back"],
        ],
        act: (chosen) => {
          setTimeout(() => (chosen === "change" ? this.change(entry) : this.withdraw(entry)));
          return true;
        },
      });
    return h("button", { class: "button plain changes", type: "button", on: { click: ask } }, "Correct");
  }

  async write() {
    const { alerts } = await get(`api/alerts?machine=${encodeURIComponent(this.name)}`);
    const repair = alerts.some(({ state }) => state === "OUT_OF_SERVICE");
    return this.ask({
      title: "Write into the log book",
      fields: [...fields({}), ...(workshop === null ? [setUp(), repair ? backInService() : null] : [])].filter(Boolean),
      confirm: "Write it down",
      send: (typed) =>
        act("POST", `${this.path}/logbook`, {
          ...work(typed),
          setUp: typed.setUp === "yes",
          backInService: typed.backInService === "yes",
        }),
    });
  }

  change(entry) {
    return this.ask({
      title: "Correct the entry",
      fields: [...fields(entry), why()],
      confirm: "Correct it",
      send: (typed) =>
        act("POST", `${this.path}/logbook/${entry.id}/corrections`, { why: typed.why, entry: work(typed, entry) }),
    });
  }

  withdraw(entry) {
    return this.ask({
      title: "Take the entry back",
      intro: told(entry),
      fields: [why()],
      confirm: "Take it back",
      send: (typed) =>
        act("POST", `${this.path}/logbook/${entry.id}/corrections`, { why: typed.why, withdraws: true }),
    });
  }

  /** A refusal because somebody else was faster shows what the entry says now; what was typed stays. */
  ask({ title, intro, fields: asked, confirm, send }) {
    return askForm({
      title,
      intro,
      care: CARE,
      fields: asked,
      confirm,
      act: async (typed) => {
        try {
          if ((await send(typed)) === null) return null;
        } catch (problem) {
          throw problem.present ? meanwhile(problem) : problem;
        }
        note(workshop === null ? "It is in the log book." : `On its way to ${workshop}.`);
        await this.show();
        return true;
      },
    });
  }
}

/** What somebody found behind a signal of a job, said at that job's page. */
const causeTable = (causes) =>
  table(
    "Causes found for signals, the newest first",
    [
      { head: "When", cell: (each) => dateTime(each.at) },
      { head: "Cause", kind: "lead new", cell: (each) => each.cause },
      { head: "What was done", kind: "new named", cell: (each) => each.action },
      {
        head: "Job",
        kind: "new named",
        cell: (each) => h("a", { href: `job.html?job=${each.jobId}#signals` }, each.job || `Job ${each.jobId}`),
      },
      { head: "By", kind: "named", cell: (each) => each.by },
    ],
    causes,
    "lines",
  );

const holds = ({ withdraws, correctedBy }) => !withdraws && correctedBy === null;

function meanwhile({ present }) {
  const now = present.withdraws ? "it was taken back" : `it now says: ${said(present)}`;
  return { faults: [], message: `${present.by} corrected this entry meanwhile; ${now}. Correct that entry instead.` };
}

const said = (entry) => [told(entry), entry.before, entry.after, entry.note].filter(Boolean).join(", ");

const told = ({ kind, roller }) => [words.work[kind], roller].filter(Boolean).join(", ");

function remark({ note: more, why: reason, withdraws, correctedBy }) {
  const state = correctedBy === null ? "" : "Replaced by a newer entry.";
  const about = reason ? `${withdraws ? "Taken back" : "Corrected"}: ${reason}` : "";
  return [more, about, state].filter(Boolean).join(" · ");
}

const by = ({ doneBy, by: writer }) => (doneBy === writer ? doneBy : `${doneBy}, written by ${writer}`);
