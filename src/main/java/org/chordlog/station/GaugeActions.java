package org.chordlog.station;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Zero;
import org.chordlog.store.Gauges;

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
    Bridge bridge = mounted();
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
    around.announcer().announce(new Announcement.Zeroed(name, kept));
    noted(JobEvent.Kind.ZERO, "", by);
    return kept;
  }

  /** {@link BadInput} when there is none. */
  Bridge mounted() {
    return gauges()
        .mountedOn(name)
        .orElseThrow(() -> new BadInput("bridge", "none", "is on the station", "mount one first"));
  }

  void changeBridge(long bridgeId, String by) {
    Bridge bridge = gauges().bridge(bridgeId).orElseThrow(() -> UnknownId.of("bridgeId", bridgeId));
    gauges().mount(name, bridge.id(), around.clock().wallMicros(), by);
    noted(JobEvent.Kind.NOTE, "Bridge " + bridge.name(), by);
  }

  /** In the active job, if there is one. */
  private void noted(JobEvent.Kind kind, String note, String by) {
    job.find().ifPresent(active -> events.add(active, Happening.of(kind, note), by));
  }
}
