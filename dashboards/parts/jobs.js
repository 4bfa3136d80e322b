// All jobs: those that need attention first, searched and sorted.

import { get, turns } from "./api.js";
import { $, h, say, state, table } from "./dom.js";
import { field, values } from "./forms.js";
import { frame, showTrouble } from "./frame.js";
import { dateTime } from "./times.js";
import { plainLength, withUnit } from "./units.js";

const shown = { items: [], next: null };
const turn = turns();
const orders = [
  ["newest", "Newest first"],
  ["oldest", "Oldest first"],
  ["name", "By order"],
];
const states = [
  ["", "Open and closed"],
  ["open", "Open"],
  ["closed", "Closed"],
];

function start() {
  frame("jobs");
  $("search").append(
    field({ name: "text", label: "Find in order, part, lot" }),
    field({ name: "state", label: "State", kind: "choice", options: states }),
    field({ name: "order", label: "Sort", kind: "choice", options: orders }),
  );
  let typing = 0;
  $("search").addEventListener("input", () => {
    clearTimeout(typing);
    typing = setTimeout(() => list(), 200);
  });
  $("search").addEventListener("submit", (event) => {
    event.preventDefault();
    list();
  });
  $("more").addEventListener("click", () => list(shown.next));
  list();
  attention();
}

async function list(after = null) {
  const current = turn();
  const { text, state: wanted, order } = values($("search"));
  const query = new URLSearchParams({ limit: 25, order });
  if (text) query.set("text", text);
  if (wanted) query.set("state", wanted);
  if (after !== null) query.set("after", after);
  try {
    const page = await get(`api/jobs?${query}`);
    if (!current()) return;
    shown.items = after === null ? page.items : [...shown.items, ...page.items];
    shown.next = page.next;
    show(text || wanted);
  } catch (problem) {
    showTrouble($("jobs"), problem);
  }
}

function show(searched) {
  $("more").hidden = shown.next === null;
  const { length } = shown.items;
  say(
    $("count"),
    length === 0 ? "" : `${length}${shown.next === null ? "" : " or more"} ${length === 1 ? "job" : "jobs"}`,
  );
  if (length > 0) $("jobs").replaceChildren(rows());
  else
    $("jobs").replaceChildren(
      h(
        "div",
        { class: "empty" },
        searched
          ? h("p", {}, "No job matches. Search for less, or for open and closed ones.")
          : [
              h("p", {}, "No jobs yet."),
              h(
                "p",
                {},
                "A job holds the specification: section, radius, limits, and where each piece is measured.",
              ),
            ],
      ),
    );
}

function rows() {
  return table(
    "Jobs",
    [
      { head: "Order", cell: (job) => h("a", { href: `job.html?job=${job.id}` }, job.name) },
      { head: "State", cell: stateOf },
      { head: "Part", cell: (job) => job.part || "–" },
      { head: "Machine", cell: (job) => job.machine },
      { head: "Section", kind: "wide-only", cell: (job) => job.sectionWords },
      { head: "Target", number: true, cell: (job) => withUnit(plainLength(job.specification.targetMm)) },
      { head: "Readings taken", number: true, cell: (job) => String(job.readings) },
      { head: "Opened", kind: "wide-only", cell: (job) => dateTime(job.openedAt) },
    ],
    shown.items,
  );
}

function stateOf(job) {
  if (job.state === "CLOSED") return state("quiet", "closed");
  return job.active ? state("good", "being measured") : h("span", {}, "open");
}

async function attention() {
  const found = await get("api/attention").catch(() => []);
  const jobs = await Promise.all(found.slice(0, 8).map(named));
  $("attention").hidden = jobs.length === 0;
  $("attention-list").replaceChildren(
    ...jobs.map((job, i) =>
      h(
        "li",
        {},
        h("a", { href: `job.html?job=${job.id}` }, job.name),
        h(
          "ul",
          {},
          found[i].words.map((words) => h("li", {}, state(found[i].weight >= 100 ? "bad" : "open", words))),
        ),
      ),
    ),
  );
}

/** A damaged job, which has no name to be read, hides no other. */
function named({ jobId }) {
  return get(`api/jobs/${jobId}`).catch(() => ({ id: jobId, name: `Job ${jobId}` }));
}

start();
