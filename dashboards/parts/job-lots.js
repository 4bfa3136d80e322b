// Statistics lot by lot, and what each pass through the rollers did.

import { get } from "./api.js";
import { h, table } from "./dom.js";
import { figureText, intervalText } from "./figure-words.js";
import { length, unit } from "./units.js";

export class Lots {
  constructor() {
    this.place = h("div");
    this.passes = h("p");
    this.element = h(
      "section",
      { class: "sheet form", id: "lots", "aria-label": "Lots", hidden: true },
      h("h2", {}, "Lots and passes"),
      this.place,
      this.passes,
    );
  }

  async show(job, characteristic) {
    const query = characteristic ? `?characteristic=${encodeURIComponent(characteristic)}` : "";
    const [{ lots }, passes] = await Promise.all([
      get(`api/jobs/${job.id}/lots${query}`),
      get(`api/jobs/${job.id}/passes`),
    ]);
    this.element.hidden = lots.length < 2 && passes.rolledAgain === 0; // one lot is the whole job
    this.place.replaceChildren(tableOf(lots));
    this.passes.textContent = passWords(passes);
  }
}

function tableOf(lots) {
  const figure = (lot, name) => lot.figures.find((each) => each.name === name);
  const shown = (found) => (found ? figureText(found) : "–");
  return table(
    "Figures lot by lot, in the order of their first readings",
    [
      { head: "Lot", kind: "lead", cell: (lot) => lot.lot || "none named" },
      { head: "Pieces", number: true, kind: "named", cell: (lot) => String(lot.pieces) },
      { head: "Readings", number: true, kind: "named", cell: (lot) => String(lot.readings) },
      { head: `Mean, ${unit()}`, number: true, kind: "new named", cell: (lot) => shown(figure(lot, "mean")) },
      {
        head: `Std. deviation, ${unit()}`,
        number: true,
        kind: "named",
        cell: (lot) => shown(figure(lot, "standardDeviationOverall")),
      },
      {
        head: "Index that applies",
        kind: "new named",
        cell: ({ index }) =>
          index ? `${index.title} ${figureText(index)} ${bracketed(intervalText(index))}`.trim() : "none",
      },
    ],
    lots,
    "lines",
  );
}

const bracketed = (interval) => (interval ? `(${interval})` : "");

function passWords({ pieces, meanPasses, rolledAgain, passes }) {
  if (rolledAgain === 0) return pieces > 0 ? "No piece was rolled again." : "";
  const each = passes.map(passWord).filter(Boolean).join(" ");
  return `${rolledAgain} of ${pieces} pieces were rolled again, ${meanPasses.toFixed(1)} passes a piece. ${each}`;
}

function passWord({ pass, places, meanChangeMm }) {
  if (meanChangeMm === undefined || meanChangeMm === null) return "";
  const by = `${length(Math.abs(meanChangeMm), 1)}\u00a0${unit()}`;
  return `Pass ${pass}: ${by} ${meanChangeMm < 0 ? "tighter" : "wider"} on average of ${places}.`;
}
