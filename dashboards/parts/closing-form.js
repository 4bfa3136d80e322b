// A question about how a job's pieces close: its form, its answer in a sentence below it.

import { get } from "./api.js";
import { h } from "./dom.js";
import { showFaults } from "./forms.js";
import { length, radius, unit } from "./units.js";
import words from "../api/words.js";

/** path() is what is asked for, told(answer) the sentence; hidden until there is something to ask. */
export function closingForm({ label, title, parts, button, path, told, hidden = false }) {
  const answer = h("p", { class: "closing-answer", role: "status" });
  const form = h(
    "form",
    { class: "form", "aria-label": label, hidden },
    h("h3", {}, title),
    ...parts,
    h("p", { class: "fault general", role: "alert" }),
    h("div", { class: "row" }, h("button", { class: "button plain", type: "submit" }, button)),
    answer,
  );
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    showFaults(form);
    answer.textContent = "";
    try {
      answer.textContent = told(await get(path()));
    } catch (problem) {
      showFaults(form, problem);
    }
  });
  return form;
}

/** A radius on the centreline with ± 2 u where u is known, and what it is on the face of the job. */
export function onCentreline({ radiusMm, standardUncertaintyMm: u, face, specifiedRadiusMm }) {
  const said = (mm) => {
    const { value, plusMinus } = radius({ radiusMm: mm, lowerMm: mm - 2 * u, upperMm: mm + 2 * u });
    return u > 0 ? `${value} ${plusMinus}\u00a0${unit()}` : `${length(mm, 1)}\u00a0${unit()}`;
  };
  const onFace =
    face === "CENTRELINE" ? "" : ` (${said(specifiedRadiusMm)} on the ${words.faces[face].toLowerCase()})`;
  return `${said(radiusMm)} on the centreline${onFace}`;
}
