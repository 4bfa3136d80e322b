// Pieces that were measured under the wrong job go to the one they belong to.

import { act } from "./identity.js";
import { get } from "./api.js";
import { jobOfPieces } from "./choose-job.js";
import { askForm, note } from "./dialogs.js";
import { field } from "./forms.js";

const NONE =
  "No piece of this job can be moved: none counts, the newest was rolled again and is not measured yet, " +
  "or they ran through a gauge in the line.";

/** Asks for the job and the pieces, says how many readings go, and moves them. */
export async function movePieces(job, changed) {
  const toJobId = await jobOfPieces(job);
  if (!toJobId) return;
  const [to, { choices, lastReadingId }] = await Promise.all([
    get(`api/jobs/${toJobId}`),
    get(`api/jobs/${job.id}/moved-pieces`),
  ]);
  if (choices.length === 0) return note(NONE, "bad");
  const moved = await askForm({
    title: `Move to job ${to.name}?`,
    intro:
      `They count in job ${to.name} then, as if they had been measured there. ` +
      "Here they stay in the record, excluded, with where they went.",
    fields: [
      field({
        name: "firstPiece",
        label: "Which pieces",
        kind: "choice",
        options: choices.map((each) => [each.firstPiece, choice(each)]),
        value: choices[0].firstPiece,
        hint: "The newest pieces of this job: one, and all after it.",
      }),
    ],
    confirm: "Move",
    act: ({ firstPiece }) => send(job, to, { firstPiece: Number(firstPiece), lastReadingId, toJobId }),
  });
  if (!moved) return;
  note(done(job, to, moved));
  await changed();
}

/** What is wrong with the job stands below, since it was chosen before. */
async function send(job, to, body) {
  try {
    return await act("POST", `api/jobs/${job.id}/moved-pieces`, body);
  } catch (problem) {
    for (const fault of problem.faults ?? []) if (fault.field === "toJobId") fault.field = `job ${to.name}`;
    throw problem;
  }
}

function done(job, to, { firstPiece, lastPiece, readings }) {
  const still = job.active ? ` The station still measures for job ${job.name}: choose the job there.` : "";
  return `${counted(readings)} moved: now ${lower(piecesOf(firstPiece, lastPiece))} of job ${to.name}.${still}`;
}

const choice = ({ firstPiece, lastPiece, readings }) => `${piecesOf(firstPiece, lastPiece)}, ${counted(readings)}`;
const piecesOf = (first, last) => (first === last ? `Piece ${first}` : `Pieces ${first} to ${last}`);
const lower = (words) => `${words[0].toLowerCase()}${words.slice(1)}`;
const counted = (readings) => (readings === 1 ? "1 reading" : `${readings} readings`);
