// The rollers of a machine that pieces run over: which of them makes a ripple, how it goes, and their records.

import { get } from "./api.js";
import { Chart } from "./chart.js";
import { askForm, note } from "./dialogs.js";
import { h, state, table } from "./dom.js";
import { kindOf } from "./findings.js";
import { field } from "./forms.js";
import { act } from "./identity.js";
import { fixed, length, unit } from "./units.js";

const SIDES = [
  ["OUTER", "outer face"],
  ["INNER", "inner face"],
];

/** A section of the machine page; path is the machine's in the API. */
export class LineRollers {
  constructor(path) {
    this.path = `${path}/rollers`;
    this.body = h("div", { class: "form" });
    this.ripples = new Chart(h("div", { class: "chart-box" }), {
      height: 420,
      narrowHeight: 420,
      newestFirst: false,
    });
    this.spectrum = new Chart(h("div", { class: "chart-box" }), {
      height: 320,
      narrowHeight: 340,
      newestFirst: false,
    });
    this.pictures = h(
      "div",
      { class: "form", hidden: true },
      h("h3", {}, "Ripple of each roller, piece by piece"),
      this.ripples.container,
      h(
        "p",
        { class: "small" },
        "Moving average of the evidence that the roller makes a ripple; 1 without one. A diamond is above its limit.",
      ),
      h("h3", {}, "Ripple by wavelength"),
      this.spectrum.container,
      h(
        "p",
        { class: "small" },
        "Of the newest pieces, as the bridge shows it. Shaded: where each roller would show, slip of 2 % allowed for.",
      ),
    );
    this.element = h(
      "section",
      { class: "sheet form", "aria-label": "Run-out of rollers" },
      h("h2", {}, "Does a roller run out?"),
      this.body,
      this.pictures,
    );
  }

  async show() {
    await this.put(await get(this.path));
  }

  async put(said) {
    const { statement, rollers, pieces } = said;
    this.body.replaceChildren(
      state(kindOf(statement.tone), statement.word),
      h("p", {}, [statement.reason, statement.advice].filter(Boolean).join(" ")),
      rollers.length === 0 ? "" : this.rows(rollers),
      h(
        "p",
        {},
        h(
          "button",
          { class: "button changes", type: "button", on: { click: () => this.add() } },
          rollers.length === 0 ? "Record the rollers" : "Record a roller",
        ),
      ),
    );
    this.pictures.hidden = pieces === 0 || rollers.length === 0;
    if (!this.pictures.hidden)
      await Promise.all([
        this.ripples.show(`${this.path}/ripples`).catch((problem) => this.none(this.ripples, problem)),
        this.spectrum.show(`${this.path}/spectrum`).catch((problem) => this.none(this.spectrum, problem)),
      ]);
  }

  none(chart, problem) {
    if (problem.status !== 404) throw problem;
    chart.clear(h("p", { class: "empty" }, "No piece is long enough for it yet."));
  }

  rows(rollers) {
    return table(
      "Rollers that pieces run over",
      [
        { head: "Roller", cell: (each) => each.name },
        { head: `Diameter, ${unit()}`, number: true, cell: (each) => length(each.diameterMm, 1) },
        {
          head: "Runs on",
          cell: (each) => `${SIDES.find(([key]) => key === each.side)[1]}${each.driven ? ", driven" : ""}`,
        },
        {
          head: `Wavelength, ${unit()}`,
          number: true,
          cell: (each) => (each.wavelengthMm === null ? "–" : length(each.wavelengthMm, 0)),
        },
        { head: "Ripple, % of curvature", number: true, cell: rippleOf },
        { head: "Chance alone", number: true, cell: (each) => chance(each.probability) },
        {
          head: "",
          cell: (each) =>
            h(
              "button",
              { class: "button plain no-print changes", type: "button", on: { click: () => this.remove(each.name) } },
              `Remove ${each.name}`,
            ),
        },
      ],
      rollers,
    );
  }

  async add() {
    await askForm({
      title: "A roller that pieces run over",
      intro:
        "Of the machine, the gauge, the straightener or the feeder. The diameter counts where the section " +
        "touches it. A name that is recorded already is replaced.",
      care: "Measure a roller only when it is stopped and the drive is locked out.",
      confirm: "Record it",
      fields: [
        h(
          "div",
          { class: "fields" },
          field({ name: "name", label: "Name", required: true, hint: "As people call it: entry roller" }),
          field({ name: "diameterMm", label: "Diameter", kind: "length", required: true }),
        ),
        field({ name: "side", label: "Runs on", kind: "choice", options: SIDES, value: "OUTER" }),
        field({
          name: "driven",
          label: "Turned by a motor",
          kind: "choice",
          options: [
            ["false", "no"],
            ["true", "yes"],
          ],
          value: "false",
        }),
      ],
      act: async (typed) => {
        const said = await act("POST", this.path, { ...typed, driven: typed.driven === "true" });
        if (said) {
          note("Recorded. Earlier pieces are looked through for it too.");
          await this.put(said);
        }
        return true;
      },
    });
  }

  async remove(name) {
    await askForm({
      title: `Remove ${name}?`,
      intro: "It is no longer looked for. What was measured stays.",
      confirm: "Remove it",
      act: async () => {
        const said = await act("POST", `${this.path}/removals`, { name });
        if (said) await this.put(said);
        return true;
      },
    });
  }
}

function rippleOf({ amplitudePercent, uncertaintyPercent, unseen }) {
  if (amplitudePercent === null) return unseen === null ? "–" : "not seen";
  return `${fixed(amplitudePercent, 2)} ±\u00a0${fixed(uncertaintyPercent, 2)}`;
}

const chance = (p) => (p === null ? "–" : p < 0.001 ? "below 0.001" : p.toFixed(3));
