// The sheets of the gauge's page: calibration, checks, bridges, masters, zeros.

import { facts, h, state, table } from "./dom.js";
import { addBridge, addMaster, changeBridge } from "./gauge-forms.js";
import { fileWays } from "./gauge-files.js";
import { calibrate, check } from "./masters.js";
import { date, dateTime, span } from "./times.js";
import { length, plainLength, unit, withUnit } from "./units.js";
import words from "../api/words.js";

export function sheet(title, action, ...children) {
  return h(
    "section",
    { class: "sheet", "aria-label": title },
    h("div", { class: "sheet-head" }, h("h2", {}, title), action),
    ...children,
  );
}

export const button = (caption, work, kind = "") =>
  h("button", { class: `button ${kind}`, type: "button", on: { click: work } }, caption);

export function calibration(bench, all) {
  const { gauge } = bench;
  const now = gauge.calibration;
  const due = now && new Date(now.dueAt) - Date.now();
  return sheet(
    "Calibration",
    button("Calibrate", () => calibrate(bench), "main"),
    now
      ? h(
          "p",
          {},
          state(due < 0 ? "bad" : "good", due < 0 ? `Overdue for ${span(-due)}` : `Due in ${span(due)}`),
          " ",
          date(now.dueAt),
        )
      : h("p", {}, "Gauge not calibrated. Using the nominal span."),
    now
      ? facts([
          [
            "Effective span",
            `${length(now.spanMm, 3)}\u00a0${unit()} (stated ${plainLength(gauge.bridge.spanMm)})`,
          ],
          ["Zero offset", withUnit(length(now.zeroOffsetMm, 4))],
          ["Foot radius", withUnit(length(now.footRadiusMm, 2))],
          ["Taken", h("span", {}, dateTime(now.takenAt), `, ${now.takenBy}`)],
          ["Remarks", now.summary],
        ])
      : null,
    all.length > 1
      ? h(
          "details",
          {},
          h("summary", { class: "button plain" }, `All ${all.length} calibrations`),
          table(
            "All calibrations",
            [
              { head: "Taken", cell: (c) => dateTime(c.takenAt) },
              {
                head: "Bridge",
                cell: (c) => bench.bridges.find((b) => b.id === c.bridgeId)?.name ?? `no. ${c.bridgeId}`,
              },
              { head: `Span, ${unit()}`, number: true, cell: (c) => length(c.spanMm, 3) },
              { head: "Due", cell: (c) => date(c.dueAt) },
              { head: "By", cell: (c) => c.takenBy },
            ],
            all,
          ),
        )
      : null,
    fileWays("calibrations", bench),
  );
}

export function checksOf(bench, checks) {
  return sheet(
    "Interim checks",
    button("Check on a master", () => check(bench)),
    checks.length === 0
      ? h(
          "p",
          { class: "empty" },
          "None yet on this bridge. A check on a master at the start of a shift shows at once when the " +
            "gauge has changed.",
        )
      : table(
          "List of interim checks",
          [
            { head: "When, by", cell: (c) => h("span", {}, dateTime(c.takenAt), ` ${c.takenBy}`) },
            { head: "Master", cell: (c) => bench.masters.find((m) => m.id === c.masterId)?.name ?? "" },
            {
              head: `Off by, ${unit()}`,
              number: true,
              cell: (c) =>
                h(
                  "span",
                  {},
                  length(c.radiusMm - c.masterRadiusMm, 2),
                  h("small", {}, ` of ±\u00a0${plainLength(c.limitMm)}`),
                ),
            },
            {
              head: "Verdict",
              cell: (c) => state(c.passed ? "good" : "bad", c.passed ? "Passed" : "Failed"),
            },
          ],
          checks,
        ),
  );
}

function feet({ footRadiusMm, footKind }) {
  const radius = footRadiusMm === 0 ? "" : `radius ${plainLength(footRadiusMm)}`;
  return [footKind && words.feet[footKind], radius].filter(Boolean).join(", ") || "kind not stated";
}

export function bridgesOf(bench) {
  return sheet(
    "Bridges",
    button("Add a bridge", () => addBridge(bench)),
    bench.bridges.length === 0
      ? h("p", { class: "empty" }, "None yet. Add the one that carries the indicator.")
      : table(
          "List of bridges",
          [
            {
              head: "Name",
              cell: (b) => h("strong", {}, b.name, b.id === bench.gauge.bridge?.id ? " (on now)" : ""),
            },
            {
              head: `Span, ${unit()}`,
              number: true,
              cell: (b) => `${plainLength(b.spanMm)} ±\u00a0${plainLength(2 * b.spanUncertaintyMm)}`,
            },
            {
              head: `Feet, ${unit()}`,
              cell: feet,
            },
            { head: "Skew", number: true, cell: (b) => `±\u00a0${b.skewLimitDegrees}°` },
            {
              head: "",
              cell: (b) =>
                h(
                  "button",
                  {
                    class: "button plain",
                    type: "button",
                    "aria-label": `Change ${b.name}`,
                    on: { click: () => changeBridge(bench, b) },
                  },
                  "Change",
                ),
            },
          ],
          bench.bridges,
        ),
  );
}

export function mastersOf(bench) {
  return sheet(
    "Masters",
    button("Add a master", () => addMaster(bench)),
    bench.masters.length === 0
      ? h(
          "p",
          { class: "empty" },
          "None yet. A master is a piece of known radius, as an arc cut to size, with a certificate.",
        )
      : table(
          "List of masters",
          [
            { head: "Name", cell: (m) => h("strong", {}, m.name) },
            { head: "Face", cell: (m) => words.faces[m.face] },
            {
              head: `Radius, ${unit()}`,
              number: true,
              cell: (m) => `${plainLength(m.radiusMm)} ±\u00a0${plainLength(m.expandedUncertaintyMm)}`,
            },
            {
              head: `Check, ${unit()}`,
              number: true,
              cell: (m) => (m.checkLimitMm === null ? "–" : `±\u00a0${plainLength(m.checkLimitMm)}`),
            },
          ],
          bench.masters,
        ),
    fileWays("masters", bench),
  );
}

export function zerosOf(zeros) {
  return sheet(
    "Zeros",
    null,
    zeros.length === 0
      ? h("p", { class: "empty" }, "None yet. Set zero at the station, with the bridge on the flat.")
      : table(
          "Zeros, the newest first",
          [
            { head: "When", cell: (z) => dateTime(z.takenAt) },
            { head: `On the flat, ${unit()}`, number: true, cell: (z) => length(z.valueMm, 4) },
            {
              head: "Changed by",
              number: true,
              cell: (z) => {
                const before = zeros[zeros.indexOf(z) + 1];
                return before ? length(z.valueMm - before.valueMm, 4) : "";
              },
            },
            { head: "By", cell: (z) => z.takenBy },
            ...(zeros.some((z) => z.doubt) ? [{ head: "In doubt", cell: (z) => z.doubt ?? "" }] : []),
          ],
          zeros,
        ),
  );
}
