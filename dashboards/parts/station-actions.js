// What an operator does at a station: four large buttons, the rest behind the last of them.

import { act } from "./identity.js";
import { askForm, busy, note } from "./dialogs.js";
import { h, say } from "./dom.js";
import { insteadOfJob } from "./findings.js";
import { again } from "./station-again.js";
import { chooseJob } from "./choose-job.js";
import { undo, zero } from "./station-dialogs.js";
import { more } from "./station-more.js";

/**
 * The buttons of a station. The bench is { name, path, summary, gauge, points, load }; show(bench) after each
 * change. The same buttons stay, so that focus and fingers find them again.
 */
export class Actions {
  constructor(place) {
    this.slots = [0, 1, 2, 3].map(() => {
      const button = h("button", { class: "button", type: "button" });
      button.addEventListener("click", () => this.does(button));
      return button;
    });
    this.why = h("p", { class: "acts-why" });
    place.replaceChildren(this.why, ...this.slots);
  }

  show(bench) {
    this.bench = bench;
    const wanted = slotsOf(bench);
    this.why.hidden = !insteadOfJob(bench.summary);
    say(this.why, this.why.hidden ? "" : JOB_RESTS);
    this.slots.forEach((button, i) => {
      button.hidden = !wanted[i];
      if (button.hidden) return;
      const { name, able, main } = wanted[i];
      say(button, name);
      button.dataset.act = name;
      button.disabled = !able;
      button.classList.toggle("main", Boolean(main));
    });
  }

  does(button) {
    const { work } = slotsOf(this.bench).find(({ name }) => name === button.dataset.act);
    run(() => work(this.bench), button);
  }

  byKey(name) {
    byKey(this.bench, name);
  }
}

/** As a key of a pedal asks for; the name is that of the key's setting. */
export function byKey(bench, name) {
  if (name !== "keyMeasure" && insteadOfJob(bench.summary)) {
    note(JOB_RESTS);
    return;
  }
  const work = {
    keyAgain: bench.summary.lastReading && again,
    keyNext: bench.summary.job && next,
    keyUndo: bench.summary.lastReading && undo,
    keyMeasure: byTrigger(bench) && measure,
  }[name];
  if (work) once(() => work(bench));
}

let pressed = false;

/** A second press meanwhile, as of a pedal that bounces, does nothing. */
async function once(work) {
  if (pressed) return;
  pressed = true;
  try {
    await run(work);
  } finally {
    pressed = false;
  }
}

/** Why what acts on the job's last piece is not there while masters or a study are measured. */
const JOB_RESTS = "Meanwhile the job rests: its pieces are not measured again, undone or corrected.";

async function run(work, button = null) {
  const trouble = (problem) => note(problem.message, "bad");
  await (button === null ? work().catch(trouble) : busy(button, work, trouble));
}

/** Whether a press is waited for; without a zero nothing could be measured. */
const byTrigger = ({ summary, gauge }) => summary.measuring.mode === "TRIGGER" && gauge.zero;

/** What this bench needs within reach: name, whether it can be done now, what it does. */
function slotsOf(bench) {
  const { lastReading } = bench.summary;
  const job = bench.summary.job?.state === "CLOSED" ? null : bench.summary.job;
  const needsZero = bench.gauge.bridge && !bench.gauge.zero;
  const zeroing = { name: "Zero", able: bench.gauge.bridge, main: needsZero, work: zero };
  const trigger = { name: "Measure", able: job && bench.gauge.bridge, main: true, work: measure };
  const rest = {
    name: "More",
    able: true,
    work: (now) => more(now, { next, again, zero: byTrigger(now) ? zero : null }),
  };
  if (insteadOfJob(bench.summary)) return [byTrigger(bench) ? trigger : zeroing, rest];
  return [
    ...(byTrigger(bench) ? [trigger] : []),
    !job
      ? { name: "Choose the job", able: true, main: !needsZero, work: chooseJob }
      : partWay(bench)
        ? { name: "Next piece", able: job, work: next }
        : { name: "Measure again", able: job && lastReading, work: again },
    { name: "Undo", able: job && lastReading, work: undo },
    ...(byTrigger(bench) ? [] : [zeroing]),
    rest,
  ];
}

/** Whether some positions of the piece are measured and others are left, and the last one needs nothing. */
function partWay({ summary, points }) {
  const begun = points.some(({ piece }) => piece === summary.station.piece);
  return begun && summary.piece?.tone === "GOOD";
}

async function measure({ path }) {
  await act("POST", `${path}/trigger`, {});
}

async function next({ path, summary, load }) {
  const place = await nextOrSkip(path, summary.station.piece);
  if (place) note(`Now piece ${place.piece}.`);
  await load();
}

/** Asks before a piece without a reading is passed over; the service knows which one that is. */
async function nextOrSkip(path, piece) {
  try {
    return await act("POST", `${path}/next-piece`, {});
  } catch (problem) {
    if (problem.status !== 409) throw problem;
    return askForm({
      title: `Skip piece ${piece}?`,
      intro: problem.message,
      confirm: `Skip piece ${piece}`,
      act: () => act("POST", `${path}/next-piece`, { skip: true }),
    });
  }
}
