// Stretches of a chart that are out of control, with the causes found; a cause is recorded here.

import { act } from "./identity.js";
import { askForm, note } from "./dialogs.js";
import { h, table } from "./dom.js";
import { field } from "./forms.js";
import { dateTime } from "./times.js";

/** The answers to signals of one characteristic. */
export const of = (characteristic, answers) =>
  answers.filter((each) => each.characteristic === characteristic);

/** What holds or held the verdict; recorded(spell) asks for a cause that is not found yet. */
export function spellTable(spells, answers, recorded) {
  return table(
    "Stretches out of control, the newest first",
    [
      { head: "What", kind: "lead", cell: (row) => row.words },
      { head: "Since", kind: "named", cell: (row) => dateTime(row.since) },
      { head: "Cause", kind: "new", cell: (row) => causeOf(row, answers) },
      { head: "", kind: "act", cell: (row) => (row.answered ? "" : answerButton(row, recorded)) },
    ],
    spells,
    "lines",
  );
}

/** A press while a cause is recorded, and until the table is drawn anew, does nothing: it would be recorded twice. */
function answerButton(spell, recorded) {
  let asked = false;
  const press = async () => {
    if (asked) return;
    asked = true;
    await recorded(spell);
    asked = false;
  };
  return h(
    "button",
    {
      class: "button changes",
      type: "button",
      "aria-label": `Record the cause: ${spell.words}`,
      on: { click: press },
    },
    "Record the cause",
  );
}

/** Whether a cause was recorded. */
export async function askCause(jobId, characteristic, { words: what, chart, readingId }) {
  const done = await askForm({
    title: "What was the cause?",
    intro: `${what}. With its cause found it no longer holds the verdict; it stays in the record.`,
    confirm: "Record the cause",
    fields: [
      field({ name: "cause", label: "Cause", kind: "long", required: true }),
      field({ name: "action", label: "What was done about it", kind: "long" }),
    ],
    act: (typed) =>
      act("POST", `api/jobs/${jobId}/signal-answers`, { characteristic, chart, readingId, ...typed }),
  });
  if (done) note("Cause recorded.");
  return Boolean(done);
}

/** The newest answer to a point of that stretch, with what was done and by whom. */
function causeOf({ answered, readingId, now }, answers) {
  const found = answered && answers.filter((each) => each.readingId <= readingId).at(-1);
  if (!found) return now ? "not found yet" : "";
  const done = found.action ? `; ${found.action}` : "";
  return h("span", { class: "kept" }, `${found.cause}${done} (${found.by}, `, dateTime(found.at), ")");
}
