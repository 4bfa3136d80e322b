// Calibrating on masters step by step, and the interim check.

import { get } from "./api.js";
import { act } from "./identity.js";
import { askForm, busy, note, openDialog } from "./dialogs.js";
import { h, state, table } from "./dom.js";
import { field, showFaults, values } from "./forms.js";
import { addMaster } from "./gauge-forms.js";
import { liveLine } from "./live-line.js";
import { length, plainLength, unit } from "./units.js";
import words from "../api/words.js";

const CARE =
  "Take the bridge to the masters, away from the machine. Rollers stopped and drive locked out before you reach in.";
const name = (master) =>
  `${master.name}: ${words.faces[master.face]}, ${plainLength(master.radiusMm)}\u00a0${unit()}`;

function noMaster(bench) {
  return askForm({
    title: "No master yet",
    intro: "A calibration compares the bridge with pieces of known radius. Add the first one.",
    confirm: "Add a master",
    act: () => {
      setTimeout(() => addMaster(bench));
      return true;
    },
  });
}

function masterField(bench) {
  return field({
    name: "masterId",
    label: "The bridge stands on",
    kind: "choice",
    options: bench.masters.map((each) => [each.id, name(each)]),
  });
}

/** While masters are measured the job of the station is suspended, so that none of them becomes a piece. */
async function suspended(bench, work) {
  const set = (active) => act("POST", `${bench.path}/on-masters`, { active });
  if ((await set(true)) === null) return;
  try {
    await work();
  } finally {
    await set(false);
  }
}

const trouble = (problem) => note(problem.message, "bad");

export function calibrate(bench) {
  return bench.masters.length === 0
    ? noMaster(bench)
    : suspended(bench, () => calibration(bench)).catch(trouble);
}

/** One master, one verdict. */
export function check(bench) {
  return bench.masters.length === 0
    ? noMaster(bench)
    : suspended(bench, () => checking(bench)).catch(trouble);
}

/** Zero, one master after the other, look at the fit, save it. */
async function calibration(bench) {
  const run = `${bench.path}/calibration-run`;
  const fit = h("div", { class: "form", "aria-live": "polite" });
  const general = h("p", { class: "fault general", role: "alert" });
  const read = h("button", { class: "button main", type: "submit" }, "Read this master");
  const keep = h("button", { class: "button main", type: "button", disabled: true }, "Save calibration");
  const again = h("button", { class: "button plain", type: "button" }, "Start again");
  const due = new Date(Date.now() + 365 * 86400000).toISOString().slice(0, 10);
  const form = h(
    "form",
    { class: "form", novalidate: true },
    h("p", { class: "care-note" }, CARE),
    h(
      "ol",
      {},
      h("li", {}, "Set zero at the station, with the bridge on the flat."),
      h(
        "li",
        {},
        "Stand the bridge on a master, hold it still, read it. Best two or more masters, tight and " +
          "wide, each three times.",
      ),
      h("li", {}, "Look at the fit, then save it."),
    ),
    masterField(bench),
    liveLine(bench.name),
    h("div", { class: "row" }, read),
    general,
    fit,
    field({ name: "dueAt", label: "Due again on", kind: "date", value: due }),
    h("div", { class: "row" }, keep, again),
  );
  const show = (told) => {
    fit.replaceChildren(...fitWords(told));
    keep.disabled = !told.fit;
  };
  const refused = (problem) => showFaults(form, problem);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    showFaults(form);
    busy(
      read,
      async () => {
        const told = await act("POST", `${run}/readings`, { masterId: Number(values(form).masterId) });
        if (told) show(told);
      },
      refused,
    );
  });
  again.addEventListener("click", () =>
    busy(
      again,
      async () => {
        await act("DELETE", run);
        show(await get(run));
      },
      refused,
    ),
  );
  show(await get(run));
  await openDialog("Calibration on masters", form, (close) => {
    keep.addEventListener("click", () =>
      busy(
        keep,
        async () => {
          const day = values(form).dueAt;
          // A day of the viewer, by whom it is shown.
          const dueAt = day ? new Date(`${day}T00:00:00`).toISOString() : null;
          if (await act("POST", `${bench.path}/calibrations`, { dueAt })) {
            note("Calibration saved. Readings use it from now on.");
            close(true);
            await bench.load();
          }
        },
        refused,
      ),
    );
    return "Close";
  });
}

function fitWords({ readings, fit, whyNoFit, advice }) {
  if (readings.length === 0) return [h("p", { class: "hint" }, "Nothing read yet.")];
  const rows = table(
    "Readings on masters",
    [
      { head: "Master", cell: (r) => r.master },
      { head: `Radius, ${unit()}`, number: true, cell: (r) => plainLength(r.radiusMm) },
      { head: `Depth, ${unit()}`, number: true, cell: (r) => length(r.depthMm, 4) },
      {
        head: `Off the fit, ${unit()}`,
        number: true,
        cell: (r) => (r.residualMm === null ? "–" : length(r.residualMm, 4)),
      },
    ],
    readings,
  );
  if (!fit) return [rows, h("p", {}, state("open", "No fit yet"), ` ${whyNoFit}`)];
  const u = Math.sqrt(fit.covariance[0][0]);
  return [
    rows,
    h(
      "p",
      {},
      state(
        fit.fits ? "good" : "open",
        fit.fits
          ? "The readings agree within their uncertainty"
          : "The readings differ more than their uncertainty explains; the uncertainty was widened",
      ),
    ),
    h("p", { class: "of" }, `Effective span ${length(fit.spanMm, 3)} ±\u00a0${length(2 * u, 3)}\u00a0${unit()}`),
    ...fit.notes.map((each) => h("p", { class: "small" }, each)),
    ...(advice?.sentences ?? []).map((each) => h("p", {}, each)),
  ];
}

function checking(bench) {
  return askForm({
    title: "Interim check",
    care: CARE,
    intro: "Set zero first. Then stand the bridge on the master and hold it still.",
    confirm: "Check now",
    fields: [
      masterField(bench),
      liveLine(bench.name),
      field({
        name: "limitMm",
        label: "May differ by, at most ±",
        kind: "length",
        hint:
          "Empty: as kept with the master. About a tenth of the tolerance of your jobs: common practice",
      }),
    ],
    async act({ masterId, limitMm }) {
      const kept = await act("POST", `${bench.path}/checks`, { masterId: Number(masterId), limitMm });
      if (kept) {
        const off = length(kept.radiusMm - kept.masterRadiusMm, 2);
        note(
          kept.passed
            ? `Passed: off by ${off}\u00a0${unit()}.`
            : `Failed: off by ${off}\u00a0${unit()}. Don’t rely on readings since the last check that passed; ` +
                "calibrate.",
          kept.passed ? "good" : "bad",
        );
      }
      await bench.load();
      return true;
    },
  });
}
