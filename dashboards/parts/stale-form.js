// A form of what somebody else changed meanwhile: a fresh one shows it as it is now, and keeps what was typed.

/** Each field of a form as it was filled, by name; kept from when it was. */
export const asFilled = (form) => new Map(fields(form).map((input) => [input.name, said(input)]));

/**
 * Puts what was typed into the form `from`, filled as `filled` says, into `to`, which shows the present state.
 * Gives in words what somebody else changed; `thing` is what was changed, as "these settings".
 */
export function keepTyped({ from, filled, to }, thing) {
  const now = asFilled(to);
  const lost = fields(from)
    .filter((input) => input.value !== filled.get(input.name)?.value)
    .filter((input) => !retype(to, input))
    .map((input) => labelOf(input));
  const changes = [...new Set([...filled.keys(), ...now.keys()])].flatMap((name) =>
    change(filled.get(name), now.get(name)),
  );
  const what = changes.length ? changes.join("; ") : "something that is not on this form";
  const gone = lost.length ? ` There is no place any more for what you typed at ${lost.join(", ")}.` : "";
  return (
    `Somebody changed ${thing} after this form was opened: ${what}. Nothing of yours was saved yet. What you typed ` +
    `is still here, all other fields show what is there now.${gone} Look at it, then save again.`
  );
}

const fields = (form) => [...form.querySelectorAll("[name]")];
const labelOf = (input) => input.closest(".field").querySelector("label").textContent;

function said(input) {
  const unit = input.closest(".with-unit")?.querySelector(".small").textContent ?? "";
  const text = input.selectedOptions ? (input.selectedOptions[0]?.text ?? "") : input.value;
  return { label: labelOf(input), value: input.value, text: text === "" ? "empty" : `${text}\u00a0${unit}`.trim() };
}

/** Whether the form has that field. */
function retype(form, typed) {
  const input = fields(form).find(({ name }) => name === typed.name);
  if (!input) return false;
  input.value = typed.value;
  input.dispatchEvent(new Event("change"));
  input.closest("details")?.setAttribute("open", "");
  return true;
}

function change(before, now) {
  const [was, is] = [before?.text ?? "not there", now?.text ?? "not there any more"];
  return was === is ? [] : [`${(now ?? before).label} was ${was}, is now ${is}`];
}
