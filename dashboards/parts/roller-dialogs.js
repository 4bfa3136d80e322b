// What is asked when the rollers were moved. The number before the move is asked for, never assumed: whoever
// moved them in between without a record is found out by it.

import { get } from "./api.js";
import { askChoice, askForm, note } from "./dialogs.js";
import { h } from "./dom.js";
import { field } from "./forms.js";
import { act } from "./identity.js";
import { entered, plainNumber } from "./units.js";

const CARE = "Rollers stopped and drive locked out? Machine manual and local rules first.";
/** Settings that differ by less are the same, where the step of the scale is not known. */
const SAME = 1e-9;
/** A move so many times as large as advised is asked about, and a number so many times the one recorded last. */
const MUCH = 5;

/** A number on the scale: to its step, and no longer than it is, as in the service's own words. */
export function number(value, scale) {
  const step = scale?.step > 0 ? scale.step : 0.001;
  const places = [0, 1, 2, 3, 4, 5, 6].find(
    (n) => Math.abs(step * 10 ** n - Math.round(step * 10 ** n)) < 1e-6,
  );
  return plainNumber(Number(value.toFixed(places ?? 6))).replace("-", "−");
}

const named = (scale, rest, plain) => (scale?.described ? `${capital(scale.name)} ${rest}` : plain);
const capital = (text) => `${text[0].toUpperCase()}${text.slice(1)}`;

/** Any correction, from the menu: nothing is filled in that was not read. */
export const correction = (bench) => byHand(bench, { amount: null, afterReadingId: null });

/**
 * The advised correction, or one that was forgotten: where the scale's number is known, one more tap says that
 * it stood there and records the move.
 */
export function correct(bench, { amount, afterReadingId = null }) {
  const { setting, scale } = bench.summary.correction;
  if (setting === null || amount === null) return byHand(bench, { amount, afterReadingId });
  const after = setting + amount;
  const from = number(setting, scale);
  const to = number(after, scale);
  return askChoice({
    title: `Record the correction: ${from} to ${to}`,
    care: CARE,
    intro: `The ${scale.name} showed ${from} after the last correction. Did it show that before this one?`,
    choices: [
      ["yes", `Yes: it showed ${from} and now shows ${to}`],
      ["no", "No, or I moved it by another amount"],
    ],
    act(said) {
      if (said === "yes")
        return record(bench, { settingBefore: setting, settingAfter: after, afterReadingId });
      setTimeout(() => byHand(bench, { amount, afterReadingId }));
      return true;
    },
  });
}

async function byHand(bench, { amount, afterReadingId }) {
  const { machine, scale, setting } = bench.summary.correction ?? {};
  const lastRecorded = setting === null ? await lastShown(machine) : null;
  const suffix = scale?.described ? scale.unit : "";
  const known = setting === null || setting === undefined ? "" : number(setting, scale);
  const before = field({
    name: "settingBefore",
    label: named(scale, "before", "Setting before"),
    kind: "number",
    suffix,
    hint: known
      ? `After the last correction it showed ${known}. Read it again.`
      : lastRecorded === null
        ? ""
        : `Last recorded on this machine: ${number(lastRecorded, scale)}.`,
  });
  const after = field({
    name: "settingAfter",
    label: named(scale, "after", "Setting after"),
    kind: "number",
    suffix,
    hint: amount === null ? "" : `Advised: ${signed(amount, scale)}. Filled in from the number before.`,
  });
  if (amount !== null) follow(before, after, amount, scale);
  return askForm({
    title: "Correction at the rollers",
    care: CARE,
    confirm: "Record the correction",
    intro:
      "The chart starts anew here. With both numbers Chordlog learns what a step does; or leave both empty. " +
      "Chordlog never moves the machine.",
    fields: [h("div", { class: "fields" }, before, after), field({ name: "note", label: "Remark" })],
    async act(typed) {
      await sure(doubts(typed, { scale, setting, lastRecorded, amount }));
      return record(bench, { ...typed, afterReadingId });
    },
  });
}

/** The number recorded of the newest move, in any job on the machine; null where none was recorded. */
async function lastShown(machine) {
  const events = await get(`api/machines/${encodeURIComponent(machine)}/events`);
  const shown = events.filter((each) => each.settingAfter !== null && each.takenBackReason === null);
  return shown.at(-1)?.settingAfter ?? null;
}

const signed = (amount, scale) => `${amount > 0 ? "+" : ""}${number(amount, scale)}`;

/** The number after follows the one before, until it is typed itself. */
function follow(before, after, amount, scale) {
  const [from, to] = [before, after].map((each) => each.querySelector("input"));
  let own = false;
  to.addEventListener("input", () => {
    own = true;
  });
  from.addEventListener("input", () => {
    const typed = entered(from.value);
    if (!own && typed !== null && !Number.isNaN(typed))
      to.value = number(typed + amount, scale).replace("−", "-");
  });
}

/** What about these numbers is more likely a slip than a correction. */
function doubts({ settingBefore: from, settingAfter: to }, { scale, setting, lastRecorded, amount }) {
  if (typeof from !== "number" || typeof to !== "number") return [];
  const found = [];
  const known = setting !== null && setting !== undefined;
  if (known && Math.abs(from - setting) > Math.max(scale.step, SAME))
    found.push(
      `It showed ${number(setting, scale)} after the last correction, and ${number(from, scale)} before this one: ` +
        "were the rollers moved in between?",
    );
  if (lastRecorded !== null && far(from, lastRecorded))
    found.push(
      `Last recorded on this machine was ${number(lastRecorded, scale)}, and ${number(from, scale)} now: ` +
        "is every digit right?",
    );
  if (amount && (to - from) * amount < 0) found.push("That is the other way than advised.");
  if (amount && Math.abs(to - from) > MUCH * Math.abs(amount))
    found.push(`That is ${Math.round(Math.abs((to - from) / amount))} times as far as advised.`);
  if (to === from) found.push("Both numbers are the same: nothing moved.");
  return found;
}

/** As where a digit or the decimal mark was left out. */
function far(one, other) {
  const times = Math.abs(one / other);
  return times > MUCH || (times > 0 && times < 1 / MUCH);
}

async function sure(found) {
  if (found.length === 0) return;
  const said = await askChoice({
    title: "Is that right?",
    intro: found.join(" "),
    choices: [
      ["yes", "Yes, record it like that"],
      ["no", "No, let me change the numbers"],
    ],
    act: (each) => each,
  });
  if (said !== "yes") throw { message: "Nothing is recorded yet.", faults: [] };
}

async function record({ path, load }, typed) {
  const done = await act("POST", `${path}/events`, { kind: "CORRECTION", ...typed });
  if (done) note("Correction recorded. Measure the next piece.");
  await load();
  return true;
}
