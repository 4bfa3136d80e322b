// Native dialogs that ask and act; they stay open and say why when the service refuses.

import { h } from "./dom.js";
import { showFaults, values } from "./forms.js";

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
    ...(intro ? [h("p", {}, intro)] : []),
    ...(care ? [h("p", { class: "care-note" }, care)] : []),
    ...fields,
    general,
  );
  return show(title, form, (close) => {
    form.append(h("div", { class: "ends" }, giveUp(close), submit));
    form.addEventListener("submit", async (event) => {
      event.preventDefault();
      showFaults(form);
      await busy(
        submit,
        async () => close((await act(values(form))) ?? true),
        (problem) => showFaults(form, problem),
      );
    });
  });
}

/** Asks by large buttons: choices are [[value, words, small words], …]; answers as askForm. */
export function askChoice({ title, intro = "", care = "", choices, other = [], act }) {
  const general = h("p", { class: "fault general", role: "alert" });
  const body = h(
    "div",
    { class: "form" },
    ...(intro ? [h("p", {}, intro)] : []),
    ...(care ? [h("p", { class: "care-note" }, care)] : []),
  );
  return show(title, body, (close) => {
    const buttons = choices.map(([value, words, small]) => {
      const button = h(
        "button",
        { class: "button", type: "button" },
        words,
        ...(small ? [h("small", {}, small)] : []),
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
    body.append(
      h("div", { class: "choices" }, buttons),
      general,
      h("div", { class: "ends" }, others, giveUp(close)),
    );
  });
}

function giveUp(close, words = "Cancel") {
  return h("button", { class: "button plain", type: "button", on: { click: () => close(null) } }, words);
}

/** A dialog of a page's own making; fill(close) wires it and answers the word for leaving it. */
export function openDialog(title, body, fill) {
  return show(title, body, (close) => body.append(h("div", { class: "ends" }, giveUp(close, fill(close)))));
}

function show(title, body, fill) {
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
      answer(result);
    });
    fill(close);
    document.body.append(dialog);
    dialog.showModal();
  });
}

/** Runs work with the button marked as busy; trouble(problem) when it fails. */
export async function busy(button, work, trouble) {
  if (button.getAttribute("aria-busy") === "true") return;
  button.setAttribute("aria-busy", "true");
  try {
    await work();
  } catch (problem) {
    trouble(problem);
  } finally {
    button.removeAttribute("aria-busy");
  }
}

/** A short word at the edge of the page: done, or why not. */
export function note(words, kind = "good") {
  document.querySelectorAll(".note").forEach((each) => each.remove());
  const element = h("p", { class: "note", role: kind === "bad" ? "alert" : "status", data: { kind } }, words);
  (document.querySelector("dialog[open]") ?? document.body).append(element);
  setTimeout(() => element.remove(), kind === "bad" ? 12000 : 5000);
}
