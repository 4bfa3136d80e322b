// One alert: what, how urgent, where, since when, what to do and by when, who has it; and what can be done to it.

import { get, serviceNow } from "./api.js";
import { move } from "./alert-moves.js";
import { facts, h, state, table } from "./dom.js";
import { kindOf } from "./findings.js";
import { workshop } from "./place.js";
import { requestLine } from "./requests.js";
import { ago, dateTime } from "./times.js";

const PLACES = {
  MACHINE: (name) => `machine.html?machine=${encodeURIComponent(name)}`,
  ...(workshop === null && { STATION: (name) => `station.html?station=${encodeURIComponent(name)}` }),
  EDGE: (name) => `edges/${encodeURIComponent(name)}/`,
};

/** At a plant only what can be passed on to the workshop computer. */
const PASSED_ON = ["ACKNOWLEDGE", "ASSIGN", "SHELVE"];
const moves = (alert) => alert.moves.filter(({ move: which }) => workshop === null || PASSED_ON.includes(which));

/** Where an alert is, as a link; the service has no page. */
export function place({ about, subject, where }) {
  return about in PLACES ? h("a", { href: PLACES[about](subject) }, where) : where;
}

/** done() is called after each change. */
export class AlertCard {
  constructor(done) {
    this.done = done;
    this.happened = h("div", { class: "form" });
    this.more = h(
      "details",
      { on: { toggle: () => this.more.open && this.tell() } },
      h("summary", {}, "Why, and what happened so far"),
      this.happened,
    );
    this.element = h("article", { class: "sheet alert" });
  }

  /** asked: what was asked of the workshop computer about it, at a plant. */
  show(alert, asked = []) {
    this.alert = alert;
    this.element.id = `alert-${alert.id}`;
    this.element.setAttribute("aria-label", `${alert.statement.word}, ${alert.where}`);
    this.element.dataset.urgency = kindOf(alert.statement.tone);
    const focused = this.element.contains(document.activeElement) && document.activeElement.textContent;
    this.element.replaceChildren(
      h(
        "div",
        { class: "alert-head" },
        state(kindOf(alert.statement.tone), alert.urgency),
        h("h3", {}, alert.statement.word),
        h("p", {}, place(alert)),
      ),
      h(
        "div",
        { class: "alert-said" },
        h("p", {}, alert.statement.reason),
        h("p", {}, h("strong", {}, "To do: "), alert.statement.advice),
        untold(alert),
      ),
      facts(this.facts()),
      ...asked.map(requestLine),
      h("div", { class: "row" }, moves(alert).map((each, i) => this.button(each, i === 0))),
      this.more,
    );
    if (this.more.open) this.tell();
    if (focused) [...this.element.querySelectorAll("button")].find((each) => each.textContent === focused)?.focus();
    return this.element;
  }

  facts() {
    const { since, actBy, overdue, stateWords, shelvedUntil, note, assignedTo, told } = this.alert;
    const put = shelvedUntil === null ? [] : [", until ", dateTime(shelvedUntil)];
    return [
      ["State", h("span", {}, stateWords, ...put)],
      ["Raised", h("span", {}, dateTime(since), ", ", ago(since, serviceNow()))],
      ["Act by", h("span", {}, dateTime(actBy), overdue ? h("strong", {}, ": overdue") : "")],
      ["Said last", note],
      ["Whose it is", assignedTo],
      ["Who is told", told.join(", then ")],
    ];
  }

  button({ move: which, words }, first) {
    const main = first && (which === "ACKNOWLEDGE" || which === "PUT_BACK_IN_SERVICE");
    const click = () => move(which, words, this.alert, this.done);
    return h(
      "button",
      {
        class: main ? "button main" : "button",
        type: "button",
        "aria-label": `${words}: ${this.alert.statement.word}, ${this.alert.where}`,
        on: { click },
      },
      words,
    );
  }

  async tell() {
    const events = await get(`api/alerts/${this.alert.id}/events`);
    this.happened.replaceChildren(
      facts([
        ["Most often because", this.alert.cause],
        ["If nobody acts", this.alert.consequence],
      ]),
      table(
        "What happened to this alert",
        [
          { head: "When", cell: (each) => dateTime(each.at) },
          { head: "What", kind: "lead new", cell: (each) => each.words },
          { head: "By", kind: "named", cell: (each) => each.by },
          { head: "Said", kind: "new named", cell: said },
        ],
        events,
        "lines",
      ),
    );
  }
}

/** Whom it could not be told, since when, whether that is tried again, and why. */
function untold(alert) {
  if (alert.untold.length === 0) return null;
  const line = ({ to, since, nextTry, problem }) =>
    h(
      "li",
      {},
      state("bad", nextTry === null ? "Not told" : "Not told yet"),
      ` ${to}, tried since `,
      dateTime(since),
      ...(nextTry === null ? [", no longer tried"] : [", next try ", dateTime(nextTry)]),
      `: ${problem}.`,
    );
  return h("ul", { class: "needs" }, alert.untold.map(line));
}

function said({ note, what, assignedTo, shelvedUntil }) {
  const to = what === "ASSIGNED" ? `To ${assignedTo || "nobody"}` : "";
  const until = what === "SHELVED" ? h("span", {}, "Until ", dateTime(shelvedUntil)) : null;
  const all = [until, to, note].filter(Boolean);
  return all.length === 0
    ? null
    : h("span", {}, ...all.flatMap((each, i) => (i === 0 ? [each] : [" · ", each])));
}
