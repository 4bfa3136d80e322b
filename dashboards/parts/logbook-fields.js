// The fields of an entry in a machine's log book.

import { h } from "./dom.js";
import { field } from "./forms.js";
import words from "../api/words.js";

export function fields(entry) {
  return [
    h(
      "div",
      { class: "fields" },
      field({
        name: "kind",
        label: "Work",
        kind: "choice",
        options: Object.entries(words.work),
        value: entry.kind ?? Object.keys(words.work)[0],
      }),
      field({ name: "roller", label: "Which roller", value: entry.roller ?? "", hint: "Empty: the whole machine" }),
    ),
    h(
      "div",
      { class: "fields" },
      field({ name: "before", label: "Before", value: entry.before ?? "", hint: "Words or a figure with its unit" }),
      field({ name: "after", label: "After", value: entry.after ?? "" }),
    ),
    field({ name: "note", label: "Remark", kind: "long", value: entry.note ?? "" }),
    h(
      "div",
      { class: "fields" },
      field({
        name: "doneAt",
        label: "Done on",
        kind: "moment",
        value: entry.doneAt ? local(entry.doneAt) : "",
        hint: "Empty: just now",
      }),
      field({ name: "doneBy", label: "Done by", value: entry.doneBy ?? "", hint: "Empty: you" }),
    ),
  ];
}

export const setUp = () =>
  field({
    name: "setUp",
    label: "Were the rollers moved or changed?",
    kind: "choice",
    options: [
      ["no", "No, they are as before"],
      ["yes", "Yes: start the charts of the job in progress anew"],
    ],
    value: "no",
  });

export const backInService = () =>
  field({
    name: "backInService",
    label: "Is the repair over?",
    kind: "choice",
    options: [
      ["yes", "Yes: its alerts are back in service"],
      ["no", "No, it goes on"],
    ],
    value: "yes",
  });

export const why = () => field({ name: "why", label: "Why (kept in the record)", required: true });

/** As the service wants it; a time that was not changed keeps its seconds. */
export function work({ kind, roller, before, after, note: more, doneAt, doneBy }, entry = {}) {
  const same = entry.doneAt && doneAt === local(entry.doneAt);
  const at = same ? entry.doneAt : doneAt && new Date(doneAt).toISOString();
  return { kind, roller, before, after, note: more, doneAt: at, doneBy };
}

/** In the viewer's zone, to the minute, as the field for it wants. */
function local(iso) {
  const at = new Date(iso);
  return new Date(at - at.getTimezoneOffset() * 60000).toISOString().slice(0, 16);
}
