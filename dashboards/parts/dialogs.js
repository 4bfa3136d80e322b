// Native dialogs that ask and act; they stay open and say why when the service refuses.

import { focusAgain, focusFirst, unfocused } from "./dialog-focus.js";
import { h } from "./dom.js";
import { keepDraft } from "./drafts.js";
import { showFaults, values } from "./forms.js";
import { followChoiceKeys, settles } from "./keys.js";
import { makeWay, showAll } from "./notes.js";

export { note } from "./notes.js";

/**
 * Asks with a form. fields are elements; act(values) does the work and may throw a Problem. Answers
 * what act answered, or null when given up.
 */
export function askForm({ title, intro = "", care = "", fields = [], confirm, act }) {
  const general = h("p", { class: "fault general", role: "alert" });
  const submit = h(
    "button",
    { class: "button main", type: "submit", autofocus: fields.length === 0 },
    confirm,
  );
  const form = h(
    "form",
    { method: "dialog", novalidate: true },
    h(
      "div",
      { class: "within form" },
      ...(intro ? [h("p", {}, intro)] : []),
      ...(care ? [h("p", { class: "care-note" }, care)] : []),
      ...fields,
    ),
    general,
  );
  const sent = keepDraft(form, title);
  return show(title, form, (close) => {
    form.append(h("div", { class: "ends" }, giveUp(close), submit));
    form.addEventListener("submit", async (event) => {
      event.preventDefault();
      showFaults(form);
      await busy(
        submit,
        async () => {
          const answer = await act(values(form));
          if (answer !== null) sent();
          close(answer ?? true);
        },
        (problem) => showFaults(form, problem),
      );
    });
  });
}

/** Asks by large buttons: choices are [[value, words, small words], …]; answers as askForm. */
export function askChoice({ title, intro = "", care = "", choices, other = [], act }) {
  const general = h("p", { class: "fault general", role: "alert" });
  const within = h(
    "div",
    { class: "within form" },
    ...(intro ? [h("p", {}, intro)] : []),
    ...(care ? [h("p", { class: "care-note" }, care)] : []),
  );
  const body = h("div", { class: "form" }, within);
  return show(title, body, (close) => {
    const buttons = choices.map(([value, words, small], i) => {
      const button = h(
        "button",
        { class: "button", type: "button" },
        words,
        ...(small ? [h("small", {}, small)] : []),
        i < 9 ? h("kbd", { "aria-hidden": "true" }, String(i + 1)) : null,
      );
      button.addEventListener("click", () =>
        busy(
          button,
          async () => close((await act(value)) ?? true),
          (problem) => {
            general.textContent = problem.message;
          },
        ),
      );
      return button;
    });
    const others = other.map(([words, then]) =>
      h(
        "button",
        {
          class: "button plain",
          type: "button",
          on: {
            click: () => {
              close(null);
              then();
            },
          },
        },
        words,
      ),
    );
    within.append(h("div", { class: "choices" }, buttons));
    followChoiceKeys(body, buttons);
    body.append(general, h("div", { class: "ends" }, others, giveUp(close)));
  });
}

function giveUp(close, words = "Cancel") {
  return h("button", { class: "button plain", type: "button", on: { click: () => close(null) } }, words);
}

/** A dialog of a page's own making; fill(close) wires it and answers the word for leaving it. */
export function openDialog(title, body, fill) {
  const around = h("div", { class: "form" }, h("div", { class: "within" }, body));
  return show(title, around, (close) =>
    around.append(h("div", { class: "ends" }, giveUp(close, fill(close)))),
  );
}

function show(title, body, fill) {
  const opener = (unfocused() && [...working].at(-1)) || document.activeElement;
  return new Promise((answer) => {
    const id = `dialog-${document.querySelectorAll("dialog").length + 1}`;
    const dialog = h("dialog", { "aria-labelledby": id }, h("h2", { id }, title), body);
    let result = null;
    const close = (value) => {
      result = value;
      dialog.close();
    };
    dialog.addEventListener("close", () => {
      dialog.remove();
      showBusy();
      showAll();
      answer(result);
      focusAgain(opener);
    });
    fill(close);
    settles(dialog);
    document.body.append(dialog);
    dialog.showModal();
    focusFirst(dialog);
    showBusy();
    makeWay();
  });
}

/** Buttons whose work is not done. */
const working = new Set();

/**
 * Runs work with the button marked as busy, but not while a dialog that the work opened waits for a person;
 * trouble(problem) when it fails.
 */
export async function busy(button, work, trouble) {
  if (working.has(button)) return;
  working.add(button);
  showBusy();
  try {
    await work();
  } catch (problem) {
    trouble(problem);
  } finally {
    working.delete(button);
    button.removeAttribute("aria-busy");
  }
}

/** Behind an open dialog nothing is marked as busy. */
function showBusy() {
  const top = [...document.querySelectorAll("dialog[open]")].at(-1);
  for (const button of working) {
    if (top && !top.contains(button)) button.removeAttribute("aria-busy");
    else button.setAttribute("aria-busy", "true");
  }
}
