// Orders from a CSV file, each as a job like an earlier one: looked at first, made when all rows are in order.

import { get } from "./api.js";
import { act } from "./identity.js";
import { busy, note } from "./dialogs.js";
import { $, h, state, table } from "./dom.js";
import { field, showFaults, values } from "./forms.js";
import { frame, showTrouble } from "./frame.js";
import { plainLength, unit } from "./units.js";

async function start() {
  frame("jobs");
  const jobs = (await get("api/jobs?limit=200")).items;
  if (jobs.length === 0) {
    $("form").replaceChildren(
      h("p", {}, "Orders are made like a job that is there already, and there is none yet."),
      h("p", {}, h("a", { class: "button main", href: "job-form.html" }, "Create the first job")),
    );
    return;
  }
  build(jobs);
}

function build(jobs) {
  const file = h("input", {
    type: "file",
    accept: ".csv,text/csv,.txt",
    id: "file",
    "aria-required": "true",
  });
  const look = h("button", { class: "button main", type: "submit" }, "Look at the orders");
  const form = $("form");
  form.append(
    field({
      name: "likeJobId",
      label: "Like this job",
      kind: "choice",
      hint: "section, faces, positions and station are those of it, and what the file leaves out",
      options: jobs.map((job) => [job.id, [job.name, job.part].filter(Boolean).join(", ")]),
    }),
    h(
      "div",
      { class: "field" },
      h("label", { for: "file" }, "File of orders (CSV)"),
      file,
      h(
        "p",
        { class: "hint" },
        "One order a row. The first row names the columns: order; part; lot; target; tolerance; lower; upper; ",
        "customer; drawing_revision. Only order is needed. Lengths in mm.",
      ),
    ),
    h("p", { class: "fault general", role: "alert" }),
    h("div", { class: "row" }, look, h("a", { class: "button plain", href: "jobs.html" }, "Cancel")),
  );
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    showFaults(form);
    $("found").hidden = true;
    busy(
      look,
      () => read(form, file),
      (problem) => showFaults(form, problem),
    );
  });
}

async function read(form, file) {
  if (file.files.length === 0) throw { message: "Choose a file first.", faults: [] };
  const sent = { likeJobId: Number(values(form).likeJobId), csv: await file.files[0].text() };
  const answer = await act("POST", "api/orders", sent);
  if (!answer) return;
  const bad = answer.orders.filter((each) => each.fault).length;
  const make = h("button", { class: "button main", type: "button" }, `Create ${answer.orders.length} jobs`);
  make.addEventListener("click", () =>
    busy(
      make,
      () => create(sent),
      (problem) => note(problem.message, "bad"),
    ),
  );
  const again = answer.orders.filter((each) => !each.fault && each.notice).length;
  $("orders").replaceChildren(
    tableOf(answer.orders),
    again > 0 && bad === 0
      ? h(
          "p",
          { class: "care-note" },
          `${again} of ${answer.orders.length} have the name of another job or row. That is right for a repeat order; `,
          "a file that was taken before would make the same jobs twice.",
        )
      : "",
    bad > 0
      ? h(
          "p",
          { role: "alert" },
          state("bad", `${bad} of ${answer.orders.length} rows are at fault`),
          " No job was made.",
        )
      : h("div", { class: "row" }, make),
  );
  $("found").hidden = false;
  $("found").scrollIntoView();
}

async function create(sent) {
  const made = await act("POST", "api/orders", { ...sent, create: true });
  if (made) location.href = "jobs.html";
}

function tableOf(orders) {
  const side = (mm) => (mm === null ? "–" : plainLength(mm));
  return table(
    "Orders, line by line",
    [
      { head: "In the file", cell: (row) => `line ${row.line}` },
      { head: "Order", cell: (row) => row.name },
      { head: "Part", cell: (row) => row.part },
      { head: "Lot", cell: (row) => row.materialLot },
      { head: `Target, ${unit()}`, number: true, cell: (row) => side(row.targetMm) },
      {
        head: `Limits, ${unit()}`,
        number: true,
        cell: (row) => (row.fault ? "" : `${side(row.lowerLimitMm)} to ${side(row.upperLimitMm)}`),
      },
      {
        head: "State",
        cell: stateOf,
      },
    ],
    orders,
  );
}

function stateOf({ fault, notice }) {
  if (fault) return state("bad", fault);
  return notice ? state("open", `can be created. ${notice}`) : state("good", "can be created");
}

start().catch((problem) => showTrouble($("form"), problem));
