// The job page: is the job capable, what happened, give me the report.

import { asked, get } from "./api.js";
import { $, h } from "./dom.js";
import { frame, showTrouble } from "./frame.js";
import { follow } from "./live.js";
import { oneByOne } from "./loads.js";
import { showsNow } from "./notes.js";
import { Charts } from "./job-charts.js";
import { Filter } from "./job-filter.js";
import { Lots } from "./job-lots.js";
import { files, showHead } from "./job-head.js";
import { Capability } from "./job-capability.js";
import { Readings } from "./job-readings.js";
import { JobAlong } from "./job-along.js";
import { JobClosing } from "./job-closing.js";
import { JobRollers } from "./job-rollers.js";
import { Records } from "./job-record.js";

class JobPage {
  async start() {
    this.job = await get(`api/jobs/${Number(asked("job"))}`);
    document.title = `${this.job.name} · Chordlog`;
    this.filter = new Filter(this.job, () => this.refresh());
    this.numbers = new Capability(this.job);
    this.charts = new Charts(() => this.refresh());
    this.lots = new Lots();
    this.records = new Records(() => this.refresh());
    this.readings = new Readings(() => this.refresh());
    this.rollers = new JobRollers(this.job);
    this.closing = new JobClosing(this.job);
    this.along = new JobAlong(this.job);
    this.head();
    const stands = h(
      "section",
      { class: "sheet stands", "aria-label": "Job status" },
      h("h2", { class: "unseen" }, "Job status"),
      this.numbers.top,
      h("div", { class: "filter chosen" }, this.filter.element, this.charts.choice),
      this.charts.element,
      this.numbers.leftOut,
    );
    this.sections = [
      stands,
      this.along.element,
      files(this.job),
      ...this.numbers.below,
      this.lots.element,
      this.rollers.element,
      this.closing.element,
      ...this.records.elements,
      this.readings.element,
    ];
    await this.listen();
    if (location.hash.length > 1) $(location.hash.slice(1))?.scrollIntoView();
  }

  /** Once its verdicts are known, so that nothing stands where they come. */
  place() {
    if (!$("body")) return;
    $("body").replaceWith(...this.sections);
    this.charts.chart.fit();
  }

  head() {
    showHead($("head"), this.job, () => this.refresh());
  }

  /** Everything anew. */
  refresh = oneByOne(() => this.fetchAll().catch((problem) => this.trouble(problem)));

  async fetchAll() {
    const { id } = this.job;
    const [job, events, newest] = await Promise.all([
      get(`api/jobs/${id}`),
      get(`api/jobs/${id}/events`),
      get(`api/jobs/${id}/readings?limit=1`),
    ]);
    this.asNow(job);
    showsNow([job.version, newest.items[0]?.id, events.length].join());
    this.filter.phases(events, newest.items[0]?.id ?? 0);
    const part = this.filter.query();
    const statistics = await get(`api/jobs/${id}/statistics?${part}`);
    this.filter.known(statistics);
    this.numbers.show(statistics, this.filter.words());
    this.place();
    await Promise.all([
      this.charts.show(this.job, part),
      this.numbers.lacks(this.job),
      this.numbers.pictures(this.job, part, statistics),
      this.lots.show(this.job, statistics.characteristic),
      this.records.show(this.job, part, events),
      this.readings.show(this.job, this.filter.bounds()),
      this.along.show(newest.items[0]),
      this.rollers.show(),
      this.closing.show(this.job),
    ]);
  }

  /** Also where it was changed elsewhere; what is the same is not drawn anew. */
  asNow(job) {
    const same = ["version", "active", "currentLot"].every((key) => job[key] === this.job[key]);
    this.job = job;
    if (!same) this.head();
  }

  trouble(problem) {
    this.place();
    this.numbers.trouble(problem);
  }

  /** Shows all, and from then on what comes. */
  listen() {
    const soon = () => {
      clearTimeout(this.timer);
      this.timer = setTimeout(() => this.refresh(), 300);
    };
    return follow(
      { stations: [this.job.station], liveMillis: 5000 },
      {
        statistics: ({ jobId }) => {
          if (jobId === this.job.id) soon();
        },
        happened: ({ jobId }) => {
          if (jobId === this.job.id) soon();
        },
        again: () => this.refresh(),
      },
    ).shown;
  }
}

frame("jobs");
new JobPage()
  .start()
  .catch((problem) =>
    showTrouble(
      $("head"),
      problem.status === 404 || !Number(asked("job"))
        ? { status: 404, message: "There is no such job. Choose one from the list of jobs." }
        : problem,
    ),
  );
