package org.chordlog.station;

import java.util.List;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.jspecify.annotations.Nullable;

/** Records what happens in a job, after its last reading: kept first, then announced. */
record Events(String station, StationContext around) {
  JobEvent add(
      Job job,
      JobEvent.Kind kind,
      @Nullable Double settingBefore,
      @Nullable Double settingAfter,
      String materialLot,
      String note,
      String by) {
    List<Reading> last = around.store().readings().latestOfJob(job.id(), Long.MAX_VALUE, 1);
    JobEvent event =
        new JobEvent(
            0,
            job.id(),
            job.machine(),
            kind,
            last.isEmpty() ? 0 : last.get(0).id(),
            around.clock().wallMicros(),
            settingBefore,
            settingAfter,
            materialLot,
            note,
            by);
    JobEvent kept = around.store().jobs().add(event);
    around.announcer().announce(new Announcement.Happened(station, kept));
    return kept;
  }

  JobEvent add(Job job, JobEvent.Kind kind, String note, String by) {
    return add(job, kind, null, null, "", note, by);
  }
}
