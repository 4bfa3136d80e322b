package org.chordlog.web.service;

import io.prometheus.metrics.core.metrics.CounterWithCallback;
import io.prometheus.metrics.core.metrics.GaugeWithCallback;
import io.prometheus.metrics.expositionformats.ExpositionFormatWriter;
import io.prometheus.metrics.expositionformats.ExpositionFormats;
import io.prometheus.metrics.model.registry.PrometheusRegistry;
import io.prometheus.metrics.model.snapshots.Unit;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleSupplier;
import java.util.function.IntSupplier;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import java.util.function.ToLongFunction;
import org.chordlog.forward.ForwardStatus;
import org.chordlog.notify.AlertCounts;
import org.chordlog.notify.send.DeliveryStatus;
import org.chordlog.station.StationStatus;
import org.chordlog.station.StationStatus.LinkState;
import org.chordlog.store.StoreHealth;
import org.jspecify.annotations.Nullable;

/**
 * Metrics for Prometheus, named after its conventions (base units, {@code _total} for counters);
 * all are read when asked for, so that they cost nothing otherwise.
 */
public final class Metrics {
  private static final double MILLIS = 1_000;
  private final PrometheusRegistry registry = new PrometheusRegistry();
  private final Supplier<List<StationStatus>> stations;
  private final Supplier<StoreHealth> store;

  public Metrics(
      Supplier<List<StationStatus>> stations, Supplier<StoreHealth> store, IntSupplier clients) {
    this.stations = stations;
    this.store = store;
    stationMetrics();
    storeMetrics();
    ProcessMetrics.register(registry);
    gauge("chordlog_event_clients", "Event clients connected.", null, clients::getAsInt);
  }

  /** For a service with TLS. */
  public void certificate(LongSupplier daysLeft) {
    gauge(
        "chordlog_certificate_days_left",
        "Whole days until the certificate in use expires; negative afterwards.",
        null,
        daysLeft::getAsLong);
  }

  /** For a service that watches for alerts; asks the store each time. */
  public void alerts(Supplier<AlertCounts> counts) {
    GaugeWithCallback.builder()
        .name("chordlog_alerts")
        .help("Alerts that are not over, by state.")
        .labelNames("state")
        .callback(
            call ->
                counts
                    .get()
                    .open()
                    .forEach((state, n) -> call.call((double) n, lower(state.name()))))
        .register(registry);
    CounterWithCallback.builder()
        .name("chordlog_alerts_raised")
        .help("Alerts raised since the store began.")
        .callback(call -> call.call((double) counts.get().raised()))
        .register(registry);
    gauge(
        "chordlog_alerts_watching",
        "1 while the watch for alerts looks as often as it should.",
        null,
        () -> counts.get().watching() ? 1 : 0);
  }

  /** For a service that tells people of alerts; asks the store each time. */
  public void messages(Supplier<DeliveryStatus> status) {
    GaugeWithCallback.builder()
        .name("chordlog_alert_messages")
        .help("Messages about alerts in the last 90 days, by what became of them.")
        .labelNames("state")
        .callback(
            call -> {
              DeliveryStatus now = status.get();
              call.call((double) now.waiting(), "waiting");
              call.call((double) now.delivered(), "delivered");
              call.call((double) now.failed(), "failed");
            })
        .register(registry);
  }

