// What an operator seldom does at a station: everything that is not on a button of its own.

import { chooseJob } from "./choose-job.js";
import { askChoice, note } from "./dialogs.js";
import { correction } from "./roller-dialogs.js";
import { bridge, lot, masters, person, place, remark, setUp } from "./station-dialogs.js";

/** What is behind the last button, as far as it can be done now. */
export function more(bench, { next, again, zero: zeroing }) {
  const ways = {
    person,
    masters,
    job: chooseJob,
    lot,
    correction,
    bridge,
    place,
    setUp,
    remark,
    next,
    again,
    zero: zeroing,
  };
  const { study } = bench.summary.station;
  return askChoice({
    title: "More",
    intro: study ? STUDY_FIRST : "",
    choices: [...(zeroing ? [["zero", "Zero", "bridge on the flat"]] : []), ...choicesOf(bench), ...PAGES],
    act: (way) => {
      const station = encodeURIComponent(bench.name);
      const pages = {
        study: `study.html?id=${study?.id}`,
        gauge: `gauge.html?station=${station}`,
        wall: `wall.html?stations=${station}`,
      };
      if (pages[way]) location.href = pages[way];
      else setTimeout(() => ways[way](bench).catch((problem) => note(problem.message, "bad")));
      return true;
    },
  });
}

const STUDY_FIRST =
  "A study of the gauge is measured here. Job, bridge and masters come after it: finish or pause it first.";
const PAGES = [
  ["gauge", "Gauge", "calibration, checks, uncertainty"],
  ["wall", "Wall view", "full screen, without buttons"],
];

/** Of a study first, else of the job; while masters are measured, nothing that acts on its pieces. */
function choicesOf({ summary, gauge }) {
  const { station, job } = summary;
  const mount = ["bridge", "Bridge", "another one is on the indicator"];
  const goOn = (what) => ["masters", `Go on with the ${what}`, "masters are measured now"];
  if (station.study)
    return [
      ["study", "The study’s page", "its next step; pause it or finish it there"],
      ...(station.onMasters ? [goOn("study")] : []),
      ...(gauge.bridge ? [] : [mount]),
    ];
  const who = ["person", "Who measures", station.person ?? "nobody named yet"];
  if (station.onMasters) return [goOn("job"), mount, who];
  const masters = ["masters", "Measure masters", "the job is suspended meanwhile"];
  const open = job && job.state !== "CLOSED";
  return [
    ...(open ? [["correction", "Correction", "the rollers were set"]] : []),
    ...(open ? [["lot", "New material lot"]] : []),
    mount,
    ["job", "Choose the job"],
    ...(open ? [["place", "Choose piece and position"]] : []),
    ...(open ? [["next", "Next piece"]] : []),
    who,
    masters,
    ...(open ? ofOpenJob(summary) : []),
  ];
}

const ofOpenJob = ({ lastReading }) => [
  ...(lastReading ? [["again", "Measure again", `piece ${lastReading.piece}`]] : []),
  ["setUp", "New machine set-up", "rollers changed, machine cleaned"],
  ["remark", "Write a note"],
];
