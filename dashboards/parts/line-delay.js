// Of a length that comes on a link of its own: that link, and how much later depths come than their lengths.

import { get } from "./api.js";
import { busy, note } from "./dialogs.js";
import { h, say } from "./dom.js";
import { act } from "./identity.js";

export class LengthOfLine {
  constructor(station) {
    this.path = `api/stations/${encodeURIComponent(station)}`;
    this.link = h("p", { role: "status" });
    this.delay = h("p", { role: "status" });
    this.find = this.button("Find the delay", () => this.finds());
    this.keep = this.button("Keep this delay", () => this.keeps());
    this.element = h(
      "div",
      { class: "form", hidden: true },
      h("h3", {}, "Length"),
      this.link,
      this.delay,
      h("div", { class: "row" }, this.find, this.keep),
    );
  }

  button(caption, work) {
    const element = h("button", { class: "button", type: "button" }, caption);
    element.addEventListener("click", () =>
      busy(element, work, (problem) => note(problem.message, "bad")),
    );
    return element;
  }

  /** Nothing where the length has no link of its own. */
  put(length) {
    this.element.hidden = length === null;
    if (length === null) return;
    this.length = length;
    say(this.link, length.linkWords);
    say(this.delay, length.delayWords);
    this.find.disabled = length.findingDelay;
    this.keep.hidden = length.delayOrigin !== "FOUND";
  }

  async finds() {
    const station = await act("POST", `${this.path}/find-delay`);
    if (station !== null) this.put(station.length);
  }

  /** In the settings, so that it holds after a new start too; the station starts anew. */
  async keeps() {
    const { station } = await get(`${this.path}/settings`);
    const delayMs = Math.round(this.length.delayMs * 10) / 10;
    const kept = await act("PUT", `${this.path}/settings`, {
      station: { ...station, feed: { ...station.feed, delayMs } },
    });
    if (kept === null) return;
    note("Kept in the station's settings.");
    this.put(kept.length);
  }
}