  /** For a service that delivers to a plant; counts what waits each time. */
  public void plant(Supplier<ForwardStatus> status, LongSupplier nowMicros) {
    gauge(
        "chordlog_plant_connected",
        "1 while what is recorded is delivered to the plant.",
        null,
        () -> status.get().problem().isEmpty() && status.get().counts().connections() > 0 ? 1 : 0);
    gauge(
        "chordlog_plant_waiting_rows",
        "Readings and changed records that the plant does not have yet.",
        null,
        () -> status.get().rest().rows());
    gauge(
        "chordlog_plant_waiting",
        "Age of the newest reading that the plant does not have yet; 0 without any.",
        Unit.SECONDS,
        () -> age(status.get().rest().lastMicros(), nowMicros.getAsLong()));
    gauge(
        "chordlog_plant_last_delivery",
        "Time since the plant took something; 0 before the first.",
        Unit.SECONDS,
        () -> age(status.get().lastDeliveredMicros(), nowMicros.getAsLong()));
    CounterWithCallback.builder()
        .name("chordlog_plant_delivered_rows")
        .help("Rows delivered to the plant.")
        .callback(call -> call.call((double) status.get().counts().rows()))
        .register(registry);
  }

  private static double age(long micros, long nowMicros) {
    return micros == 0 ? 0 : Math.max(0, nowMicros - micros) / 1e6;
  }

  /** A number of one workshop computer of a plant. */
  public record OfEdge(String edge, double value) {}

  /** For the service of a plant; asks it each time. */
  public void ofEdges(String name, String help, Supplier<List<OfEdge>> values) {
    GaugeWithCallback.builder()
        .name(name)
        .help(help)
        .labelNames("edge")
        .callback(call -> values.get().forEach(each -> call.call(each.value(), each.edge())))
        .register(registry);
  }

  private void stationMetrics() {
    counter("chordlog_samples", "Samples decoded.", s -> s.counts().samples());
    counter("chordlog_damaged_frames", "Frames refused.", s -> s.counts().damagedFrames());
    counter("chordlog_readings", "Readings committed.", s -> s.counts().readings());
    counter("chordlog_dropped_readings", "Readings lost.", s -> s.counts().droppedReadings());
    counter("chordlog_dropped_samples", "Raw samples lost.", s -> s.counts().droppedSamples());
    counter("chordlog_link_reopenings", "Links come back.", s -> s.counts().reopenings());
    rejections();
    linkStates();
  }

  private void storeMetrics() {
    store(
        "chordlog_store_writable",
        "1 while readings can be kept.",
        null,
        h -> h.writable() ? 1 : 0);
    store("chordlog_store_queue_depth", "Commands that wait.", null, h -> h.queue().waiting());
    store("chordlog_store_queue_capacity", "Room for them.", null, h -> h.queue().capacity());
    store(
        "chordlog_store_commit_p95_seconds",
        "95th percentile of the newest commits.",
        Unit.SECONDS,
        h -> h.commits().millisP95() / MILLIS);
    store("chordlog_database_bytes", "Database file.", Unit.BYTES, h -> h.space().dataBytes());
    store("chordlog_free_space_bytes", "Free on the disk.", Unit.BYTES, h -> h.space().freeBytes());
    store("chordlog_database_wal_bytes", "Write-ahead log.", Unit.BYTES, h -> h.space().logBytes());
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

  private void store(
      String name, String help, @Nullable Unit unit, ToDoubleFunction<StoreHealth> value) {
    gauge(name, help, unit, () -> value.applyAsDouble(store.get()));
  }

  private void gauge(String name, String help, @Nullable Unit unit, DoubleSupplier value) {
    GaugeWithCallback.Builder builder =
        GaugeWithCallback.builder()
            .name(name)
            .help(help)
            .callback(call -> call.call(value.getAsDouble()));
    if (unit != null) {
      builder.unit(unit);
    }
    builder.register(registry);
  }

  private static String lower(String name) {
    return name.toLowerCase(Locale.ROOT);
  }

  /** The exposition, in the format that the Accept header asks for. */
  Exposition expose(@Nullable String accept) {
    ExpositionFormatWriter writer = ExpositionFormats.init().findWriter(accept);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      writer.write(out, registry.scrape());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new Exposition(writer.getContentType(), out.toByteArray());
  }

  /** What is sent to the one that scrapes. */
  @SuppressWarnings("ArrayRecordComponent")
  record Exposition(String contentType, byte[] text) {}
}
