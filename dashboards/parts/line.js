// A gauge in a line: the piece that runs through now, the newest ones over one another, and one of them in full.

import { asked, get } from "./api.js";
import { Chart } from "./chart.js";
import { $, h, table } from "./dom.js";
import { frame, showTrouble } from "./frame.js";
import { LinePiece } from "./line-piece.js";
import { RunningPiece } from "./line-running.js";
import { follow } from "./live.js";
import { oneByOne } from "./loads.js";
import { dateTime } from "./times.js";
import { radius, unit } from "./units.js";
import words from "../api/words.js";

const PIECES = 12;

class LinePage {
  async start() {
    this.job = await get(`api/jobs/${Number(asked("job"))}`);
    this.chosen = Number(asked("reading")) || null;
    document.title = `Along the pieces of ${this.job.name} · Chordlog`;
    $("head").replaceChildren(
      h("p", { class: "crumb" }, h("a", { href: `job.html?job=${this.job.id}` }, this.job.name)),
      h("h1", {}, "Along the pieces"),
    );
    this.running = new RunningPiece(this.job.station);
    this.piece = new LinePiece();
    this.together = new Chart(h("div", { class: "chart-box" }), { height: 380, newestFirst: false });
    this.list = h("div");
    $("body").className = "form";
    $("body").replaceChildren(
      this.running.element,
      this.piece.element,
      h(
        "section",
        { class: "sheet", "aria-label": "Pieces compared" },
        h("h2", {}, "The newest pieces over one another"),
        this.together.container,
        h(
          "p",
          { class: "small" },
          "Bold: the newest. A dip or rise at the same place of every piece comes from the machine’s setting or " +
            "the start of the bend; one that moves from piece to piece comes from a roller or the material. ",
          h("a", { href: `machine.html?machine=${encodeURIComponent(this.job.machine)}` }, "Rollers of the machine"),
        ),
        this.list,
      ),
    );
    await this.listen();
    await this.running.start();
  }

  refresh = oneByOne(async () => {
    const { items } = await get(`api/jobs/${this.job.id}/readings?limit=${PIECES}`);
    const pieces = items.filter((each) => each.captureMode === "PASSING");
    this.list.replaceChildren(pieces.length > 0 ? this.rows(pieces) : "");
    const none = pieces.length === 0;
    const shown = this.chosen ?? pieces[0]?.id;
    if (none) this.together.clear(h("p", { class: "empty" }, "No piece has run through yet."));
    await Promise.all([
      none ? null : this.together.show(`api/jobs/${this.job.id}/profiles/chart?pieces=${PIECES}`),
      shown ? this.piece.show(shown) : null,
    ]);
  });

  rows(pieces) {
    return table(
      "Newest pieces",
      [
        { head: "Time", cell: (each) => dateTime(each.at) },
        { head: "Piece", number: true, kind: "named", cell: (each) => String(each.piece) },
        { head: `Mean radius, ${unit()}`, number: true, cell: (each) => figures(each) },
        {
          head: "Decision",
          cell: (each) =>
            h("span", { class: "decision", data: { decision: each.decision } }, words.decisions[each.decision]),
        },
        {
          head: "Profile",
          cell: (each) => h("a", { href: `line.html?job=${this.job.id}&reading=${each.id}` }, `Piece ${each.piece}`),
        },
      ],
      pieces,
    );
  }

  listen() {
    return follow(
      { stations: [this.job.station], liveMillis: 5000 },
      {
        statistics: ({ jobId }) => {
          if (jobId === this.job.id) this.refresh().catch(() => {});
        },
        again: this.refresh,
      },
    ).shown;
  }
}

function figures(reading) {
  const { value, plusMinus } = radius(reading);
  return `${value} ${plusMinus}`;
}

frame("jobs");
new LinePage()
  .start()
  .catch((problem) =>
    showTrouble(
      $("head"),
      !Number(asked("job"))
        ? { status: 404, message: "There is no such job. Choose one from the list of jobs." }
        : problem,
    ),
  );
