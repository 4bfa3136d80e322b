// Which job a station works on, or a piece belongs to: one of those that are open, or a new one.

import { get } from "./api.js";
import { act } from "./identity.js";
import { askChoice, note } from "./dialogs.js";
import { jobAsOneOfSome } from "./job-words.js";

/** Without an open job for this station the form of a new one is next. */
export async function chooseJob({ name, path, load }) {
  return askJob(name, {
    title: "Which job is on the machine?",
    async act(jobId) {
      if (await act("POST", `${path}/job`, { jobId })) note("Job chosen.");
      await load();
      return true;
    },
  });
}

/** A depth far from the target is a piece of that job, which the station works on from then on. */
export async function anotherJob({ name, path, summary, load }) {
  return askJob(name, {
    title: "Which job is it a piece of?",
    intro: "The station works on that job from then on, and the piece counts there.",
    without: summary.job?.id,
    async act(jobId) {
      await act("POST", `${path}/another`, { jobId });
      await load();
      return true;
    },
  });
}

/** The job that pieces of another one of this station belong to: its id, null when given up. */
export async function jobOfPieces({ station, id }) {
  return askJob(station, {
    title: "Which job do the pieces belong to?",
    intro: "Open jobs of this station. How many pieces go is asked next.",
    without: id,
    act: (jobId) => jobId,
  });
}

async function askJob(name, { title, intro, without, act }) {
  const jobs = (await get("api/jobs?state=OPEN&limit=200")).items.filter(
    (job) => job.station === name && job.id !== without,
  );
  const form = `job-form.html?station=${encodeURIComponent(name)}`;
  if (jobs.length === 0) {
    location.href = form;
    return null;
  }
  return askChoice({
    title,
    intro,
    choices: jobs.map((job) => [job.id, job.name, jobAsOneOfSome(job)]),
    other: [
      [
        "Create a job…",
        () => {
          location.href = form;
        },
      ],
    ],
    act,
  });
}
