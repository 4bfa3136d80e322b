package org.chordlog.station;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Mounted;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.Zero;
import org.chordlog.store.Gauges;
import org.jspecify.annotations.Nullable;

/** Bridge and zero of a station; on the thread of whoever asks. */
final class GaugeActions {
  private final String name;
  private final Station station;
  private final StationContext around;
  private final ActiveJob job;
  private final Events events;
  private final ContactActions contacts;

  GaugeActions(
      Station station,
      StationContext around,
      ActiveJob job,
      Events events,
      ContactActions contacts) {
    this.name = station.settings().name();
    this.station = station;
    this.around = around;
    this.job = job;
    this.events = events;
    this.contacts = contacts;
  }

  private Gauges gauges() {
    return around.store().gauges();
  }

  Zero takeZero(String by) {
    Mounted mounted = mounting();
    Bridge bridge = mounted.bridge();
    station.settings().refuseZeroWithoutDirection(gauges().latestZero(name).isPresent());
    AtRest rest = contacts.atRest("zeroed on a flat", by);
    Zero zero =
        new Zero(
            0,
            name,
            bridge.id(),
            rest.value().valueNm(),
            rest.value().scatterNm(),
            rest.value().sampleCount(),
            new Recorded(around.clock().wallMicros(), by));
    Zero kept = gauges().add(zero);
    @Nullable Sentence doubt = doubt(kept, rest, mounted);
    around.announcer().announce(new Announcement.Zeroed(name, kept, doubt));
    noted(JobEvent.Kind.ZERO, doubt == null ? "" : doubt.toString(), by);
    return kept;
  }

  /** What free air says against that zero; null where nothing, or free air was not seen. */
  private @Nullable Sentence doubt(Zero zero, AtRest rest, Mounted mounted) {
    Long freeAir = rest.freeAirNm();
    return freeAir == null
        ? null
        : new ZeroLifts(around.store().checkpoints(), name)
            .add(zero, rest, freeAir, mounted, station.settings())
            .doubt();
  }

  /** {@link BadInput} when there is none. */
  Bridge mounted() {
    return mounting().bridge();
  }

  private Mounted mounting() {
    return gauges()
        .mounted(name)
        .orElseThrow(() -> new BadInput("bridge", "none", "is on the station", "mount one first"));
  }

  void changeBridge(long bridgeId, String by) {
    Bridge bridge = gauges().bridge(bridgeId).orElseThrow(() -> UnknownId.of("bridgeId", bridgeId));
    gauges().mount(name, bridge.id(), around.clock().wallMicros(), by);
    noted(JobEvent.Kind.BRIDGE, bridge.name(), by);
  }

  /** In the active job, if there is one. */
  private void noted(JobEvent.Kind kind, String note, String by) {
    job.find().ifPresent(active -> events.add(active, Happening.of(kind, note), by));
  }
}
