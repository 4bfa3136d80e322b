// Whether to correct the rollers, in words, above the buttons of a station: what to set, why, and what is asked.

import { note } from "./dialogs.js";
import { h, state } from "./dom.js";
import { insteadOfJob } from "./findings.js";
import { correct, number } from "./roller-dialogs.js";

const WITH_BUTTON = ["CORRECT", "AMOUNT_UNKNOWN"];

/** slot: beside what to do next, to record it; band: above the buttons, what is asked; sheet: all in full. */
export class Rollers {
  constructor({ slot, band, sheet }) {
    Object.assign(this, { slot, band, sheet });
    this.answered = new Set();
  }

  /** After each change of the bench, as for its buttons. */
  show(bench) {
    this.bench = bench;
    const said = insteadOfJob(bench.summary) ? null : bench.summary.correction;
    const asked = said && said.action !== "NONE" ? this.questions(said) : [];
    const advised = said && WITH_BUTTON.includes(said.action) ? this.advice(said) : [];
    this.inFull(said);
    this.band.hidden = asked.length === 0;
    const text = [...advised, ...asked].map((each) => each.textContent).join("\n");
    if (text === this.text) return;
    this.text = text;
    this.slot.replaceChildren(...advised);
    this.band.replaceChildren(...asked);
  }

  /** What to set the scale to, where that is known, and the way to record that it was done. */
  advice({ amount, prospect, scale }) {
    const to = prospect?.setTo ?? null;
    const own = scale.described ? `\u00a0${scale.unit}` : "";
    const set = to === null ? "" : `Set the ${scale.name} to ${number(to, scale)}${own}.`;
    return [
      ...(set ? [h("p", { class: "set" }, set)] : []),
      tap("Record correction", () => correct(this.bench, { amount: amount ?? null })),
    ];
  }

  inFull(said) {
    const lines = said
      ? [said.text, ...reasons(said)].filter(Boolean)
      : [this.bench.summary.job ? "The job rests, so there is no advice." : "No job, no advice."];
    const text = lines.join("\n");
    if (text === this.full) return;
    this.full = text;
    this.sheet.replaceChildren(...lines.map((each) => h("p", {}, each)));
  }

  questions(said) {
    return said.notices
      .filter(({ text }) => !this.answered.has(text))
      .map((each) =>
        h(
          "div",
          { class: "advice question", data: { kind: each.kind } },
          h("p", {}, state("open", "Question"), ` ${each.text}`),
          ...this.answers(each),
        ),
      );
  }

  answers({ kind, text, amount }) {
    const done = () => {
      this.answered.add(text);
      this.show(this.bench);
    };
    if (kind !== "DID_YOU_CORRECT") return [tap("Seen", done)];
    const yes = async () => {
      if (await correct(this.bench, { amount, afterReadingId: beforeLastPiece(this.bench) })) done();
    };
    return [tap("Yes", yes), tap("No", done)];
  }
}

/** What there is to say beside the advice itself. */
function reasons({ action, start, rest, readiness, common, scale }) {
  if (action === "NONE") return [];
  return [
    start ? `Begin at ${number(start.setting, scale)}: ${start.text}.` : "",
    rest?.text,
    readiness,
    common,
  ];
}

function tap(words, work) {
  const trouble = (problem) => note(problem.message, "bad");
  return h(
    "button",
    { class: "button", type: "button", on: { click: () => Promise.resolve(work()).catch(trouble) } },
    words,
  );
}

/** The last reading before the newest piece: a forgotten correction was made after it. */
function beforeLastPiece({ summary, points }) {
  const { piece } = summary.lastReading;
  return points.filter((each) => each.piece < piece).at(-1)?.readingId ?? 0;
}
