// A job opened, changed or duplicated; what is wrong is said at its field.

import { act } from "./identity.js";
import { asked, get } from "./api.js";
import { askForm, busy, note } from "./dialogs.js";
import { grouping, order, plan, showSizes, specification, tolerance, toleranceOf } from "./job-fields.js";
import { changedMeanwhile, nested } from "./job-typed.js";
import { keepDraft } from "./drafts.js";
import { $, h } from "./dom.js";
import { field, showFaults, values } from "./forms.js";
import { frame, showTrouble } from "./frame.js";
import { sketch } from "./sketch.js";
import words from "../api/words.js";

const fresh = {
  name: "",
  part: "",
  materialLot: "",
  measuredFace: "OUTER",
  section: { kind: "ROUND_TUBE" },
  specification: { face: "CENTRELINE", targetMm: null, lowerLimitMm: null, upperLimitMm: null },
  plan: { positions: ["middle"], subgroups: "CONSECUTIVE", subgroupSize: 5 },
};

async function start() {
  frame("jobs");
  const [changes, copies] = [asked("job"), asked("copy")];
  const source = changes ?? copies;
  const [stations, job] = await Promise.all([
    get("api/stations"),
    source ? get(`api/jobs/${Number(source)}`) : fresh,
  ]);
  const title = changes ? `Change ${job.name}` : copies ? `Duplicate ${job.name}` : "New job";
  $("title").textContent = title;
  document.title = `${title} · Chordlog`;
  $("body").replaceChildren(
    ...(source ? [] : [await template()]).filter(Boolean),
    stations.length > 0 || source ? build(job, stations, changes) : noStation(),
  );
  const found = asked("station");
  if (found && stations.length > 0 && !changes) $("body").querySelector("[name=station]").value = found;
}

/** Where a job could not be measured yet: what comes first. */
function noStation() {
  return h(
    "div",
    {},
    h(
      "p",
      {},
      "There is no station yet, and a job is measured at a station. Add one first; it leads on to the job.",
    ),
    h("div", { class: "row" }, h("a", { class: "button main", href: "add-station.html" }, "Add a station")),
  );
}

/** An earlier job to begin with; none where there is none yet. */
async function template() {
  const jobs = (await get("api/jobs?limit=200")).items;
  if (jobs.length === 0) return null;
  const choice = field({
    name: "like",
    label: "Begin with an earlier job",
    kind: "choice",
    options: [
      ["", "no, with an empty form"],
      ...jobs.map((job) => [job.id, `${job.name} ${job.part}`.trim()]),
    ],
  });
  choice.addEventListener("change", ({ target }) => {
    const query = new URLSearchParams(location.search);
    query.set("copy", target.value);
    location.search = query;
  });
  return choice;
}

function build(job, stations, changes) {
  const measures = h("div", { class: "contents" });
  const general = h("p", { class: "fault general", role: "alert" });
  const submit = h("button", { class: "button main", type: "submit" }, changes ? "Save" : "Create job");
  const form = h(
    "form",
    { class: "form", novalidate: true },
    part("Job", order(job, stations)),
    part("Section", [
      field({
        name: "section.kind",
        label: "Kind",
        kind: "choice",
        value: job.section.kind,
        options: Object.entries(words.sections),
      }),
      measures,
    ]),
    part("Specification", specification(job)),
    sketch(),
    part("Where and how it is measured", plan(job)),
    ...(changes
      ? [field({ name: "why", label: "Why it is changed (kept in the record)", required: true })]
      : []),
    ...(changes
      ? [
          h(
            "p",
            { class: "hint" },
            "The statistics of this job are recalculated after a change; radii already measured stay " +
              "as they are.",
          ),
        ]
      : []),
    general,
    h(
      "div",
      { class: "row" },
      submit,
      h("a", { class: "button plain", href: changes ? `job.html?job=${changes}` : "jobs.html" }, "Cancel"),
    ),
  );
  const kind = form.querySelector("[name='section.kind']");
  kind.addEventListener("change", () => showSizes(measures, kind.value, job.section));
  showSizes(measures, kind.value, job.section);
  grouping(form);
  tolerance(form);
  form.sent = keepDraft(form, "job");
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    keep(form, submit, changes && job);
  });
  return form;
}

function part(title, fields) {
  return h("fieldset", { class: "form" }, h("legend", {}, title), h("div", { class: "fields" }, fields));
}

/** Without it limits would stay as they were, or be left out. */
const NO_TOLERANCE = {
  field: "tolerance",
  problem: "is not a tolerance",
  allowed: "a number above 0, as 12, or nothing",
};

/** `job` is the job that is changed as it was when the form was filled; null for a new one. */
async function keep(form, submit, job) {
  showFaults(form);
  const half = toleranceOf(form);
  if (half !== null && !(half > 0)) {
    showFaults(form, { faults: [NO_TOLERANCE] });
    return;
  }
  await busy(
    submit,
    async () => {
      const body = nested(values(form));
      const kept = await sendOrAsk(body, job);
      if (!kept) return;
      form.sent();
      location.href = await placeOf(kept);
    },
    (problem) => {
      showFaults(form, problem);
      if (job && problem.present) {
        form.querySelector(".fault.general").textContent = changedMeanwhile(form, job, problem.present);
        return;
      }
      if (!form.querySelector("[aria-invalid]")) note(problem.message, "bad");
    },
  );
}

/** What may be a slip of the pen is asked about, then sent again as confirmed; null when given up. */
async function sendOrAsk(body, job, said = { unlessNamed: true }) {
  const whole = { ...body, ...said };
  try {
    return await (job
      ? act("PUT", `api/jobs/${job.id}`, whole, job.version)
      : act("POST", "api/jobs", whole));
  } catch (problem) {
    const question = questionOf(problem);
    if (!question) throw problem;
    const more = await askForm(question);
    return more && sendOrAsk(body, job, { ...said, ...more });
  }
}

function questionOf({ message, sameName, doubtful }) {
  if (sameName)
    return {
      title: "The same name again?",
      intro: `${message} Take it again for a repeat order; else go back and give another name.`,
      confirm: "Use the name again",
      act: () => ({ unlessNamed: false }),
    };
  if (doubtful)
    return {
      title: "Are these limits right?",
      intro: `${message} Go back and put them right, unless the drawing has them so.`,
      confirm: "Use them all the same",
      act: () => ({ confirmed: true }),
    };
  return null;
}

/** Back to the station that asked for a job, which measures it from now on; else the job's own page. */
async function placeOf(job) {
  if (asked("station") !== job.station) return `job.html?job=${job.id}`;
  const station = encodeURIComponent(job.station);
  await act("POST", `api/stations/${station}/job`, { jobId: job.id });
  return `station.html?station=${station}`;
}

start().catch((problem) => showTrouble($("body"), problem));
