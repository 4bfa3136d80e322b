// What a station asks about the last depth: whether one far from the target is a piece of the job, or whether
// a later rest takes the place of what was recorded.

import { busy, note } from "./dialogs.js";
import { h, state } from "./dom.js";
import { act } from "./identity.js";

export class StationQuestion {
  constructor(band) {
    Object.assign(this, { band, text: null });
  }

  /** After each change of the bench, as for its buttons. */
  show(bench) {
    this.bench = bench;
    const text = bench.summary.station.question;
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
      this.answer("Yes", "confirm"),
      this.answer("No", "decline"),
    );
  }

  answer(words, action) {
    const button = h("button", { class: "button", type: "button" }, words);
    const work = () => this.tell(action);
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
