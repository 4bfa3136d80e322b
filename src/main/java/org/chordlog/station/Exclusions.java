package org.chordlog.station;

import java.util.List;
import java.util.Optional;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.store.ReadingQuery;
import org.chordlog.store.Readings;

/** Takes readings of a station out of the statistics: stored first, then announced. Any thread. */
record Exclusions(String station, StationContext around) {
  private static final int LOOK_BACK = 1_000;

  private Readings readings() {
    return around.store().readings();
  }

  /** The last reading of the job that is still in its statistics. */
  Reading lastCounted(Job job) {
    return newestCounted(job, 1).stream()
        .findFirst()
        .orElseThrow(() -> new BadInput("reading", "none", "is left to undo", "take one first"));
  }

  /** Readings of a piece that are still in the statistics. */
  List<Reading> counted(Job job, int piece) {
    return newestCounted(job, LOOK_BACK).stream()
        .filter(reading -> reading.piece() == piece)
        .toList();
  }

  private List<Reading> newestCounted(Job job, int most) {
    return readings().search(ReadingQuery.newest(job.id(), most).excluded(false));
  }

  /** A reading that was moved to another job counts there: it is moved back, not put back. */
  void refuseIfMoved(Reading reading) {
    readings().withExclusions(List.of(reading)).stream()
        .flatMap(each -> Optional.ofNullable(each.exclusion()).stream())
        .filter(Exclusion::moved)
        .findFirst()
        .ifPresent(
            each -> {
              throw new BadInput(
                  "reading",
                  reading.id(),
                  "was moved (" + each.reason() + ")",
                  "the reading in that job, or move its piece back from there");
            });
  }

  /** Words that say it was moved are for those that were: who reads them looks for it there. */
  static String typed(String reason) {
    if (Exclusion.moved(reason)) {
      throw new BadInput(
          "reason",
          "'" + reason + "'",
          "says that it was moved",
          "another reason, or move its piece");
    }
    return reason;
  }

  Exclusion add(Reading reading, boolean excluded, String reason, String by) {
    long now = around.clock().wallMicros();
    Exclusion kept =
        readings()
            .add(new Exclusion(0, reading.id(), excluded, Check.text("reason", reason), now, by));
    around.announcer().announce(new Announcement.Excluded(station, reading.jobId(), kept));
    return kept;
  }

  /** The same where its place is to be measured again, also after a start. */
  Exclusion undo(Reading reading, String reason, String by) {
    Exclusion kept = add(reading, true, reason, by);
    new KeptPlace(around.store(), reading.jobId()).put(Place.of(reading));
    return kept;
  }
}
