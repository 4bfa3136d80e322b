// The rollers of a machine: advice, what was learned of the scale they are set by, and its description.

import { CorrectionChart } from "./correction-chart.js";
import { get } from "./api.js";
import { askForm, note } from "./dialogs.js";
import { facts, h } from "./dom.js";
import { field } from "./forms.js";
import { act } from "./identity.js";
import { number } from "./roller-dialogs.js";
import { length, unit } from "./units.js";
import words from "../api/words.js";

/** A section of the machine page; path is the machine's in the API. */
export class MachineRollers {
  constructor(path) {
    this.path = path;
    this.body = h("div", { class: "form" });
    this.chart = new CorrectionChart(path);
    this.element = h(
      "section",
      { class: "sheet form", "aria-label": "Rollers" },
      h("h2", {}, "Correct the rollers, or leave them"),
      this.body,
      this.chart.element,
    );
  }

  async show(pieces = this.pieces) {
    this.pieces = pieces;
    const said = await get(`${this.path}/correction`);
    const edit = h("button", { class: "button changes", type: "button" }, "Describe the scale");
    edit.addEventListener("click", () => this.describe());
    this.body.replaceChildren(
      said.act ? h("p", { class: "lead" }, said.act) : "",
      h("p", {}, said.text),
      h("p", { class: "care-note" }, said.caution),
      ...said.notices.map(({ text }) => h("p", {}, text)),
      said.common && said.action !== "NONE" ? h("p", { class: "small" }, said.common) : "",
      h("h3", {}, "Scale by which they are set"),
      facts(scaleFacts(said)),
      h("p", {}, edit),
    );
    if (pieces > 0) await this.chart.show();
  }

  async describe() {
    const known = (await get(`${this.path}/scales`)).at(-1) ?? {};
    await askForm({
      title: "Scale of the rollers",
      intro:
        "The dial, counter or axis by which the rollers are set. Leave out what nobody knows: which way is " +
        "tighter and how far a unit bends are learned from recorded corrections.",
      confirm: "Save the scale",
      fields: fields(known),
      act: async (typed) => {
        if (typed.radiusChangeMm !== null && typed.tighter === "UNKNOWN") throw wayMissing;
        const kept = await act("POST", `${this.path}/scales`, {
          ...typed,
          radiusChangeMm: withSign(typed),
        });
        if (kept) note(`Saved. Amounts are said on the ${kept.name}, in ${kept.unit}, from now on.`);
        await this.show();
        return true;
      },
    });
  }
}

const wayMissing = {
  message: "",
  faults: [
    {
      field: "tighter",
      problem: "is needed to say what a unit does",
      allowed: "which way it was, or no change",
    },
  ],
};

/** The change is asked for without a sign; which way is tighter has said it. */
const withSign = ({ radiusChangeMm: change, tighter }) =>
  typeof change === "number" && tighter === "HIGHER" ? -Math.abs(change) : change;

function fields(known) {
  return [
    h(
      "div",
      { class: "fields" },
      field({
        name: "name",
        label: "Name",
        value: known.name ?? "",
        hint: "As people call it: dial, counter, axis 2",
        required: true,
      }),
      field({
        name: "unit",
        label: "Unit",
        value: known.unit ?? "",
        hint: "What one of it is: mm, 0.01 mm, turns",
        required: true,
      }),
    ),
    h(
      "div",
      { class: "fields" },
      field({
        name: "step",
        label: "Least step",
        kind: "number",
        value: known.step ?? "",
        hint: "In its unit",
      }),
      field({
        name: "lostMotion",
        label: "Lost motion",
        kind: "number",
        value: known.lostMotion ?? "",
        hint: "Play after a change of direction, in its unit",
      }),
    ),
    field({
      name: "tighter",
      label: "Which way is tighter",
      kind: "choice",
      options: Object.entries(words.tighter),
      value: known.tighter ?? "UNKNOWN",
    }),
    h(
      "div",
      { class: "fields" },
      field({
        name: "radiusChangeMm",
        label: "One unit changes the radius by about",
        kind: "length",
        hint: "If somebody knows it",
      }),
      field({ name: "atRadiusMm", label: "at a radius of", kind: "length" }),
    ),
  ];
}

function scaleFacts(said) {
  const { scale, setting, gainMm, gainStandardUncertaintyMm: u, scatterMm } = said;
  const gain =
    gainMm === null || Math.abs(gainMm) < u
      ? "not learned yet"
      : `${length(gainMm, 1)} ±\u00a0${length(2 * u, 1)}\u00a0${unit()} of radius for one unit`;
  return [
    ["Scale", scale.described ? `${scale.name}, in ${scale.unit}` : "not described yet"],
    ["Least step", scale.step > 0 ? String(scale.step) : ""],
    ["Which way is tighter", words.tighter[scale.tighter]],
    ["Lost motion", scale.lostMotion > 0 ? String(scale.lostMotion) : ""],
    [
      "Shows now",
      setting === null ? "not known: no correction or set-up with its number yet" : number(setting, scale),
    ],
    ["One unit does", gain],
    ["Pieces vary by", `${length(scatterMm, 1)}\u00a0${unit()} (standard deviation)`],
  ];
}
