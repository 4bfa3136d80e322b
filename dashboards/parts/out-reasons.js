// Why a reading is taken out of the statistics: the usual reasons in one tap, any other typed.

import { askChoice, askForm } from "./dialogs.js";
import { field } from "./forms.js";

const REASONS = [
  "Bridge moved or stood skew",
  "Dirt or scale under a foot",
  "Wrong place on the piece",
  "Not a piece of this job",
  "The zero was wrong",
  "Same piece measured twice",
];

/** title and intro as a dialog has them; confirm: the word of the button; act(reason) does it. */
export function askWhyOut({ title, intro, confirm, act }) {
  return new Promise((answer) => {
    let typing = false;
    const typed = () => {
      typing = true;
      askForm({
        title,
        intro,
        confirm,
        fields: [field({ name: "reason", label: "Reason (kept in the record)", required: true })],
        act: ({ reason }) => act(reason),
      }).then(answer);
    };
    askChoice({
      title,
      intro,
      choices: REASONS.map((each) => [each, each]),
      other: [["Another reason…", typed]],
      act,
    }).then((chosen) => {
      if (!typing) answer(chosen);
    });
  });
}
