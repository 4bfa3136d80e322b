package org.chordlog.station;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.measure.Reading;

/** What stations announced, in order. */
final class Heard {
  private final List<Announcement> all = new CopyOnWriteArrayList<>();

  void add(Announcement announcement) {
    all.add(announcement);
  }

  List<Reading> taken() {
    return all.stream()
        .filter(Announcement.Taken.class::isInstance)
        .map(each -> ((Announcement.Taken) each).reading())
        .toList();
  }

  List<Reason> refused() {
    return all.stream()
        .filter(Announcement.Refused.class::isInstance)
        .map(each -> ((Announcement.Refused) each).rejection().reason())
        .toList();
  }
}
