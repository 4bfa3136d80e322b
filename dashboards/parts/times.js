// Times in the viewer's zone; UTC on hover.

import { h } from "./dom.js";

const clock = new Intl.DateTimeFormat(undefined, { hour: "2-digit", minute: "2-digit", second: "2-digit" });
const minute = new Intl.DateTimeFormat(undefined, { hour: "2-digit", minute: "2-digit" });
const day = new Intl.DateTimeFormat(undefined, { day: "numeric", month: "short", year: "numeric" });
const shortDay = new Intl.DateTimeFormat(undefined, { day: "numeric", month: "short" });

/** The name of the viewer's zone; UTC, by which times are shown then too, where the computer's own is unknown. */
export function zone(named = Intl.DateTimeFormat().resolvedOptions().timeZone) {
  return named && named !== "Etc/Unknown" ? named : "UTC";
}

function element(iso, words) {
  return h("time", { datetime: iso, title: utc(iso) }, words);
}

function utc(iso) {
  const [on, at] = new Date(iso).toISOString().split("T");
  return `${on} ${at.slice(0, "hh:mm:ss".length)} UTC`;
}

/** The time of day, with the day before it where that is not today. */
export function time(iso) {
  return element(iso, timeWords(iso));
}

export function timeWords(iso) {
  const at = new Date(iso);
  return today(at) ? clock.format(at) : `${shortDay.format(at)} ${minute.format(at)}`;
}

/** As time, without seconds. */
export function shortTime(iso) {
  const at = new Date(iso);
  return today(at) ? element(iso, minute.format(at)) : time(iso);
}

export function date(iso) {
  return element(iso, day.format(new Date(iso)));
}

export function dateTime(iso) {
  const at = new Date(iso);
  return element(iso, `${day.format(at)} ${minute.format(at)}`);
}

export const minuteWords = (at) => minute.format(at);

function today(at) {
  return at.toDateString() === new Date().toDateString();
}

/** "3 hours", "12 days": how far two times are apart, in the unit that fits. */
export function span(milliseconds) {
  const steps = [
    ["day", 86400000],
    ["hour", 3600000],
    ["minute", 60000],
    ["second", 1000],
  ];
  const [word, size] = steps.find(([, each]) => milliseconds >= 2 * each) ?? steps[3];
  const count = Math.max(0, Math.floor(milliseconds / size));
  return `${count} ${word}${count === 1 ? "" : "s"}`;
}

const SECOND = 1000;
const MINUTE = 60 * SECOND;
const HOUR = 60 * MINUTE;

/** How long ago that was, from the service's clock: "8 s ago", "14 min ago", "3 h ago", "2 days ago". */
export function ago(iso, now) {
  const past = Math.max(0, now - Date.parse(iso));
  return element(iso, past < 5 * SECOND ? "just now" : `${agoWords(past)} ago`);
}

function agoWords(past) {
  if (past < MINUTE) return `${Math.floor(past / SECOND)} s`;
  if (past < 2 * HOUR) return `${Math.floor(past / MINUTE)} min`;
  return past < 48 * HOUR ? `${Math.floor(past / HOUR)} h` : `${Math.floor(past / (24 * HOUR))} days`;
}
