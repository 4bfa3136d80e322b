package org.chordlog.station;

import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Recorded;

/**
 * Records what happens in a job, after its last reading or an earlier one: stored first, then
 * announced. Any thread.
 */
record Events(String station, StationContext around) {
  JobEvent add(Job job, Happening happening, String by) {
    JobEvent event =
        new JobEvent(
            0,
            job.id(),
            job.machine(),
            happening.kind(),
            readingBefore(job, happening),
            new JobEvent.Content(
                happening.settingBefore(),
                happening.settingAfter(),
                happening.materialLot(),
                happening.note()),
            new Recorded(around.clock().wallMicros(), by));
    JobEvent kept = around.store().jobs().add(event);
    around.announcer().announce(new Announcement.Happened(station, kept));
    return kept;
  }

  private long readingBefore(Job job, Happening happening) {
    Long told = happening.afterReadingId();
    if (told == null) {
      List<Reading> last = around.store().readings().latestOfJob(job.id(), Long.MAX_VALUE, 1);
      return last.isEmpty() ? 0 : last.get(0).id();
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
