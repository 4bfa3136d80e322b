// Where what is told of a chart's point stands: near it, beside the chart's own words.

const STEP_PX = 12;
const PIN_PX = 14;
/** So many px farther away rather than one px² more covered: of a word or the pin, of a number along an axis. */
const WORD = 20;
const NUMBER = 1;

/** Stands the callout in its chart at the place that covers the fewest words; at: the point, px in the chart. */
export function stand(callout, chart, at) {
  Object.assign(callout.style, { left: "0", top: "0" });
  const box = chart.getBoundingClientRect();
  const size = { width: callout.offsetWidth, height: callout.offsetHeight };
  const others = [...chart.querySelectorAll("svg text")].map((each) => ({
    ...within(each.getBoundingClientRect(), box),
    weight: Number.isNaN(Number(each.textContent.replace("−", "-"))) ? WORD : NUMBER,
  }));
  others.push({
    left: at.x - PIN_PX,
    right: at.x + PIN_PX,
    top: at.y - PIN_PX,
    bottom: at.y + PIN_PX,
    weight: WORD,
  });
  const best = { cost: Infinity };
  for (const top of steps(seen(box.top, box.height, innerHeight), size.height))
    for (const left of steps([0, box.width], size.width)) {
      const place = { left, top, right: left + size.width, bottom: top + size.height };
      const cost = others.reduce((sum, each) => sum + each.weight * common(place, each), farOff(place, at));
      if (cost < best.cost) Object.assign(best, { cost, left, top });
    }
  Object.assign(callout.style, { left: `${best.left}px`, top: `${best.top}px` });
}

/** From where to where of the chart is on the screen. */
const seen = (top, height, screen) => [Math.max(0, -top), Math.min(height, screen - top)];

const within = ({ left, right, top, bottom }, box) => ({
  left: left - box.left,
  right: right - box.left,
  top: top - box.top,
  bottom: bottom - box.top,
});

/** Where something of that length begins, from edge to edge; at the first edge where there is no room. */
function steps([from, to], length) {
  const most = Math.max(from, to - length);
  const count = Math.ceil((most - from) / STEP_PX);
  return Array.from({ length: count + 1 }, (_, i) => Math.min(most, from + i * STEP_PX));
}

const farOff = ({ left, right, top, bottom }, { x, y }) =>
  Math.hypot(Math.max(0, left - x, x - right), Math.max(0, top - y, y - bottom));

const common = (a, b) =>
  Math.max(0, Math.min(a.right, b.right) - Math.max(a.left, b.left)) *
  Math.max(0, Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top));
