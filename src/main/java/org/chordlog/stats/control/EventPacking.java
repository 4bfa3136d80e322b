package org.chordlog.stats.control;

import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Recorded;
import org.chordlog.stats.control.ChartSnapshot.EventMark;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/** Events in checkpoints. */
final class EventPacking {
  private EventPacking() {}

  static void pack(EventMark mark, Packer packer) {
    JobEvent event = mark.event();
    packer.put(mark.beforeNumber()).put(event.id()).put(event.jobId()).put(event.machine());
    packer.put(event.kind().name()).put(event.afterReadingId()).put(event.atMicros());
    pack(event.settingBefore(), packer);
    pack(event.settingAfter(), packer);
    packer.put(event.materialLot()).put(event.note()).put(event.by());
  }

  static EventMark unpack(Unpacker from) {
    long beforeNumber = from.aLong();
    long id = from.aLong();
    long jobId = from.aLong();
    String machine = from.text();
    JobEvent.Kind kind = JobEvent.Kind.valueOf(from.text());
    long afterReadingId = from.aLong();
    long atMicros = from.aLong();
    JobEvent.Content content =
        new JobEvent.Content(setting(from), setting(from), from.text(), from.text());
    Recorded recorded = new Recorded(atMicros, from.text());
    return new EventMark(
        beforeNumber, new JobEvent(id, jobId, machine, kind, afterReadingId, content, recorded));
  }

  private static void pack(@Nullable Double setting, Packer packer) {
    packer.put(setting != null).put(setting == null ? 0 : setting);
  }

  private static @Nullable Double setting(Unpacker from) {
    boolean given = from.aBoolean();
    double value = from.aDouble();
    return given ? value : null;
  }
}
