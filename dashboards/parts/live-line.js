// What the indicator shows now, for dialogs that depend on it.

import words from "../api/words.js";
import { h, say } from "./dom.js";
import { follow } from "./live.js";
import { length, unit } from "./units.js";

/** A line that follows the indicator of a station for as long as it is on the page. */
export function liveLine(station) {
  const figure = h("strong", {}, "–");
  const phase = h("span", {}, "No value yet");
  const element = h("p", { class: "live-line" }, h("span", {}, "Indicator now "), figure, phase);
  const { stop } = follow({ stations: [station], liveMillis: 150 }, { live: show });
  function show({ depthMm, valueMm, phase: now }) {
    if (!element.isConnected) {
      stop();
      return;
    }
    say(figure, `${length(valueMm, 3)}\u00a0${unit()}`);
    const where = now === "TAKEN" ? "Standing still" : words.phases[now];
    say(phase, `${where}${depthMm === null ? "" : `, depth ${length(depthMm, 3)}\u00a0${unit()}`}`);
    element.dataset.phase = now;
  }
  return element;
}
