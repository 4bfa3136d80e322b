// What may be chosen for this screen: name, unit, look, sound and flash, the keys of a pedal.

import { get } from "./api.js";
import { askForm } from "./dialogs.js";
import { h } from "./dom.js";
import { field } from "./forms.js";
import { helpPath } from "./help-place.js";
import { keepName, nameField } from "./identity.js";
import { KEYS, takesKey } from "./keys.js";
import { session } from "./session.js";
import { tryOut } from "./signals.js";
import { choose, viewer } from "./viewer.js";

const ON_OFF = [
  ["on", "On"],
  ["off", "Off"],
];

export async function askSettings() {
  const { accounts } = await session();
  const { program } = await get("health").catch(() => ({}));
  return askForm({
    title: "Settings",
    intro: "For this screen only.",
    confirm: "Save",
    fields: [
      h("p", {}, h("a", { href: helpPath() }, "Help for this page")),
      h("div", { class: "fields" }, accounts ? null : nameField(false), ...choices()),
      h(
        "fieldset",
        {},
        h("legend", {}, "Sound and flash"),
        h(
          "p",
          { class: "hint" },
          "When a piece is recorded, refused or out of tolerance. A browser is silent until the page was " +
            "touched once.",
        ),
        h("div", { class: "fields" }, choice("sound", "Sound", ON_OFF), choice("flash", "Flash", ON_OFF)),
        h(
          "div",
          { class: "row" },
          trial("Try: recorded", "good"),
          trial("Try: refused", "refused"),
          trial("Try: out", "bad"),
        ),
      ),
      h(
        "fieldset",
        {},
        h("legend", {}, "Keys of a foot pedal or keypad"),
        h(
          "p",
          { class: "hint" },
          "Press the key in its field; Delete leaves an action without a key. In a question with several answers " +
            "the keys 1 to 9 choose one; the key of “Next piece” goes to the next answer, the key of “Measure " +
            "again” or “Undo” takes it.",
        ),
        h(
          "div",
          { class: "fields" },
          KEYS.map(([name, label]) => takesKey(field({ name, label, value: viewer(name) }))),
        ),
      ),
      program ? h("p", { class: "hint", id: "program" }, identified(program)) : null,
    ],
    act: keep,
  });
}

/** What reports and exports print whole. */
const identified = ({ version, measuringPart }) =>
  `Chordlog ${version}. What decides a measurement has the SHA-256 ${measuringPart.slice(0, 16)}…`;

function choices() {
  return [
    choice("unit", "Lengths in", [
      ["mm", "Millimetres"],
      ["inch", "Inches"],
    ]),
    choice("decimal", "Numbers in CSV files", [
      ["point", "1.5"],
      ["comma", "1,5 (semicolons between cells)"],
    ]),
    choice("theme", "Light or dark", [
      ["device", "As the device"],
      ["light", "Light"],
      ["dark", "Dark"],
    ]),
  ];
}

function choice(name, label, options) {
  return field({ name, label, kind: "choice", value: viewer(name), options });
}

function trial(caption, kind) {
  return h(
    "button",
    { class: "button", type: "button", on: { click: () => tryOut(kind) } },
    caption,
  );
}

function keep(chosen) {
  refuseDoubles(chosen);
  if (chosen.name) keepName(chosen);
  const changed = chosen.unit !== viewer("unit");
  for (const name of ["theme", "unit", "decimal", "sound", "flash", ...KEYS.map(([key]) => key)])
    choose(name, chosen[name]);
  if (changed) location.reload();
  return true;
}

function refuseDoubles(chosen) {
  for (const [name] of KEYS) {
    const other = KEYS.find(
      ([each]) => each !== name && chosen[each] !== "" && chosen[each] === chosen[name],
    );
    if (other)
      throw {
        faults: [{ field: name, problem: `is the key of “${other[1]}” too`, allowed: "a key of its own" }],
      };
  }
}
