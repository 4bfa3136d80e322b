// A bridge on a bend: what span, depth and the faces are, and where the bridge is held.

import { h } from "./dom.js";

const NS = "http://www.w3.org/2000/svg";
const WORDS =
  "A bridge stands with two feet on the outer face of a bend. The span is the distance between its feet. The " +
  "indicator in the middle measures the depth: how far the bend rises above the line between the feet. Hold the " +
  "bridge at both ends, let it stand along the bend, and let go of the indicator.";

/** The sketch with its words for those who can't see it. */
export function sketch() {
  const svg = draw("svg", { viewBox: "0 0 640 360", role: "img", "aria-label": WORDS });
  svg.append(
    ...bend(),
    ...bridge(),
    line(200, 200, 305, 200, "measure"),
    line(335, 200, 440, 200, "measure"),
    text(222, 192, "span"),
    line(200, 249, 440, 249, "chord"),
    line(335, 220, 335, 249, "measure"),
    line(340, 234, 486, 222, "leader"),
    text(490, 227, "depth"),
    text(526, 314, "outer face"),
    text(512, 336, "centreline"),
    text(492, 358, "inner face"),
    text(126, 128, "hold here", "before"),
    line(130, 122, 178, 142, "leader"),
    text(500, 128, "hold here"),
    line(494, 122, 462, 142, "leader"),
  );
  return h(
    "figure",
    { class: "sketch" },
    svg,
    h(
      "figcaption",
      { class: "hint" },
      "Hold the bridge at both ends, along the bend, until the reading is recorded.",
    ),
  );
}

function bend() {
  const arc = (radius, kind) => draw("path", { class: kind, d: arcPath(radius) });
  const faces = draw("path", { class: "metal", d: `${arcPath(260)} L ${end(215)} ${arcPath(215, true)} Z` });
  return [faces, arc(260, "face"), arc(237.5, "centreline"), arc(215, "face")];
}

// From 50 degrees left of the top to 50 degrees right of it, around (320, 480).
const point = (radius, degrees) => {
  const turn = (degrees * Math.PI) / 180;
  return `${(320 + radius * Math.sin(turn)).toFixed(1)} ${(480 - radius * Math.cos(turn)).toFixed(1)}`;
};
const end = (radius) => point(radius, 50);

function arcPath(radius, back = false) {
  return back
    ? `A ${radius} ${radius} 0 0 0 ${point(radius, -50)}`
    : `M ${point(radius, -50)} A ${radius} ${radius} 0 0 1 ${end(radius)}`;
}

function bridge() {
  return [
    draw("rect", { class: "beam", x: 180, y: 138, width: 280, height: 24 }),
    draw("path", { class: "beam", d: "M 190 162 L 210 162 L 200 249 Z" }),
    draw("path", { class: "beam", d: "M 430 162 L 450 162 L 440 249 Z" }),
    draw("circle", { class: "dial-face", cx: 320, cy: 80, r: 46 }),
    text(320, 88, "2.715", "middle"),
    draw("rect", { class: "beam", x: 314, y: 126, width: 12, height: 50 }),
    line(320, 176, 320, 220, "plunger"),
  ];
}

const line = (x1, y1, x2, y2, kind) => draw("line", { x1, y1, x2, y2, class: kind });

function text(x, y, words, kind = "") {
  const element = draw("text", { x, y, class: kind });
  element.textContent = words;
  return element;
}

function draw(name, attributes) {
  const element = document.createElementNS(NS, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  return element;
}
