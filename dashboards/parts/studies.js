// Studies of the gauge: the list, how large one has to be, and planning one.

import { asked, get } from "./api.js";
import { act } from "./identity.js";
import { busy } from "./dialogs.js";
import { $, h, say, table } from "./dom.js";
import { field, options, showFaults, values } from "./forms.js";
import { frame, showTrouble } from "./frame.js";
import { workshop } from "./place.js";
import { CARE, stateSign } from "./study-states.js";
import { date } from "./times.js";
import { plainLength, unit } from "./units.js";
import words from "../api/words.js";

async function start() {
  frame("gauges");
  const [studies, stations, jobs, masters, kinds] = await Promise.all([
    get("api/studies"),
    get("api/stations"),
    get("api/jobs?limit=50"),
    get("api/masters"),
    get("api/study-kinds"),
  ]);
  const known = { stations, jobs: jobs.items ?? jobs, masters, kinds };
  $("studies").replaceChildren(list(studies), ...(workshop === null ? [planner(), planning(known)] : []));
  $("studies").removeAttribute("aria-busy");
  if (location.hash === "#plan") $("plan").scrollIntoView();
}

function sheet(title, ...children) {
  return h("section", { class: "sheet", "aria-label": title }, h("h2", {}, title), ...children);
}

function list(studies) {
  if (studies.length === 0)
    return sheet(
      "Studies",
      h(
        "p",
        { class: "empty" },
        "None yet. A study shows how much of the scatter comes from the gauge and from the people who use it.",
      ),
    );
  return sheet(
    "Studies",
    table(
      "Studies, the newest first",
      [
        { head: "Study", cell: (s) => h("a", { href: `study.html?id=${s.id}` }, s.name) },
        { head: "Examines", cell: (s) => words.studyKinds[s.kind] },
        { head: "Station", cell: (s) => s.station },
        { head: "State", cell: (s) => stateSign(s.state) },
        { head: "Measured", number: true, cell: (s) => `${s.measured} of ${s.steps}` },
        { head: "Planned", cell: (s) => h("span", {}, date(s.plannedAt), ` ${s.plannedBy}`) },
      ],
      studies,
    ),
  );
}

function planner() {
  const said = h("p", { role: "status" });
  const general = h("p", { class: "fault general", role: "alert" });
  const tell = h("button", { class: "button", type: "submit" }, "How many do I need?");
  const form = h(
    "form",
    { class: "form", novalidate: true },
    h(
      "div",
      { class: "form-columns" },
      field({
        name: "expected",
        label: "Gauge’s share that you expect",
        kind: "number",
        value: 15,
        suffix: "% of all scatter",
        required: true,
      }),
      field({
        name: "limit",
        label: "Share that still passes",
        kind: "number",
        value: 30,
        suffix: "% (common practice)",
        required: true,
      }),
      field({
        name: "places",
        label: "Marked places on each piece",
        kind: "number",
        value: 0,
        hint: "0 where one place on each piece is measured",
      }),
    ),
    h("div", { class: "row" }, tell),
    general,
    said,
  );
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    showFaults(form);
    said.textContent = "Working it out…";
    busy(
      tell,
      async () => {
        const query = new URLSearchParams(
          Object.entries(values(form)).filter(([, value]) => value !== null && value !== ""),
        );
        said.textContent = (await get(`api/study-size?${query}`)).says;
      },
      (problem) => {
        said.textContent = "";
        showFaults(form, problem);
      },
    );
  });
  return sheet(
    "How large must a study be?",
    h(
      "p",
      { class: "small" },
      "With few operators the result is uncertain: three may show 19 % where the truth is 10 to 61 %.",
    ),
    form,
  );
}

