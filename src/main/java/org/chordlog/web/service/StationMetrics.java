package org.chordlog.web.service;

import io.prometheus.metrics.core.metrics.CounterWithCallback;
import io.prometheus.metrics.core.metrics.GaugeWithCallback;
import io.prometheus.metrics.model.registry.PrometheusRegistry;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import java.util.function.ToLongFunction;
import org.chordlog.station.StationStatus;
import org.chordlog.station.StationStatus.LinkState;

/** What each station counts, and the state of its link. */
record StationMetrics(PrometheusRegistry registry, Supplier<List<StationStatus>> stations) {
  void register() {
    counter("chordlog_samples", "Samples decoded.", s -> s.counts().samples());
    counter("chordlog_damaged_frames", "Frames refused.", s -> s.counts().damagedFrames());
    counter("chordlog_readings", "Readings committed.", s -> s.counts().readings());
    counter("chordlog_dropped_readings", "Readings lost.", s -> s.counts().droppedReadings());
    counter("chordlog_dropped_samples", "Raw samples lost.", s -> s.counts().droppedSamples());
    counter("chordlog_link_reopenings", "Links come back.", s -> s.counts().reopenings());
    rejections();
    linkStates();
  }

  private void counter(String name, String help, ToLongFunction<StationStatus> value) {
    CounterWithCallback.builder()
        .name(name)
        .help(help)
        .labelNames("station")
        .callback(
            call ->
                stations.get().forEach(s -> call.call((double) value.applyAsLong(s), s.station())))
        .register(registry);
  }

  private void rejections() {
    CounterWithCallback.builder()
        .name("chordlog_rejections")
        .help("Captures refused, by reason.")
        .labelNames("station", "reason")
        .callback(
            call ->
                stations
                    .get()
                    .forEach(
                        s ->
                            s.counts()
                                .rejections()
                                .forEach(
                                    (why, n) ->
                                        call.call((double) n, s.station(), lower(why.name())))))
        .register(registry);
  }

  private void linkStates() {
    GaugeWithCallback.builder()
        .name("chordlog_link_state")
        .help("1 for the state that the station's link is in.")
        .labelNames("station", "state")
        .callback(call -> stations.get().forEach(s -> linkState(call, s)))
        .register(registry);
  }

  private static void linkState(GaugeWithCallback.Callback call, StationStatus s) {
    for (LinkState state : LinkState.values()) {
      call.call(s.link() == state ? 1 : 0, s.station(), lower(state.name()));
    }
  }

  private static String lower(String name) {
    return name.toLowerCase(Locale.ROOT);
  }
}
