// A piece is measured once more: rolled again, which is another pass, or only measured again.

import { act } from "./identity.js";
import { askChoice, note } from "./dialogs.js";

const MEASURED_AGAIN = "Measured again without rolling";

export function again(bench) {
  const { piece, pass, position } = bench.summary.lastReading;
  return askChoice({
    title: `Piece ${piece}, pass ${pass}: what happened?`,
    choices: [
      ["rolled", "Rolled again", `pass ${pass + 1}; all passes are recorded, the last one counts`],
      [
        "measured",
        "Only measured again",
        `still pass ${pass}; the last reading at ${position} no longer counts`,
      ],
    ],
    act: (what) => (what === "rolled" ? rolled(bench) : measured(bench)),
  });
}

async function rolled({ path, summary, load }) {
  const { piece } = summary.lastReading;
  const place = await act("POST", `${path}/rolled-again`, { piece });
  if (place) note(`Piece ${piece}, pass ${place.pass}: measure it again. The last pass counts.`);
  await load();
  return true;
}

async function measured({ path, summary, load }) {
  const { id, piece, pass, position } = summary.lastReading;
  const done = await act("POST", `${path}/undo`, { reason: MEASURED_AGAIN, readingId: id });
  if (done) note(`Piece ${piece}, pass ${pass}, ${position}: measure it again. It is still the same pass.`);
  await load();
  return true;
}
