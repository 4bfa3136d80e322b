// Jobs of all workshop computers of a plant, the newest first.

import { asked, get, turns } from "./api.js";
import { $, h, say, state, table } from "./dom.js";
import { field, values } from "./forms.js";
import { frame, showTrouble } from "./frame.js";
import { at } from "./plant-words.js";
import { dateTime } from "./times.js";
import { plainLength, withUnit } from "./units.js";

const MOST = 50;
const turn = turns();
const states = [
  ["", "Open and closed"],
  ["open", "Open"],
  ["closed", "Closed"],
];

function start() {
  frame("jobs");
  $("search").append(
    field({ name: "text", label: "Find in order, part, lot", value: asked("text") ?? "" }),
    field({ name: "state", label: "State", kind: "choice", options: states }),
  );
  let typing = 0;
  $("search").addEventListener("input", () => {
    clearTimeout(typing);
    typing = setTimeout(list, 300);
  });
  $("search").addEventListener("submit", (event) => {
    event.preventDefault();
    list();
  });
  list();
}

async function list() {
  const current = turn();
  const { text, state: wanted } = values($("search"));
  const query = new URLSearchParams({ limit: MOST });
  if (text) query.set("text", text);
  if (wanted) query.set("state", wanted);
  try {
    const jobs = await get(`api/plant/jobs?${query}`);
    if (!current()) return;
    say($("count"), counted(jobs.length));
    $("jobs").replaceChildren(jobs.length > 0 ? rows(jobs) : h("p", { class: "empty" }, "No job matches."));
  } catch (problem) {
    showTrouble($("jobs"), problem);
  }
}

function counted(jobs) {
  return jobs === MOST ? `The newest ${MOST}` : `${jobs} ${jobs === 1 ? "job" : "jobs"}`;
}

function rows(jobs) {
  return table(
    "Jobs, the newest first",
    [
      { head: "Order", cell: ({ edge, job }) => h("a", { href: at(edge, `job.html?job=${job.id}`) }, job.name) },
      { head: "Where", cell: ({ site, edge }) => [site, edge].filter(Boolean).join(" · ") },
      { head: "Machine", cell: ({ job }) => job.machine },
      { head: "State", cell: ({ job }) => stateOf(job) },
      { head: "Part", cell: ({ job }) => job.part || "–" },
      { head: "Target", number: true, cell: ({ job }) => withUnit(plainLength(job.specification.targetMm)) },
      { head: "Readings", number: true, cell: ({ job }) => String(job.readings) },
      { head: "Opened", kind: "wide-only", cell: ({ job }) => dateTime(job.openedAt) },
    ],
    jobs,
  );
}

function stateOf(job) {
  if (job.state === "CLOSED") return state("quiet", "closed");
  return job.active ? state("good", "being measured") : h("span", {}, "open");
}

start();
