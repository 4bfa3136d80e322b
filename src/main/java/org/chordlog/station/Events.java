package org.chordlog.station;

import java.util.List;
import org.chordlog.measure.Check;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Recorded;

/**
 * Records what happens in a job, after its last reading: stored first, then announced. Any thread.
 */
record Events(String station, StationContext around) {
  JobEvent add(Job job, Happening happening, String by) {
    List<Reading> last = around.store().readings().latestOfJob(job.id(), Long.MAX_VALUE, 1);
    JobEvent event =
        new JobEvent(
            0,
            job.id(),
            job.machine(),
            happening.kind(),
            last.isEmpty() ? 0 : last.get(0).id(),
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
