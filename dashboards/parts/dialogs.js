// Native dialogs that ask and act; they stay open and say why when the service refuses.

import { focusAgain, focusFirst, unfocused } from "./dialog-focus.js";
import { h } from "./dom.js";
import { keepDraft } from "./drafts.js";
import { showFaults, values } from "./forms.js";
import { followChoiceKeys } from "./keys.js";

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
      answer(result);
      focusAgain(opener);
    });
    fill(close);
    document.body.append(dialog);
    dialog.showModal();
    focusFirst(dialog);
    showBusy();
    raiseNotes();
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

/** What came of an action, above everything else on the page until it is read: each until it is tapped. */
export function note(said, kind = "good") {
  const text = h("p", { role: kind === "bad" ? "alert" : "status" });
  const close = h("button", { class: "button plain", type: "button" }, "OK");
  const element = h("div", { class: "note", data: { kind } }, text, close);
  element.addEventListener("click", () => read([element]));
  for (const same of notes()) if (same.firstChild.textContent === said) same.remove();
  place().prepend(element);
  const well = notes().filter((each) => each.dataset.kind !== "bad");
  for (const old of well.slice(MOST_KEPT)) old.remove();
  raiseNotes();
  text.textContent = said;
}

/** Of results that went well; trouble stays until it is read, however much follows. */
const MOST_KEPT = 3;

/** One on small screens and beside an instrument, where more would cover what is read from afar. */
const mostSeen = () => (innerHeight < 500 || innerWidth < 900 || document.querySelector(".instrument") ? 1 : 3);
const notes = () => [...document.querySelectorAll(".note")];

function place() {
  const there = document.querySelector(".notes");
  if (there) return there;
  const all = h("button", { class: "button", type: "button", on: { click: () => read(notes()) } }, "All read");
  const count = h("p", { class: "row" }, h("span", {}), all);
  const made = h("div", { class: "notes", popover: "manual", role: "region", "aria-label": "Not read yet" }, count);
  document.body.append(made);
  return made;
}

function read(which) {
  which.forEach((each) => each.remove());
  countNotes();
}

/**
 * The newest are seen, at most three; those behind them come back as these are read. Where only one is seen it
 * says how many are behind it, and nothing hangs below it over the verdict.
 */
function countNotes() {
  const all = notes();
  if (all.length === 0) return document.querySelector(".notes")?.remove();
  all.forEach((each, i) => (each.hidden = i >= mostSeen()));
  const behind = all.length - mostSeen();
  const row = place().lastChild;
  row.hidden = all.length === 1 || mostSeen() === 1;
  all.forEach((each) => delete each.firstChild.dataset.behind);
  if (mostSeen() === 1 && behind > 0) all[0].firstChild.dataset.behind = behind;
  row.firstChild.textContent = behind > 0 ? `and ${behind} more not read yet` : "";
}

addEventListener("resize", countNotes);

/** Above a dialog that opened since, too. */
function raiseNotes() {
  countNotes();
  const there = document.querySelector(".notes");
  if (there?.matches(":popover-open")) there.hidePopover();
  there?.showPopover();
}
