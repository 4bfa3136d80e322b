// The depth around a reading, with the samples that it was taken from.

import { get } from "./api.js";
import { h } from "./dom.js";
import { fixed, length, unit } from "./units.js";

const NS = "http://www.w3.org/2000/svg";
const WIDTH = 420;
const HEIGHT = 190;
const LEFT = 60;
const BOTTOM = 28;

/** The trace of a reading as an element; says so where none is stored. */
export async function readingTrace(reading) {
  const trace = await get(`api/readings/${reading.id}/trace?before=60&after=60`);
  if (trace.samples.length < 2) {
    return h("p", { class: "small" }, "The values around this reading are no longer stored.");
  }
  return h(
    "figure",
    {},
    drawing(trace, reading),
    h(
      "figcaption",
      { class: "small" },
      `Depth as the indicator showed it, ${unit()}, over seconds; shaded: the ` +
        `${reading.sampleCount} values that the reading is the mean of.`,
    ),
  );
}

function drawing(trace, reading) {
  const { samples } = trace;
  const values = samples.map((each) => each.valueMm);
  const x = scale(samples[0].atSeconds, samples.at(-1).atSeconds, LEFT, WIDTH - 6);
  const y = scale(Math.min(...values), Math.max(...values), HEIGHT - BOTTOM - 8, 12);
  const taken = samples.filter(
    (each) => each.sequence >= trace.firstTakenSequence && each.sequence <= trace.lastTakenSequence,
  );
  const svg = shape("svg", {
    viewBox: `0 0 ${WIDTH} ${HEIGHT}`,
    class: "trace",
    role: "img",
    "aria-label":
      `Depth before, while and after reading ${reading.id} was taken: at rest at ` +
      `${length(reading.depthMm, 3)}\u00a0${unit()} above zero`,
  });
  if (taken.length > 0) {
    const [from, to] = [x(taken[0].atSeconds), x(taken.at(-1).atSeconds)];
    svg.append(
      shape("rect", {
        class: "well",
        x: from,
        y: 6,
        width: Math.max(3, to - from),
        height: HEIGHT - BOTTOM - 6,
      }),
    );
  }
  svg.append(
    shape("line", { class: "axis", x1: LEFT, y1: 6, x2: LEFT, y2: HEIGHT - BOTTOM }),
    shape("line", { class: "axis", x1: LEFT, y1: HEIGHT - BOTTOM, x2: WIDTH, y2: HEIGHT - BOTTOM }),
    shape("polyline", {
      class: "line",
      points: samples
        .map((each, i) => `${x(each.atSeconds).toFixed(1)},${y(values[i]).toFixed(1)}`)
        .join(" "),
    }),
    ...[Math.min(...values), Math.max(...values)].map((value) =>
      label(length(value, 2), LEFT - 6, y(value) + 5, "end"),
    ),
    ...[samples[0], samples.at(-1)].map((each, i) =>
      label(`${fixed(each.atSeconds, 1)} s`, x(each.atSeconds), HEIGHT - 8, i ? "end" : "start"),
    ),
  );
  return svg;
}

function scale(least, most, from, to) {
  return (value) =>
    most === least ? (from + to) / 2 : from + ((value - least) / (most - least)) * (to - from);
}

function label(words, x, y, anchor) {
  const text = shape("text", { x, y, "text-anchor": anchor });
  text.textContent = words;
  return text;
}

function shape(name, attributes) {
  const element = document.createElementNS(NS, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  return element;
}
