// What a station asks about the last depth: whether one far from the target is a piece of the job, or whether
// a later rest takes the place of what was recorded.

import { busy, note } from "./dialogs.js";
import { h, state } from "./dom.js";
import { act } from "./identity.js";

export class StationQuestion {
  constructor(band) {
    Object.assign(this, { band, text: null, declined: null });
  }

  /** After each change of the bench, as for its buttons. */
  show(bench) {
    this.bench = bench;
    const { question } = bench.summary.station;
    if (question === null) this.declined = null;
    const text = question === this.declined ? null : question;
    this.band.hidden = text === null;
    if (text === this.text) return;
    this.text = text;
    this.band.replaceChildren(...(text === null ? [] : [this.asked(text)]));
  }

  asked(text) {
    return h(
      "div",
      { class: "advice question" },
      h("p", {}, state("open", "Question"), ` ${text}`),
      this.answer("Yes", () => this.yes()),
      this.answer("No", () => this.no(text)),
    );
  }

  answer(words, work) {
    const button = h("button", { class: "button", type: "button" }, words);
    button.addEventListener("click", () => busy(button, work, (problem) => note(problem.message, "bad")));
    return button;
  }

  async yes() {
    const { path, load } = this.bench;
    await act("POST", `${path}/confirm`, {});
    await load();
  }

  /** Nothing was recorded, so nothing is to be done; the question is not shown again. */
  async no(text) {
    this.declined = text;
    this.show(this.bench);
  }
}
