// What a plant says of a workshop computer and of a machine, on its front page and on theirs.

import { serviceNow } from "./api.js";
import { h, state } from "./dom.js";
import { kindOf, told } from "./findings.js";
import { ago } from "./times.js";

/** Where the pages of a workshop computer are, seen from the front page of the plant. */
export const at = (edge, page = "") => `edges/${encodeURIComponent(edge)}/${page}`;

export const machineAt = (machine) => `machine.html?machine=${encodeURIComponent(machine)}`;

/** "12,345", as the service says it. */
export const grouped = (number) => number.toLocaleString("en");

/** "1 record", "12,345 records". */
export const counted = (number, noun) => `${grouped(number)} ${noun}${number === 1 ? "" : "s"}`;

/** Whether everything is here, and since when nothing came. */
export function delivered(edge) {
  const said = h("span", {}, ...told(edge.statement));
  return edge.seenAt === null
    ? [said]
    : [said, h("span", { class: "small" }, "Last heard ", ago(edge.seenAt, serviceNow()))];
}

/** What is to be known of it beside that. */
export function remarks(edge) {
  return [
    ...edge.remarks.map((each) => h("span", {}, ...told(each))),
    ...edge.alerts.map(alertWords),
  ];
}

export const alertWords = ({ tone, word, urgency, waits, stateWords }) =>
  waits ? state(kindOf(tone), `${urgency}: ${word}`) : state("quiet", `${word}, ${stateWords.toLowerCase()}`);

/** What there is to look at on a machine, the most urgent first. */
export function findings({ alerts, statement, rollers, jobs }, jobLink) {
  const pieces = [statement, rollers].filter((each) => each && ["BAD", "OPEN"].includes(each.tone));
  return [
    ...alerts.filter(({ waits }) => waits).map(alertWords),
    ...pieces.map((each) => h("span", {}, state(kindOf(each.tone), each.word), ` ${each.reason}`)),
    ...jobs.map((job) => h("span", {}, jobLink(job), `: ${job.words.join(" ")}`)),
  ];
}

/** The gravest of what is said of a machine. */
export function kindOfMachine({ alerts, statement, rollers, jobs }) {
  const tones = [
    statement.tone,
    rollers?.tone,
    ...alerts.filter(({ waits }) => waits).map(({ tone }) => tone),
    ...jobs.map(({ tone }) => tone),
  ];
  return kindOf(["BAD", "OPEN", "QUIET", "GOOD"].find((tone) => tones.includes(tone)) ?? "QUIET");
}

export const lastPiece = ({ pieces, lastReadingAt }) =>
  lastReadingAt === null
    ? "No piece measured yet"
    : h("span", {}, `${counted(pieces, "piece")}, the last one `, ago(lastReadingAt, serviceNow()));
