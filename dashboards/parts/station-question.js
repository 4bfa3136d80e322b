// What a station asks about the last depth: whether one far from the target is a piece of the job, or whether
// a later rest takes the place of what was recorded. Each answer has its button.

import { busy, note } from "./dialogs.js";
import { h, state } from "./dom.js";
import { act } from "./identity.js";
import { anotherJob } from "./choose-job.js";

export class StationQuestion {
  constructor(band) {
    Object.assign(this, { band, shown: null });
  }

  /** After each change of the bench, as for its buttons. */
  show(bench) {
    this.bench = bench;
    const { question, questionKind, piece, position } = bench.summary.station;
    this.band.hidden = question === null;
    const shown = question && JSON.stringify([question, questionKind, piece, position]);
    if (shown === this.shown) return;
    this.shown = shown;
    this.band.replaceChildren(...(question === null ? [] : [this.asked(bench.summary.station)]));
  }

  asked(station) {
    const answers = station.questionKind === "LATER_REST" ? this.ofLaterRest(station) : this.ofFarDepth();
    return h(
      "div",
      { class: "advice question" },
      h("p", {}, state("open", "Question"), ` ${station.question}`),
      answers,
    );
  }

  ofFarDepth() {
    return [
      this.answer("Yes", () => this.tell("confirm")),
      this.answer("A piece of another job…", () => anotherJob(this.bench)),
      this.answer("No piece", () => this.tell("decline")),
    ];
  }

  ofLaterRest({ piece, position }) {
    return [
      this.answer("The same place: take this instead", () => this.tell("confirm")),
      this.answer(`The next one: piece ${piece}, ${position}`, () => this.tell("another")),
      this.answer("Neither", () => this.tell("decline")),
    ];
  }

  answer(words, work) {
    const button = h("button", { class: "button", type: "button" }, words);
    button.addEventListener("click", () => busy(button, work, (problem) => note(problem.message, "bad")));
    return button;
  }

  /** All screens of the station lose the question with it. */
  async tell(action) {
    const { path, load } = this.bench;
    await act("POST", `${path}/${action}`, {});
    await load();
  }
}
