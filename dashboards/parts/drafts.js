// What was typed into a form and not sent is there again when the form is opened again on this screen.

import { h } from "./dom.js";

const KEPT_MS = 30 * 60 * 1000;
const storeKey = (key) => `draft ${location.pathname}${location.search} ${key}`;

/** Where a browser bars what pages store, or has no room for it, nothing is kept. */
function stored(use) {
  try {
    return use(sessionStorage);
  } catch (problem) {
    console.info(problem.message);
    return null;
  }
}

/** Keeps what is typed into a form under that name; answers what forgets it once the form was sent. */
export function keepDraft(form, key) {
  const name = storeKey(key);
  const first = typed(form);
  if (restore(form, name, first)) form.querySelector(".fault.general")?.before(restored(form, name, first));
  const keep = () => {
    const now = typed(form);
    const changed = Object.fromEntries(
      Object.entries(now).filter(([field, value]) => value !== first[field]),
    );
    if (Object.keys(changed).length === 0) forget(name);
    else stored((store) => store.setItem(name, JSON.stringify({ at: Date.now(), first, changed })));
  };
  form.addEventListener("input", keep);
  form.addEventListener("change", keep);
  return () => forget(name);
}

const forget = (name) => stored((store) => store.removeItem(name));

/** Secrets are never kept. */
function typed(form) {
  const inputs = [...form.querySelectorAll("[name]")].filter((each) => each.type !== "password");
  return Object.fromEntries(inputs.map((each) => [each.name, each.value]));
}

/** Choices first, since they may bring other fields with them. What the page offers anew by now stays. */
function restore(form, name, first) {
  const kept = JSON.parse(stored((store) => store.getItem(name)) ?? "null");
  if (!kept || Date.now() - kept.at > KEPT_MS) return false;
  const entries = Object.entries(kept.changed).filter(
    ([field]) => !(field in first) || first[field] === (kept.first[field] ?? ""),
  );
  const put = (chosen) => entries.map(([field, value]) => set(form, field, value, chosen)).some(Boolean);
  const choices = put(true);
  return put(false) || choices;
}

function set(form, field, value, choices) {
  const input = [...form.querySelectorAll("[name]")].find((each) => each.name === field);
  if (!input || (input.tagName === "SELECT") !== choices || input.value === value) return false;
  input.value = value;
  input.dispatchEvent(new Event("change", { bubbles: true }));
  return true;
}

function restored(form, name, first) {
  const clear = h("button", { class: "button plain", type: "button" }, "Start over");
  const line = h(
    "p",
    { class: "draft-line", role: "status" },
    "What was typed before is here again. ",
    clear,
  );
  clear.addEventListener("click", () => {
    for (const [field, value] of Object.entries(first)) {
      set(form, field, value, true);
      set(form, field, value, false);
    }
    forget(name);
    line.remove();
    form.querySelector("[name]")?.focus();
  });
  return line;
}
