// What leads from nothing to the first piece.

import { h } from "./dom.js";
import { sketch } from "./sketch.js";

const STEPS = [
  ["Find the indicator", "Plug it in. Chordlog listens and shows what it sends."],
  ["Name the station", "Its machine, its indicator and its bridge."],
  ["Set zero", "The bridge stands on something flat."],
  ["First job", "Target radius and tolerance, as on the drawing."],
  ["First piece", "Put the bridge on it and hold still. The reading is recorded by itself."],
];

/** All steps with the way to the first; nothing has been done yet. */
export function firstSteps() {
  return h(
    "div",
    { class: "sheet first-steps" },
    h(
      "div",
      { class: "form" },
      h("h2", {}, "No station yet: from here to the first piece in five steps"),
      h(
        "ol",
        {},
        STEPS.map(([what, how]) => h("li", {}, h("strong", {}, what), h("span", {}, how))),
      ),
      h("a", { class: "button main", href: "add-station.html" }, "Find the indicator"),
    ),
    sketch(),
  );
}
