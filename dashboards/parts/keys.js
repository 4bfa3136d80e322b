// A foot pedal or a keypad sends keys; which key does what is chosen under Settings.

import { viewer } from "./viewer.js";

/** What a key can do: [name of the setting, its words, the usual key]. */
export const KEYS = [
  ["keyAgain", "Measure again", "*"],
  ["keyNext", "Next piece", "+"],
  ["keyUndo", "Undo", "-"],
  ["keyMeasure", "Measure (where a station waits for it)", "0"],
];

/** Calls work(name of the setting) when its key is pressed while no dialog is open and nobody types. */
export function followKeys(work) {
  addEventListener("keydown", (event) => {
    const modified = event.ctrlKey || event.altKey || event.metaKey;
    if (modified || event.repeat || event.target.closest("input, select, textarea, dialog")) return;
    if (document.querySelector("dialog[open]")) return;
    const found = KEYS.find(([name]) => viewer(name) !== "" && viewer(name) === event.key);
    if (!found) return;
    event.preventDefault();
    work(found[0]);
  });
}

/** A pedal that bounces, or a second press by mistake, chooses nothing. */
const SETTLED_MS = 600;

/** The press that opened a dialog, made twice, answers nothing in it; what is typed first, also by a scanner, does. */
export function settles(dialog) {
  const opened = performance.now();
  let typed = false;
  dialog.addEventListener("keydown", (event) => {
    const presses = event.key === "Enter" || event.key === " ";
    if (!presses) typed = true;
    else if (!typed && performance.now() - opened < SETTLED_MS) event.preventDefault();
  });
}

/**
 * Answers of a question by keys: the keys 1 to 9 choose; the key of "Next piece" goes to the next answer, those
 * of "Measure again" and "Undo" choose it, so that a pedal is enough.
 */
export function followChoiceKeys(place, buttons) {
  const opened = performance.now();
  place.addEventListener("keydown", (event) => {
    if (event.repeat || event.ctrlKey || event.altKey || event.metaKey) return;
    if (performance.now() - opened < SETTLED_MS) return;
    const [name] = KEYS.find(([each]) => viewer(each) === event.key) ?? [null];
    const at = buttons.indexOf(document.activeElement);
    if (name === "keyNext") buttons[(at + 1) % buttons.length].focus();
    else if (name === "keyAgain" || name === "keyUndo") buttons[Math.max(0, at)][at < 0 ? "focus" : "click"]();
    else if (name === null && buttons[Number(event.key) - 1]) buttons[Number(event.key) - 1].click();
    else return;
    event.preventDefault();
  });
}

/** Makes a field take the name of the key that is pressed in it; Backspace and Delete empty it. */
export function takesKey(field) {
  const input = field.querySelector("input");
  input.addEventListener("keydown", (event) => {
    if (["Tab", "Enter", "Escape", "Shift", "Control", "Alt", "Meta"].includes(event.key)) return;
    event.preventDefault();
    input.value = ["Backspace", "Delete"].includes(event.key) ? "" : event.key;
  });
  return field;
}
