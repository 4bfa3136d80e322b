// The radius with its interval on a rail between the specification limits.

const NS = "http://www.w3.org/2000/svg";
const LEFT = 60;
const RIGHT = 940;

export function drawRuler(svg, reading, specification) {
  svg.querySelectorAll(":not(title)").forEach((each) => each.remove());
  if (!reading || reading.radiusMm === null || !specification) return;
  const scale = scaleFor(reading, specification);
  line(svg, LEFT, 75, RIGHT, 75, "rail");
  drawAllowed(svg, specification, scale);
  limit(svg, specification.lowerLimitMm, scale, "limit");
  limit(svg, specification.upperLimitMm, scale, "limit");
  limit(svg, specification.targetMm, scale, "target");
  const upper = reading.upperMm === null ? RIGHT + 40 : scale(reading.upperMm);
  line(svg, scale(reading.lowerMm), 75, upper, 75, "interval");
  drawValue(svg, scale(reading.radiusMm));
  svg.querySelector("title").textContent = words(reading, specification);
}

// A disc at its place, or an arrow at the edge that the value lies beyond.
function drawValue(svg, x) {
  if (x > LEFT - 40 && x < RIGHT + 40) {
    shape(svg, "circle", { cx: x, cy: 75, r: 17, class: "value" });
    return;
  }
  const tip = x <= LEFT - 40 ? -30 : 30;
  shape(svg, "path", { d: `M${x - tip} 49l${tip} 26l${-tip} 26z`, class: "beyond" });
}

function words(reading, s) {
  const upper = reading.upperMm === null ? "open" : reading.upperMm.toFixed(1);
  return `Radius ${reading.radiusMm.toFixed(1)} mm, interval ${reading.lowerMm.toFixed(1)} to ${upper}; `
    + `limits ${s.lowerLimitMm ?? "none"} to ${s.upperLimitMm ?? "none"} mm, target ${s.targetMm} mm`;
}

function scaleFor(reading, s) {
  const marks = [s.lowerLimitMm, s.upperLimitMm, s.targetMm].filter((v) => v !== null);
  const width = Math.max(...marks) - Math.min(...marks) || reading.radiusMm * 0.02;
  const least = Math.min(...marks, Math.max(reading.radiusMm, Math.min(...marks) - width)) - width * 0.25;
  const most = Math.max(...marks, Math.min(reading.radiusMm, Math.max(...marks) + width)) + width * 0.25;
  return (value) => Math.min(RIGHT + 40, Math.max(LEFT - 40, LEFT + ((value - least) / (most - least)) * (RIGHT - LEFT)));
}

function drawAllowed(svg, s, scale) {
  const from = s.lowerLimitMm === null ? LEFT - 40 : scale(s.lowerLimitMm);
  const to = s.upperLimitMm === null ? RIGHT + 40 : scale(s.upperLimitMm);
  shape(svg, "rect", { x: from, y: 48, width: Math.max(0, to - from), height: 54, class: "allowed" });
}

function limit(svg, value, scale, kind) {
  if (value === null) return;
  const x = scale(value);
  line(svg, x, 42, x, 108, kind);
  const text = shape(svg, "text", { x, y: kind === "target" ? 32 : 142, "text-anchor": "middle" });
  text.textContent = Number.isInteger(value) ? value : value.toFixed(1);
}

function line(svg, x1, y1, x2, y2, kind) {
  shape(svg, "line", { x1, y1, x2, y2, class: kind });
}

function shape(svg, name, attributes) {
  const element = document.createElementNS(NS, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  svg.append(element);
  return element;
}
