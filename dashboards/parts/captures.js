// What was recorded and what was not, as signs on the trace and in words beneath it.

import { get } from "./api.js";
import { h } from "./dom.js";
import { time } from "./times.js";
import { Trace } from "./trace.js";
import { length, unit } from "./units.js";
import words from "../api/words.js";

const LINES = 3;

export class CaptureLog {
  constructor(canvas, list) {
    Object.assign(this, { trace: new Trace(canvas), list });
  }

  live({ at, depthMm, valueMm, phase }) {
    this.trace.add({ at: Date.parse(at), depthMm: depthMm ?? valueMm, phase });
  }

  async taken(reading) {
    const depth = length(reading.depthMm, 3);
    this.trace.sign(Date.parse(reading.at), "taken", depth);
    this.line(
      "taken",
      "●",
      time(reading.at),
      ` Recorded: ${depth}\u00a0${unit()}, mean of ${reading.sampleCount} values`,
    );
    const { samples } = await get(`api/readings/${reading.id}/trace?before=0&after=0`).catch(() => ({
      samples: [],
    }));
    if (samples.length) this.trace.window(Date.parse(samples[0].at), Date.parse(samples.at(-1).at));
  }

  refused({ reason }) {
    const [what, advice] = [words.refusals[reason], words.refusalAdvice[reason]];
    const at = this.trace.newest() ?? Date.now();
    this.trace.sign(at, "refused", what);
    this.line("refused", "✕", time(new Date(at).toISOString()), ` Not recorded: ${what}. ${advice}`);
  }

  line(kind, sign, ...said) {
    this.list.prepend(
      h(
        "li",
        { data: { kind } },
        h("span", { class: "sign", "aria-hidden": "true" }, sign),
        h("span", {}, ...said),
      ),
    );
    while (this.list.children.length > LINES) this.list.lastElementChild.remove();
  }
}
