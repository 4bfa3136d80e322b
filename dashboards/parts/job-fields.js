// The fields of a job: order, section, specification, plan.

import { field } from "./forms.js";
import { entered, plainNumber } from "./units.js";
import words from "../api/words.js";

const sizes = {
  ROUND_TUBE: [
    ["outsideDiameterMm", "Outside diameter"],
    ["wallMm", "Wall"],
  ],
  SOLID_ROUND: [["diameterMm", "Diameter"]],
  FLAT: [
    ["heightMm", "Height in the bend plane"],
    ["widthMm", "Width across it"],
  ],
  BOX: [
    ["heightMm", "Height in the bend plane"],
    ["widthMm", "Width across it"],
    ["wallMm", "Wall"],
  ],
  PROFILE: [
    ["heightMm", "Height in the bend plane"],
    ["centroidFromOuterMm", "Centroid from the outer face"],
  ],
};

export function order(job, stations) {
  const names = [
    ...new Set([...stations.map((each) => each.station), ...(job.station ? [job.station] : [])]),
  ];
  return [
    field({ name: "name", label: "Order", value: job.name, required: true }),
    field({ name: "part", label: "Part or drawing", value: job.part }),
    field({ name: "materialLot", label: "Material lot", value: job.materialLot }),
    field({
      name: "station",
      label: "Station",
      kind: "choice",
      value: job.station ?? names[0],
      options: names.map((each) => [each, each]),
      required: true,
    }),
  ];
}

export function specification({ specification: asked, measuredFace }) {
  const given = [
    ["OUTER", "Outer face"],
    ["INNER", "Inner face"],
    ["CENTRELINE", "Centreline"],
  ];
  return [
    field({
      name: "specification.targetMm",
      label: "Target radius",
      kind: "length",
      value: asked.targetMm,
      required: true,
    }),
    field({
      name: "tolerance",
      label: "Tolerance ±",
      kind: "length",
      hint: "fills in both limits; they may differ",
    }),
    field({
      name: "specification.lowerLimitMm",
      label: "Lower limit (LSL)",
      kind: "length",
      value: asked.lowerLimitMm,
      hint: "leave empty if none",
    }),
    field({
      name: "specification.upperLimitMm",
      label: "Upper limit (USL)",
      kind: "length",
      value: asked.upperLimitMm,
      hint: "leave empty if none",
    }),
    field({
      name: "specification.face",
      label: "Radius is specified on",
      kind: "choice",
      value: asked.face,
      options: given,
    }),
    field({
      name: "specification.decideBy",
      label: "Inside the limits must be",
      kind: "choice",
      value: asked.decideBy ?? "MEAN",
      options: [
        ["MEAN", "the mean of a piece"],
        ["EVERYWHERE", "each place of it"],
        ["BOTH", "mean and each place"],
      ],
      hint: "counts where pieces run through a gauge in a line",
    }),
    field({
      name: "measuredFace",
      label: "The bridge stands on",
      kind: "choice",
      value: measuredFace,
      options: given.slice(0, 2),
    }),
  ];
}

export function plan({ plan: { positions, subgroups, subgroupSize } }) {
  return [
    field({
      name: "plan.positions",
      label: "Positions along a piece",
      value: positions.join(", "),
      hint: "in measuring order, separated by commas",
      required: true,
    }),
    field({
      name: "plan.subgroups",
      label: "Grouping",
      kind: "choice",
      value: subgroups,
      options: Object.entries(words.subgroups),
    }),
    field({
      name: "plan.subgroupSize",
      label: "Readings per group",
      kind: "number",
      value: subgroupSize,
      hint: "2 to 25",
    }),
  ];
}

export function showSizes(place, kind, section) {
  place.replaceChildren(
    ...sizes[kind].map(([name, label]) =>
      field({ name: `section.${name}`, label, kind: "length", value: section[name] ?? null, required: true }),
    ),
  );
}

/** What was typed as tolerance: null if nothing, NaN if no number. */
export const toleranceOf = (form) => entered(form.querySelector('[name="tolerance"]').value.replace("±", ""));

/** Both limits follow target and tolerance while these are typed. */
export function tolerance(form) {
  const input = (name) => form.querySelector(`[name="${name}"]`);
  const [target, plusMinus] = [input("specification.targetMm"), input("tolerance")];
  const fill = () => {
    const [middle, half] = [entered(target.value), toleranceOf(form)];
    if (!(middle > 0) || !(half > 0)) return;
    input("specification.lowerLimitMm").value = plainNumber(middle - half);
    input("specification.upperLimitMm").value = plainNumber(middle + half);
  };
  [target, plusMinus].forEach((each) => each.addEventListener("input", fill));
}

/** The size of a subgroup is asked for only where readings in a row make it. */
export function grouping(form) {
  const kind = form.querySelector("[name='plan.subgroups']");
  const size = form.querySelector("[name='plan.subgroupSize']");
  const apply = () => {
    size.closest(".field").hidden = kind.value !== "CONSECUTIVE";
  };
  kind.addEventListener("change", apply);
  apply();
}
