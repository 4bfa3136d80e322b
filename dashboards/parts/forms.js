// Fields with their unit, hint and fault; faults of a problem document go to the field they name.

import { h } from "./dom.js";
import { entered, enteredMm, inUnit, plainNumber, unit } from "./units.js";

let number = 0;

/**
 * A labelled field. kind: text, number, length (mm in and out, shown in the viewer's unit), choice
 * (options: [[value, words], …]), date, moment (date and time of day), long (several lines), secret, pin (digits).
 */
export function field({
  name,
  label,
  kind = "text",
  value = "",
  hint = "",
  options = [],
  required = false,
  suffix = "",
}) {
  const id = `field-${++number}`;
  const before = kind === "length" && typeof value === "number" ? value : null;
  const common = {
    id,
    name,
    "data-kind": kind,
    "data-mm": before,
    "data-before": before === null ? null : shown(kind, value),
    "aria-describedby": `${id}-hint ${id}-fault`,
    "aria-required": required && "true",
  };
  const input = control(kind, common, shown(kind, value), options);
  const after = kind === "length" ? unit() : suffix;
  return h(
    "div",
    { class: "field" },
    h("label", { for: id }, label),
    after ? h("div", { class: "with-unit" }, input, h("span", { class: "small" }, after)) : input,
    h("p", { class: "hint", id: `${id}-hint`, hidden: !hint }, hint),
    h("p", { class: "fault", id: `${id}-fault` }),
  );
}

function control(kind, common, value, options) {
  if (kind === "choice") {
    return h(
      "select",
      common,
      options.map(([each, words]) =>
        h("option", { value: each, selected: String(each) === String(value) }, words),
      ),
    );
  }
  if (kind === "long") return h("textarea", common, value);
  const types = { date: "date", moment: "datetime-local", secret: "password", pin: "password" };
  const numeric = kind === "number" || kind === "length";
  return h("input", {
    ...common,
    value,
    type: types[kind] ?? "text",
    inputmode: kind === "pin" ? "numeric" : numeric && "decimal",
    autocomplete: "off",
    enterkeyhint: "next",
  });
}

function shown(kind, value) {
  if (value === null || value === undefined) return "";
  if (kind === "length" && value !== "") return String(Number(inUnit(value).toFixed(6)));
  return typeof value === "number" ? plainNumber(value) : value;
}

/** New options of a choice, with what was chosen kept where it is still there. */
export function options(part, choices, wanted) {
  const select = part.querySelector("select");
  const chosen = wanted ?? select.value;
  const same =
    [...select.options].map((each) => `${each.value} ${each.text}`).join() ===
    choices.map(([value, words]) => `${value} ${words}`).join();
  if (same) return;
  select.replaceChildren(
    ...choices.map(([value, words]) => h("option", { value, selected: value === chosen }, words)),
  );
}

/** The values of a form by name; empty numbers are null, what is no number stays the text typed. */
export function values(form) {
  const all = {};
  for (const input of form.querySelectorAll("[name]")) all[input.name] = valueOf(input);
  return all;
}

// A length that was left as it stood is the one that was given, whatever the unit rounded.
function valueOf({ dataset, value }) {
  if (dataset.before !== undefined && dataset.before === value) return Number(dataset.mm);
  const number = { number: entered, length: enteredMm }[dataset.kind]?.(value);
  if (number === undefined) return value.trim();
  return Number.isNaN(number) ? value.trim() : number;
}

/** Takes faults away, or shows those of a problem; the first faulty field gets the focus. */
export function showFaults(form, problem = null) {
  form.querySelectorAll("[aria-invalid]").forEach((each) => each.removeAttribute("aria-invalid"));
  form.querySelectorAll(".fault").forEach((each) => {
    each.textContent = "";
  });
  if (!problem) return;
  const homeless = problem.faults.filter((fault) => !put(form, fault));
  if (problem.faults.length) missing(form);
  const words = problem.faults.length === 0 ? problem.message : homeless.map(sentence).join(" ");
  const general = form.querySelector(".fault.general");
  if (general) general.textContent = words;
  form.querySelector("[aria-invalid]")?.focus();
}

// The service may stop at the first field that is missing; all of them are marked.
function missing(form) {
  [...form.querySelectorAll("[aria-required='true']:not([aria-invalid])")]
    .filter((each) => each.value.trim() === "")
    .forEach(({ name }) => put(form, { field: name, problem: "is missing", allowed: "" }));
}

function put(form, fault) {
  const input = [...form.querySelectorAll("[name]")].find(
    (each) => each.name === fault.field || fault.field.startsWith(`${each.name}[`),
  );
  if (!input) return false;
  input.setAttribute("aria-invalid", "true");
  document.getElementById(`${input.id}-fault`).textContent = atField(fault);
  return true;
}

function atField({ problem, allowed }) {
  return `${capital(problem)}.${allowed ? ` Allowed: ${allowed}.` : ""}`;
}

/** Of a file what is wrong in it is named, which no field shows. */
function sentence({ field: name, value, problem, allowed }) {
  return `${capital(name === "csv" ? value : name)} ${problem}.${allowed ? ` Needed: ${allowed}.` : ""}`;
}

const capital = (words) => `${words[0].toUpperCase()}${words.slice(1)}`;
