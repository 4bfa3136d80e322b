// Masters and calibrations as files: taken, looked at, added.

import { fileButton } from "./download.js";
import { act } from "./identity.js";
import { busy, note, openDialog } from "./dialogs.js";
import { h, state, table } from "./dom.js";
import { showFaults } from "./forms.js";

const COLUMNS = {
  masters: "name; face (outer or inner); radius_mm; expanded_uncertainty_mm (k = 2); check_limit_mm",
  calibrations:
    "station; bridge; taken_utc; due_utc (as 2026-05-04, 2026-05-04 14:30 or 4.5.2026 14:30); taken_by; span_mm; " +
    "u_span_mm (standard uncertainty); and where known " +
    "zero_offset_mm, foot_radius_mm, their u_ and cov_ columns, degrees_of_freedom, summary",
};

/** Both ways for "masters" or "calibrations"; bench.load() after something was added. */
export function fileWays(of, bench) {
  return h(
    "div",
    { class: "row" },
    fileButton(`All ${of}, CSV in mm`, () => `api/${of}.csv`, `${of}.csv`),
    h(
      "button",
      { class: "button", type: "button", on: { click: () => add(of, bench) } },
      of === "masters" ? "Masters from a file" : "Certificates from a file",
    ),
  );
}

function add(of, bench) {
  const file = h("input", { type: "file", accept: ".csv,text/csv,.txt", id: "file", "aria-required": "true" });
  const look = h("button", { class: "button main", type: "submit" }, "Look at the file");
  const found = h("div", { class: "form", "aria-live": "polite" });
  const form = h(
    "form",
    { class: "form", novalidate: true },
    h(
      "div",
      { class: "field" },
      h("label", { for: "file" }, "File (CSV)"),
      file,
      h("p", { class: "hint" }, `One of them a row, the first row naming the columns: ${COLUMNS[of]}. Lengths in mm.`),
    ),
    h("p", { class: "fault general", role: "alert" }),
    h("div", { class: "row" }, look),
    found,
  );
  return openDialog(of === "masters" ? "Masters from a file" : "Certificates from a file", form, (close) => {
    const refused = (problem) => {
      found.replaceChildren(faultsOf(problem));
      showFaults(form, problem.faults?.length ? undefined : problem);
    };
    const send = async (create) => {
      if (file.files.length === 0) throw { message: "Choose a file first.", faults: [] };
      showFaults(form);
      return act("POST", `api/${of}/import`, { csv: await file.files[0].text(), create });
    };
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      busy(look, async () => show(await send(false)), refused);
    });
    file.addEventListener("change", () => found.replaceChildren());
    const show = (answer) => {
      if (!answer) return;
      const count = answer.rows.filter((row) => row.isNew).length;
      const keep = h("button", { class: "button main", type: "button" }, `Add what is new (${count})`);
      keep.addEventListener("click", () => busy(keep, () => added(), refused));
      found.replaceChildren(rowsOf(of, answer.rows), count ? keep : h("p", {}, "All of them are there already."));
    };
    const added = async () => {
      const answer = await send(true);
      if (!answer) return;
      note(`Added: ${answer.added}.`);
      close(true);
      await bench.load();
    };
    return "Close";
  });
}

function rowsOf(of, rows) {
  return table(
    `In the file: ${of}`,
    [
      { head: "In the file", cell: (row) => `line ${row.line}` },
      { head: "Name", cell: (row) => row.name },
      { head: "Stored as", cell: (row) => row.stored },
      { head: "", cell: (row) => (row.isNew ? state("good", "new") : state("quiet", "there already")) },
    ],
    rows,
  );
}

function faultsOf({ faults }) {
  if (!faults?.length) return "";
  const of = ({ field }) => (field === "csv" ? "" : `${field}: `);
  return h(
    "div",
    { role: "alert" },
    h("p", {}, state("bad", `${faults.length} at fault`), " Nothing was added."),
    h(
      "ul",
      { class: "cautions" },
      ...faults.map((each) => h("li", {}, `${of(each)}${each.value} ${each.problem}; allowed: ${each.allowed}`)),
    ),
  );
}