function planning({ stations, jobs, masters, kinds }) {
  const general = h("p", { class: "fault general", role: "alert" });
  const save = h("button", { class: "button main", type: "submit" }, "Plan this study");
  const station = asked("station") ?? stations[0]?.station;
  const purpose = h("p", { class: "small", role: "status" });
  const parts = {
    kind: field({
      name: "kind",
      label: "What is examined",
      kind: "choice",
      value: asked("kind") ?? kinds[0].kind,
      options: kinds.map((each) => [each.kind, each.words]),
    }),
    jobId: field({
      name: "jobId",
      label: "Job",
      kind: "choice",
      options: jobOptions(jobs, station),
      hint: "Its section and limits apply; no reading of the study counts in it",
    }),
    parts: field({
      name: "parts",
      label: "Pieces, one name a line",
      kind: "long",
      value: "1\n2\n3\n4\n5",
      hint: "Take pieces that differ as your pieces do. Mark the place to be measured on each.",
    }),
    places: field({ name: "places", label: "Marked places, one name a line", kind: "long", value: "start\nend" }),
    masterIds: field({
      name: "masterIds",
      label: "Masters, one name a line",
      kind: "long",
      value: masters.map((each) => each.name).join("\n"),
      hint: masters.map((each) => `${each.name}: ${plainLength(each.radiusMm)}\u00a0${unit()}`).join(", "),
    }),
    operators: field({ name: "operators", label: "Operators, one name a line", kind: "long" }),
  };
  const form = h(
    "form",
    { class: "form", novalidate: true },
    h("p", { class: "care-note" }, CARE),
    h(
      "div",
      { class: "form-columns" },
      field({ name: "name", label: "Name of the study", required: true }),
      field({
        name: "station",
        label: "Station",
        kind: "choice",
        value: station,
        options: stations.map((each) => [each.station, each.station]),
      }),
      h("div", {}, parts.kind, purpose),
      parts.jobId,
      parts.parts,
      parts.places,
      parts.masterIds,
      parts.operators,
      field({ name: "repeats", label: "Repeats", kind: "number", value: 2, required: true }),
    ),
    h("div", { class: "row" }, save),
    general,
  );
  const chosen = () => kinds.find((each) => each.kind === values(form).kind);
  const fit = () => {
    const kind = chosen();
    purpose.textContent = kind.purpose;
    options(parts.jobId, jobOptions(jobs, values(form).station));
    say(parts.parts.querySelector("label"), `${kind.partsAre}, one name a line`);
    say(parts.parts.querySelector(".hint"), hints(kind));
    parts.parts.hidden = !kind.namesParts;
    parts.places.hidden = !kind.namesPlaces;
    parts.masterIds.hidden = !kind.onMasters;
    parts.jobId.hidden = !kind.needsJob;
  };
  form.addEventListener("change", fit);
  fit();
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    showFaults(form);
    busy(
      save,
      async () => {
        const made = await act("POST", "api/studies", planOf(values(form), chosen(), masters));
        if (made) location.assign(`study.html?id=${made.id}`);
      },
      (problem) => showFaults(form, problem),
    );
  });
  const planned = sheet("Plan a study", form);
  planned.id = "plan";
  return planned;
}

function jobOptions(jobs, station) {
  const here = jobs.filter((each) => each.station === station);
  return here.length ? here.map((each) => [each.id, each.name]) : [["", "no job at this station"]];
}

const lines = (text) =>
  text
    .split("\n")
    .map((each) => each.trim())
    .filter(Boolean);

/** What to write into the field of the parts. */
function hints({ onMasters, ownParts }) {
  if (onMasters) return "Five days or more. They need not follow each other.";
  return ownParts
    ? "The first share belongs to the first operator, and so on: as many for each, two or more."
    : "Take pieces that differ as your pieces do. Mark the place to be measured on each.";
}

function planOf(form, kind, masters) {
  const named = lines(form.masterIds);
  return {
    name: form.name,
    station: form.station,
    kind: kind.kind,
    parts: kind.namesParts ? lines(form.parts) : [],
    places: kind.namesPlaces ? lines(form.places) : [],
    operators: lines(form.operators),
    repeats: form.repeats,
    jobId: !kind.needsJob || form.jobId === "" ? null : Number(form.jobId),
    masterIds: kind.onMasters
      ? masters.filter((each) => named.includes(each.name)).map((each) => each.id)
      : [],
  };
}

start().catch((problem) => showTrouble($("studies"), problem));
