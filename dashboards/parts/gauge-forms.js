// Bridges and masters: added, changed.

import { act } from "./identity.js";
import { askForm, note } from "./dialogs.js";
import { h } from "./dom.js";
import { field } from "./forms.js";
import words from "../api/words.js";

function bridgeFields(bridge = {}) {
  return [
    field({
      name: "name",
      label: "Name",
      value: bridge.name,
      hint: "As written on the bridge",
      required: true,
    }),
    h(
      "div",
      { class: "fields" },
      field({
        name: "spanMm",
        label: "Span",
        kind: "length",
        value: bridge.spanMm,
        hint: "Between the contact lines of the feet on a flat",
        required: true,
      }),
      field({
        name: "spanUncertaintyMm",
        label: "Standard uncertainty of the span",
        kind: "length",
        value: bridge.spanUncertaintyMm,
        hint: "Half of what the drawing or certificate states with ±, if in doubt",
        required: true,
      }),
      field({
        name: "footRadiusMm",
        label: "Foot radius",
        kind: "length",
        value: bridge.footRadiusMm ?? 0,
        hint: "Of ball or roller feet; 0 for an edge",
        required: true,
      }),
      field({
        name: "footRadiusUncertaintyMm",
        label: "Standard uncertainty of the foot radius",
        kind: "length",
        value: bridge.footRadiusUncertaintyMm ?? 0,
      }),
      field({
        name: "footKind",
        label: "Feet",
        kind: "choice",
        value: bridge.footKind ?? "",
        options: [["", "not known (taken as points)"], ...Object.entries(words.feet)],
        hint: "How they touch the piece: it decides what standing askew does to a reading",
      }),
      field({
        name: "skewLimitDegrees",
        label: "Skew, at most ±",
        kind: "number",
        value: bridge.skewLimitDegrees ?? 0.5,
        suffix: "degrees",
        hint: "How far it may stand turned out of the bend plane",
      }),
    ),
  ];
}

export function addBridge({ load }) {
  return askForm({
    title: "Add a bridge",
    fields: bridgeFields(),
    confirm: "Add",
    act: (values) => kept("POST", "api/bridges", bridgeOf(values), "Bridge added.", load),
  });
}

export function changeBridge({ load }, bridge) {
  return askForm({
    title: `Change ${bridge.name}`,
    intro: "Readings taken so far keep what they were computed with.",
    fields: [
      ...bridgeFields(bridge),
      field({ name: "why", label: "Why", hint: "Measured again, feet changed…", required: true }),
    ],
    confirm: "Change",
    act: (values) => kept("PUT", `api/bridges/${bridge.id}`, bridgeOf(values), "Bridge changed.", load),
  });
}

export function addMaster({ load }) {
  return askForm({
    title: "Add a master",
    confirm: "Add",
    fields: [
      field({ name: "name", label: "Name", required: true }),
      field({
        name: "face",
        label: "The bridge stands on its",
        kind: "choice",
        options: [
          ["OUTER", "outer (convex) face"],
          ["INNER", "inner (concave) face"],
        ],
      }),
      h(
        "div",
        { class: "fields" },
        field({ name: "radiusMm", label: "Radius of that face", kind: "length", required: true }),
        field({
          name: "expandedUncertaintyMm",
          label: "± as its certificate states (k = 2)",
          kind: "length",
          required: true,
        }),
        field({
          name: "checkLimitMm",
          label: "Interim check may differ by ±",
          kind: "length",
          hint: "Kept with the master, so that every check is judged alike",
        }),
      ),
    ],
    act: (values) => kept("POST", "api/masters", values, "Master added.", load),
  });
}

// Feet of no known kind are told as none.
const bridgeOf = (values) => ({ ...values, footKind: values.footKind || null });

async function kept(method, path, values, done, load) {
  if (await act(method, path, values)) note(done);
  await load();
  return true;
}
