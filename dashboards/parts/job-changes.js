// All changes of a job: who, when, what, from, to, why.

import { get, needed } from "./api.js";
import { $, h, say, table } from "./dom.js";
import { field, values } from "./forms.js";
import { frame, showTrouble } from "./frame.js";
import { dateTime } from "./times.js";

const PAGE = 100;
const shown = { lines: [], most: PAGE };

async function start() {
  frame("jobs");
  const id = Number(needed("job", "job"));
  const [job, lines] = await Promise.all([get(`api/jobs/${id}`), get(`api/jobs/${id}/history`)]);
  shown.lines = lines;
  document.title = `Changes to ${job.name} · Chordlog`;
  say($("title"), `Changes to ${job.name}`);
  $("back").append(h("a", { href: `job.html?job=${id}` }, "Back to the job"));
  $("search").append(field({ name: "text", label: "Find in the changes" }));
  $("search").addEventListener("input", () => list(PAGE));
  $("search").addEventListener("submit", (event) => event.preventDefault());
  list(PAGE);
}

function list(most) {
  const text = values($("search")).text.toLowerCase();
  const found = shown.lines.filter((line) => Object.values(line).join(" ").toLowerCase().includes(text));
  say($("count"), `${found.length} ${found.length === 1 ? "change" : "changes"}, the newest first`);
  const rows = found.slice(0, most);
  $("changes").removeAttribute("aria-busy");
  $("changes").replaceChildren(
    rows.length > 0 ? tableOf(rows) : h("p", { class: "empty" }, "No change matches."),
    ...(found.length > rows.length
      ? [
          h(
            "button",
            { class: "button", type: "button", on: { click: () => list(most + PAGE) } },
            "Show more",
          ),
        ]
      : []),
  );
}

function tableOf(rows) {
  return table(
    "Changes, the newest first",
    [
      { head: "When", cell: (row) => dateTime(row.at) },
      { head: "By", kind: "named", cell: (row) => row.by },
      { head: "What", kind: "lead new", cell: (row) => row.what },
      { head: "From", kind: "new named", cell: (row) => row.from },
      { head: "To", kind: "new named", cell: (row) => row.to },
      { head: "Why", kind: "new named", cell: (row) => row.why },
    ],
    rows,
    "lines",
  );
}

start().catch((problem) => showTrouble($("changes"), problem));
