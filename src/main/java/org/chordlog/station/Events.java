package org.chordlog.station;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Recorded;
import org.jspecify.annotations.Nullable;

/**
 * Records what happens in a job, after its last reading or an earlier one: stored first, then
 * announced. Any thread.
 */
record Events(String station, StationContext around) {
  private static final String NONE_SUCH = "is no event of this kind in this job";

  JobEvent add(Job job, Happening happening, String by) {
    Recorded now = new Recorded(around.clock().wallMicros(), by);
    Long wrong = happening.replaces();
    JobEvent kept =
        wrong == null
            ? around.store().jobs().add(anew(job, happening, now))
            : inPlaceOf(counting(job, happening.kind(), wrong), job, happening, now);
    around.announcer().announce(new Announcement.Happened(station, kept));
    return kept;
  }

  private JobEvent anew(Job job, Happening told, Recorded now) {
    boolean justNow = told.afterReadingId() == null;
    if (justNow && told.kind() == JobEvent.Kind.MATERIAL_LOT) {
      requireAnother(told.materialLot().strip(), job);
    }
    return event(job, told, told.afterReadingId(), now);
  }

  /** The same again would start a phase in which nothing is new. */
  private void requireAnother(String lot, Job job) {
    if (around.store().jobs().materialLot(job.id()).filter(lot::equals).isPresent()) {
      throw new BadInput("materialLot", lot, "is the lot that is bent already", "another lot");
    }
  }

  private JobEvent inPlaceOf(JobEvent wrong, Job job, Happening right, Recorded now) {
    Long told = right.afterReadingId() == null ? wrong.afterReadingId() : right.afterReadingId();
    String reason = Check.text("note", right.note());
    return around
        .store()
        .jobs()
        .add(
            event(job, right, told, now),
            new EventWithdrawal(0, wrong.id(), reason, now.atMicros(), now.by()));
  }

  /** The event of that number; {@link BadInput} unless it is of that job and kind and counts. */
  private JobEvent counting(Job job, JobEvent.Kind kind, long id) {
    JobEvent found =
        around.store().jobs().eventsOfJob(job.id()).stream()
            .filter(each -> each.id() == id && each.kind() == kind)
            .findFirst()
            .orElseThrow(() -> new BadInput("replaces", id, NONE_SUCH, "the number of one"));
    if (around.store().jobs().takenBack(job.id()).contains(id)) {
      throw new BadInput("replaces", id, "is taken back already", "an event that still counts");
    }
    return found;
  }

  private JobEvent event(Job job, Happening told, @Nullable Long after, Recorded now) {
    return new JobEvent(
        0,
        job.id(),
        job.machine(),
        told.kind(),
        readingBefore(job, after),
        new JobEvent.Content(
            told.settingBefore(), told.settingAfter(), told.materialLot(), told.note()),
        now);
  }

  private long readingBefore(Job job, @Nullable Long told) {
    if (told == null) {
      return around.store().readings().newestOfJob(job.id()).map(Reading::id).orElse(0L);
    }
    boolean known =
        told == 0
            || around.store().readings().find(told).filter(r -> r.jobId() == job.id()).isPresent();
    if (!known) {
      throw new BadInput("afterReadingId", told, "is no reading of this job", "one, or 0");
    }
    return told;
  }

  EventWithdrawal takeBack(JobEvent event, String reason, String by) {
    long now = around.clock().wallMicros();
    EventWithdrawal kept =
        around
            .store()
            .jobs()
            .add(new EventWithdrawal(0, event.id(), Check.text("reason", reason), now, by));
    around.announcer().announce(new Announcement.Happened(station, event));
    return kept;
  }
}
