// What was typed into the form of a job: as the service takes it, and beside what somebody else changed.

import { values } from "./forms.js";
import { inUnit, plainNumber, unit } from "./units.js";

/** Values by dotted name as an object; positions as a list, the size that the grouping implies. */
export function nested(flat) {
  const body = {};
  for (const [name, value] of Object.entries(flat)) {
    if (name === "tolerance") continue;
    const [first, second] = name.split(".");
    if (second) (body[first] ??= {})[second] = value;
    else body[first] = value;
  }
  body.plan.positions = body.plan.positions
    .split(",")
    .map((each) => each.trim())
    .filter(Boolean);
  if (body.plan.subgroups === "PIECE") body.plan.subgroupSize = Math.max(2, body.plan.positions.length);
  if (body.plan.subgroups === "INDIVIDUAL") body.plan.subgroupSize = 1;
  return body;
}

/**
 * What somebody else changed since the form was filled, in words. Fields that were left alone take the present
 * state, so that saving again changes only what was typed here.
 */
export function changedMeanwhile(form, job, now) {
  const [before, typed] = [{ ...job }, values(form)];
  Object.assign(job, now);
  const kind = form.querySelector("[name='section.kind']");
  if (kind.value === before.section.kind) put(kind, now.section.kind);
  const parts = [...form.querySelectorAll("[name]")]
    .filter((input) => stated(before, input) !== stated(now, input))
    .map((input) => {
      if (input !== kind && leftAlone(typed, before, input.name)) put(input, at(now, input.name));
      return `${labelOf(input)} was ${stated(before, input)}, is now ${stated(now, input)}`;
    });
  const what = parts.length ? parts.join("; ") : "something that is not on this form";
  return (
    `Somebody changed this job after this form was opened: ${what}. Nothing of yours was saved yet. What you ` +
    "typed is still here, all other fields show the job as it is now. Look at it, then save again."
  );
}

const at = (job, name) => name.split(".").reduce((part, key) => part?.[key], job);
const labelOf = (input) => input.closest(".field").querySelector("label").textContent;
const plain = (value) => (Array.isArray(value) ? value.join(", ") : String(value ?? ""));
const leftAlone = (typed, before, name) => plain(typed[name]) === plain(at(before, name));

/** Shows a value as the form did when it was filled. */
function put(input, value) {
  const isLength = input.dataset.kind === "length" && typeof value === "number";
  input.value = isLength ? String(Number(inUnit(value).toFixed(6))) : plain(value);
  if (isLength) Object.assign(input.dataset, { mm: value, before: input.value });
  input.dispatchEvent(new Event("change"));
}

/** A field of a job in words; a length in the viewer's unit. */
function stated(job, { name, dataset }) {
  const value = at(job, name);
  if (value === null || value === undefined || value === "") return "empty";
  return dataset.kind === "length" && typeof value === "number"
    ? `${plainNumber(inUnit(value))}\u00a0${unit()}`
    : plain(value);
}
