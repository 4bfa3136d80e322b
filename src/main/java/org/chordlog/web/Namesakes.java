package org.chordlog.web;

import java.time.ZoneOffset;
import java.util.Optional;
import org.chordlog.measure.Job;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.TimeText;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Jobs;

/** Other jobs of the same name: a repeat order, or the same order made twice. */
record Namesakes(Jobs jobs) {
  /** Says which job, the newest, has that name, in capital letters or small; else empty. */
  Sentence of(String name, long butId) {
    return newest(name, butId).map(Namesakes::words).orElse(Sentence.EMPTY);
  }

  private Optional<Job> newest(String name, long butId) {
    JobQuery query = JobQuery.of(JobQuery.Order.NEWEST, JobQuery.MOST).containing(name.strip());
    return jobs.search(query).stream()
        .filter(each -> each.id() != butId && each.name().equalsIgnoreCase(name.strip()))
        .findFirst();
  }

  private static Sentence words(Job job) {
    String part = job.part().isBlank() ? "" : ", part " + job.part();
    return Sentence.plain(
        "There is a job of this name already: job %s%s, opened %s, %s."
            .formatted(
                job.id(),
                part,
                TimeText.day(job.openedAtMicros(), ZoneOffset.UTC),
                job.state() == Job.State.OPEN ? "open" : "closed"));
  }
}
