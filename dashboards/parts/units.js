// Lengths come in mm and are shown in the viewer's unit; numbers with a true minus sign.

import { viewer } from "./viewer.js";

const MM_PER_INCH = 25.4;

export const unit = () => (viewer("unit") === "inch" ? "in" : "mm");
/** As the service is asked for it. */
export const unitAsked = () => (inches() ? "inch" : "mm");
export const inches = () => unit() === "in";
export const inUnit = (mm) => (inches() ? mm / MM_PER_INCH : mm);
/** To the nanometre, so that 70.4 in is 1788.16 mm and not a digit more. */
export const toMm = (value) => (inches() ? Math.round(value * MM_PER_INCH * 1e6) / 1e6 : value);

/** With so many decimals, -1 for tens. */
export function fixed(value, digits) {
  if (value === null || value === undefined) return "–";
  const text = digits < 0 ? tens(value, 10 ** -digits) : value.toFixed(digits);
  return Number(text) === 0 ? text.replace("-", "") : text.replace("-", "−");
}

const tens = (value, whole) => (whole * Math.round(value / whole)).toFixed(0);

/** Of a length with so many in mm. */
export const lengthDigits = (digits) => (inches() ? digits + 2 : digits);

/** A length without its unit; digits are those it has in mm. */
export function length(mm, digits) {
  return mm === null || mm === undefined ? "–" : fixed(inUnit(mm), lengthDigits(digits));
}

/** A length as entered, with at most four decimals (small inches: two digits) and no zeros at the end. */
export function plainLength(mm) {
  if (mm === null || mm === undefined) return "–";
  const value = inUnit(mm);
  const text = inches() && Math.abs(value) < 0.01 ? value.toPrecision(2) : value.toFixed(4);
  return String(Number(text)).replace("-", "−");
}

/** A number without the dust of binary arithmetic. */
export const plainNumber = (value) => String(Number(value.toPrecision(10)));

/** A value of that unit (mm, 1/km, or none of lengths) for the viewer: { value, unit }. */
export function shownIn(value, given) {
  if (!inches()) return { value, unit: given };
  if (given === "mm") return { value: inUnit(value), unit: "in" };
  return given === "1/km"
    ? { value: (value * MM_PER_INCH) / 1000, unit: "per 1,000 in" }
    : { value, unit: given };
}

/** A number and its unit stay on one line, here and wherever a page says both. */
export const withUnit = (text) => (text === "–" ? text : `${text}\u00a0${unit()}`);

/** What a viewer typed, as mm; NaN where it is no number, null where it is empty. */
export function enteredMm(text) {
  const number = entered(text);
  return number === null ? null : toMm(number);
}

/** The same of any number; NaN too where a comma could as well divide thousands, which the service refuses. */
export function entered(text) {
  const plain = text.trim().replace("−", "-");
  if (plain === "") return null;
  const number = plain.replace(",", ".");
  return NUMBER.test(number) && !THOUSANDS.test(plain) ? Number(number) : Number.NaN;
}

const NUMBER = /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i;
const THOUSANDS = /^[-+]?[1-9]\d{0,2},\d{3}$/;

/** Decimals that an uncertainty supports, in the viewer's unit: as measure.Lengths.decimals in Java. */
function digitsFor(halfWidth) {
  if (!(halfWidth > 0) || !Number.isFinite(halfWidth)) return 3;
  const subtracted = 1 + 1e-9; // 1800.1 less 1800 is a little under 0.1, and has the places of 0.1
  return Math.max(-6, Math.min(6, 1 - Math.floor(Math.log10(halfWidth * subtracted))));
}

/** An uncertainty without its unit: its two significant digits. */
export const uncertainty = (mm) =>
  mm === null || mm === undefined ? "–" : fixed(inUnit(mm), digitsFor(inUnit(mm)));

/** A radius { radiusMm, lowerMm, upperMm } in figures: { value, plusMinus, digits }, without unit. */
export function radius(estimate) {
  if (estimate.radiusMm === null) return { value: "flat", plusMinus: "", digits: 0 };
  const down = inUnit(estimate.radiusMm - estimate.lowerMm);
  const up = estimate.upperMm === null ? null : inUnit(estimate.upperMm - estimate.radiusMm);
  const digits = digitsFor(up === null ? down : (up + down) / 2);
  return { value: fixed(inUnit(estimate.radiusMm), digits), plusMinus: plusMinus(up, down, digits), digits };
}

function plusMinus(up, down, digits) {
  if (up === null) return `+∞ −${fixed(down, digits)}`;
  if (Math.abs(up - down) < 0.05 * (up + down)) return `±\u00a0${fixed((up + down) / 2, digits)}`;
  return `+${fixed(up, digits)} −${fixed(down, digits)}`;
}
