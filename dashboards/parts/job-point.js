// The readings of a chosen point: their depth, excluding one with its reason, including it again.

import { act } from "./identity.js";
import { get } from "./api.js";
import { askForm, note } from "./dialogs.js";
import { h } from "./dom.js";
import { field } from "./forms.js";
import { askWhyOut } from "./out-reasons.js";
import { workshop } from "./place.js";
import { readingTrace } from "./reading-trace.js";
import { dateTime } from "./times.js";
import { length, radius, unit, withUnit } from "./units.js";
import words from "../api/words.js";

export class Point {
  constructor(changed) {
    Object.assign(this, { changed, job: null, point: null, shown: "", traces: new Map() });
    this.element = h("div", { class: "side", "aria-live": "polite" }, hint());
  }

  async show(job, point) {
    Object.assign(this, { job, point });
    if (!point) return;
    const query = new URLSearchParams({
      above: point.firstReadingId - 1,
      upTo: point.lastReadingId,
      oldestFirst: true,
      limit: 25,
    });
    if (job.plan.positions.includes(point.position)) query.set("position", point.position);
    const [page, exclusions] = await Promise.all([
      get(`api/jobs/${job.id}/readings?${query}`),
      get(`api/jobs/${job.id}/exclusions`),
    ]);
    if (point !== this.point) return; // another one was chosen meanwhile
    const now = JSON.stringify([point, page.items, exclusions]);
    if (now === this.shown) return; // so that focus and depths stay where they are
    this.shown = now;
    this.element.replaceChildren(
      h(
        "h3",
        {},
        `Point ${point.number}: piece ${point.piece}${point.position ? `, ${point.position}` : ""}`,
      ),
      ...point.broken.map((rule) => h("p", { class: "state", data: { state: "bad" } }, rule)),
      ...page.items.map((reading) => this.item(reading, reasonOf(reading, exclusions), movedFrom(reading, exclusions))),
    );
  }

  /** After a change: the same point anew. */
  async again() {
    if (this.point) await this.show(this.job, this.point);
  }

  item(reading, reason, moved) {
    const { value, plusMinus } = radius(reading);
    const trace = this.traces.get(reading.id) ?? h("div");
    this.traces.set(reading.id, trace);
    return h(
      "div",
      { class: "side-item", data: { reading: reading.id } },
      h(
        "p",
        {},
        h("strong", {}, withUnit(`${value} ${plusMinus}`.trim())),
        ` ${reading.position}, `,
        dateTime(reading.at),
      ),
      h(
        "p",
        {},
        h(
          "span",
          { class: "decision", data: { decision: reading.decision } },
          words.decisions[reading.decision],
        ),
        h("span", { class: "small" }, ` depth ${length(reading.depthMm, 3)}\u00a0${unit()}`),
      ),
      ...(reading.marks.length
        ? [
            h(
              "p",
              { class: "small" },
              `Remarks: ${reading.marks.map((mark) => words.marks[mark]).join(", ")}.`,
            ),
          ]
        : []),
      ...(reason ? [h("p", { class: "state", data: { state: "open" } }, `Excluded: ${reason}`)] : []),
      trace,
      h(
        "div",
        { class: "row" },
        trace.firstChild ? null : traceButton(reading, trace),
        moved ? null : this.excludeButton(reading, reason),
      ),
    );
  }

  excludeButton(reading, reason) {
    return h(
      "button",
      { class: "button changes", type: "button", on: { click: () => exclude(reading, !reason, this.changed) } },
      reason ? "Include" : "Exclude",
    );
  }
}

function hint() {
  return h(
    "p",
    { class: "small" },
    "Choose a point by touch, click, or with the arrow keys and Enter, to see its readings" +
      (workshop === null ? ", the depth around them, and to exclude one." : "."),
  );
}

export function reasonOf(reading, exclusions) {
  const newest = newestOf(reading, exclusions);
  return newest?.excluded ? newest.reason : "";
}

/** Whether it counts in another job: here it is not included again. */
export const movedFrom = (reading, exclusions) => newestOf(reading, exclusions)?.moved ?? false;

const newestOf = (reading, exclusions) => exclusions.filter((each) => each.readingId === reading.id).at(-1);

function traceButton(reading, place) {
  const button = h("button", { class: "button", type: "button" }, "Show depth");
  button.addEventListener("click", async () => {
    try {
      place.replaceChildren(await readingTrace(reading));
      button.remove();
    } catch (problem) {
      note(problem.message, "bad");
    }
  });
  return button;
}

/** Where it was taken, as people name it. */
export function placeOf(reading) {
  const pass = reading.pass > 1 ? `, pass ${reading.pass}` : "";
  return `piece ${reading.piece}${pass}, ${reading.position}`;
}

/** Which one, where its row is not seen. */
export function toldOf(reading) {
  const { value, plusMinus } = radius(reading);
  const place = placeOf(reading);
  return `${place[0].toUpperCase()}${place.slice(1)}: ${withUnit(`${value} ${plusMinus}`.trim())}`;
}

/** Excludes a reading, or includes it again; the reason is asked for. */
export async function exclude(reading, excluded, changed) {
  const send = (reason) => act("POST", `api/readings/${reading.id}/exclusion`, { excluded, reason });
  const done = await (excluded ? askOut(reading, send) : askIn(reading, send));
  if (!done) return;
  note(excluded ? "Reading excluded. It can be included again." : "Reading included again.");
  await changed();
}

const askOut = (reading, send) =>
  askWhyOut({
    title: "Exclude this reading?",
    intro:
      `${toldOf(reading)}. It stays in the record and on the chart, but counts in no figure. Only a known cause ` +
      "is a reason.",
    confirm: "Exclude",
    act: send,
  });

const askIn = (reading, send) =>
  askForm({
    title: "Include this reading again?",
    intro: `${toldOf(reading)}. It counts in the figures again.`,
    fields: [field({ name: "reason", label: "Reason (kept in the record)", required: true })],
    confirm: "Include",
    act: ({ reason }) => send(reason),
  });
