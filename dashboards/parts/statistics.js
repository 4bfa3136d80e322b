// The figures of a job and its control chart.

import { get } from "./bench-api.js";
import { fixed } from "./bench-words.js";

const $ = (id) => document.getElementById(id);
const wanted = [
  ["mean", "Mean mm", 1], ["range", "Range mm", 1], ["Cp", "Cp", 2], ["Cpk", "Cpk", 2],
];

export async function showStatistics(job) {
  if (!job) {
    $("figures").replaceChildren();
    $("cautions").replaceChildren();
    $("chart").replaceChildren();
    return;
  }
  const statistics = await get(`/api/jobs/${job.id}/statistics`);
  showFigures(statistics);
  showCautions(statistics.cautions);
  await showChart(job);
}

function showFigures(statistics) {
  const rows = wanted.map(([name, label, digits]) => {
    const figure = statistics.figures.find((each) => each.name === name);
    return term(label, figure ? fixed(figure.value, digits) : "–", figure ? interval(figure, digits) : "");
  });
  rows.push(term("n", String(statistics.count), ""));
  $("figures").replaceChildren(...rows);
}

function interval(figure, digits) {
  if (figure.lower === null || figure.upper === null) return "";
  return `${fixed(figure.lower, digits)} to ${fixed(figure.upper, digits)}`;
}

function term(label, value, small) {
  const box = document.createElement("div");
  const dt = document.createElement("dt");
  const dd = document.createElement("dd");
  dt.textContent = label;
  dd.textContent = value;
  dd.dataset.figure = label.split(" mm")[0];
  if (small) {
    const span = document.createElement("span");
    span.className = "interval";
    span.textContent = small;
    dd.append(span);
  }
  box.append(dt, dd);
  return box;
}

function showCautions(cautions) {
  $("cautions").replaceChildren(...cautions.map((caution) => {
    const item = document.createElement("li");
    item.textContent = caution.text;
    return item;
  }));
}

async function showChart(job) {
  const kinds = await get(`/api/jobs/${job.id}/charts`);
  if (kinds.length === 0) return;
  const width = Math.max(320, Math.min(1400, Math.round($("chart").clientWidth / 20) * 20));
  const room = innerHeight - $("chart").getBoundingClientRect().top - scrollY - 90;
  const height = width < 600 ? 420 : Math.max(360, Math.min(700, Math.round(room / 20) * 20));
  const chart = await get(`/api/jobs/${job.id}/charts/${kinds[0].kind}?width=${width}&height=${height}`);
  const svg = new DOMParser().parseFromString(chart.svg, "image/svg+xml").documentElement;
  $("chart").replaceChildren(document.importNode(svg, true), ...chart.places.map((place) => spot(place, chart)));
  $("chart-words").textContent = chart.title;
}

// A place that can be touched or hovered for its words.
function spot(place, chart) {
  const element = document.createElement("span");
  element.className = "spot";
  element.style.left = `${(100 * place.xPx) / chart.widthPx}%`;
  element.style.top = `${(100 * place.yPx) / chart.heightPx}%`;
  element.title = place.label;
  return element;
}
