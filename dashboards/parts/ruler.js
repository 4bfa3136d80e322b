// The radius with its interval on a rail between the specification limits.

import { length, plainLength, unit } from "./units.js";

const NS = "http://www.w3.org/2000/svg";
const LEFT = 60;
const RIGHT = 940;
const BEYOND = 40;

/** Draws into an empty SVG element. */
export function drawRuler(svg, reading, specification) {
  svg.setAttribute("viewBox", "0 0 1000 150");
  svg.setAttribute("class", "ruler");
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", words(reading, specification));
  if (reading.radiusMm === null) return;
  const scale = scaleFor(reading, specification);
  line(svg, LEFT, RIGHT, "rail");
  drawAllowed(svg, specification, scale);
  mark(svg, specification.lowerLimitMm, scale, "limit");
  mark(svg, specification.upperLimitMm, scale, "limit");
  mark(svg, specification.targetMm, scale, "target");
  const upper = reading.upperMm === null ? RIGHT + BEYOND : scale(reading.upperMm);
  line(svg, scale(reading.lowerMm), upper, "interval");
  drawValue(svg, scale(reading.radiusMm));
}

// A disc at its place, or an arrow at the edge that the value lies beyond.
function drawValue(svg, x) {
  if (x > LEFT - BEYOND && x < RIGHT + BEYOND) {
    shape(svg, "circle", { cx: x, cy: 75, r: 17, class: "value" });
    return;
  }
  const tip = x <= LEFT - BEYOND ? -30 : 30;
  shape(svg, "path", { d: `M${x - tip} 49l${tip} 26l${-tip} 26z`, class: "beyond" });
}

function words(reading, s) {
  const limit = (mm) => (mm === null ? "none" : plainLength(mm));
  if (reading.radiusMm === null)
    return `Flat; limits ${limit(s.lowerLimitMm)} to ${limit(s.upperLimitMm)}\u00a0${unit()}`;
  const upper = reading.upperMm === null ? "open" : length(reading.upperMm, 1);
  return (
    `Radius ${length(reading.radiusMm, 1)}\u00a0${unit()}, interval ${length(reading.lowerMm, 1)} to ${upper}; ` +
    `limits ${limit(s.lowerLimitMm)} to ${limit(s.upperLimitMm)}, target ${limit(s.targetMm)}`
  );
}

function scaleFor(reading, s) {
  const marks = [s.lowerLimitMm, s.upperLimitMm, s.targetMm].filter((v) => v !== null);
  const width = Math.max(...marks) - Math.min(...marks) || reading.radiusMm * 0.02;
  const least = Math.min(...marks, Math.max(reading.radiusMm, Math.min(...marks) - width)) - width * 0.25;
  const most = Math.max(...marks, Math.min(reading.radiusMm, Math.max(...marks) + width)) + width * 0.25;
  return (value) =>
    Math.min(
      RIGHT + BEYOND,
      Math.max(LEFT - BEYOND, LEFT + ((value - least) / (most - least)) * (RIGHT - LEFT)),
    );
}

function drawAllowed(svg, s, scale) {
  const from = s.lowerLimitMm === null ? LEFT - BEYOND : scale(s.lowerLimitMm);
  const to = s.upperLimitMm === null ? RIGHT + BEYOND : scale(s.upperLimitMm);
  shape(svg, "rect", { x: from, y: 48, width: Math.max(0, to - from), height: 54, class: "allowed" });
}

function mark(svg, value, scale, kind) {
  if (value === null) return;
  const x = scale(value);
  shape(svg, "line", { x1: x, y1: 42, x2: x, y2: 108, class: kind });
  shape(svg, "text", { x, y: kind === "target" ? 32 : 142, "text-anchor": "middle" }).textContent =
    plainLength(value);
}

function line(svg, x1, x2, kind) {
  shape(svg, "line", { x1, y1: 75, x2, y2: 75, class: kind });
}

function shape(svg, name, attributes) {
  const element = document.createElementNS(NS, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  svg.append(element);
  return element;
}
