// What people do to an alert, each asked for with what it needs. Who acted on an older state is told the present one.

import { askForm, note } from "./dialogs.js";
import { serviceNow } from "./api.js";
import { field } from "./forms.js";
import { act } from "./identity.js";
import { minuteWords } from "./times.js";

const CARE =
  "Work on the machine only with the rollers stopped and the drive locked out; its manual and local rules " +
  "come first.";

const HOURS = [1, 4, 8, 24];

const word = () => field({ name: "word", label: "A word on it", hint: "Others read it here; may stay empty" });
const reason = () => field({ name: "reason", label: "Why (kept in the record)", required: true });

/** By the name of the move: where it is sent, what is asked first, and what it means. */
const MOVES = {
  ACKNOWLEDGE: {
    path: "acknowledgement",
    fields: () => [word()],
    intro: ({ present }) =>
      present
        ? "Says that you know of it. It stays on this page until it is over."
        : "It went away by itself. With this it is over.",
  },
  ASSIGN: {
    path: "assignment",
    fields: ({ assignedTo }) => [
      field({ name: "to", label: "Whose it is from now on", value: assignedTo, hint: "A name; empty: nobody’s" }),
      word(),
    ],
  },
  SHELVE: {
    path: "shelf",
    fields: () => [
      reason(),
      field({ name: "minutes", label: "For how long", kind: "choice", options: HOURS.map(shelf), value: 60 }),
    ],
    intro: () => "It does not wait for anybody until then, and comes back by itself.",
    body: ({ reason: why, minutes }) => ({ reason: why, minutes: Number(minutes) }),
  },
  UNSHELVE: { path: "shelf/end", fields: () => [word()] },
  TAKE_OUT_OF_SERVICE: {
    path: "out-of-service",
    care: CARE,
    fields: () => [reason()],
    intro: () =>
      "Says that it is being repaired. It ends by an entry in the log book of the machine, by a set-up, or here.",
  },
  PUT_BACK_IN_SERVICE: {
    path: "out-of-service/end",
    fields: () => [word()],
    intro: () => "Says that the repair is over. What is still wrong is raised anew.",
  },
};

function shelf(hours) {
  const until = new Date(serviceNow() + hours * 3600000);
  const words = hours === 1 ? "1 hour" : hours === 8 ? "8 hours, a shift" : `${hours} hours`;
  return [60 * hours, `${words}, until ${minuteWords(until)}${hours === 24 ? " tomorrow" : ""}`];
}

/** Asks and does it; then calls done(), so that what is pressed next knows of it, and says that it is done. */
export async function move(which, words, alert, done) {
  const { path, fields, intro, care, body } = MOVES[which];
  let known = alert;
  const answer = await askForm({
    title: `${words}: ${alert.statement.word}, ${alert.where}`,
    intro: intro?.(alert),
    care,
    fields: fields(alert),
    confirm: words,
    act: async (typed) => {
      try {
        return await act("POST", `api/alerts/${alert.id}/${path}`, body ? body(typed) : typed, known.revision);
      } catch (problem) {
        if (!problem.present) throw problem;
        known = problem.present;
        throw meanwhile(known);
      }
    },
  });
  if (answer === null) return;
  try {
    await done();
  } finally {
    note(`${alert.statement.word}: ${lower(answer.stateWords)}.`);
  }
}

/** Names of people and of workshop computers stay as they are. */
const lower = (words) => words[0].toLowerCase() + words.slice(1);

function meanwhile({ stateWords, assignedTo, note: said }) {
  const more = [assignedTo && `It is ${assignedTo}’s.`, said && `Said last: ${said}.`].filter(Boolean).join(" ");
  return {
    faults: [],
    message: `It changed meanwhile. Now: ${stateWords}. ${more} Press again if you still mean it.`,
  };
}
