package org.chordlog.web.service;

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
import java.util.function.IntSupplier;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.chordlog.forward.ForwardStatus;
import org.chordlog.notify.AlertCounts;
import org.chordlog.notify.send.DeliveryStatus;
import org.chordlog.station.StationStatus;
import org.chordlog.store.StoreHealth;
import org.jspecify.annotations.Nullable;

/**
 * Metrics for Prometheus, named after its conventions (base units, {@code _total} for counters);
 * all are read when asked for, so that they cost nothing otherwise.
 */
public final class Metrics {
  private final PrometheusRegistry registry = new PrometheusRegistry();
  private final Unlabelled unlabelled = new Unlabelled(registry);

  public Metrics(
      Supplier<List<StationStatus>> stations, Supplier<StoreHealth> store, IntSupplier clients) {
    new StationMetrics(registry, stations).register();
    new StoreMetrics(unlabelled, store).register();
    ProcessMetrics.register(registry);
    unlabelled.gauge("chordlog_event_clients", "Event clients connected.", null, clients::getAsInt);
  }

  /** For a service with TLS. */
  public void certificate(LongSupplier daysLeft) {
    unlabelled.gauge(
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
                    .forEach(
                        (state, n) -> call.call((double) n, state.name().toLowerCase(Locale.ROOT))))
        .register(registry);
    unlabelled.counter(
        "chordlog_alerts_raised",
        "Alerts raised since the store began.",
        () -> counts.get().raised());
    unlabelled.gauge(
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
    unlabelled.gauge(
        "chordlog_plant_connected",
        "1 while what is recorded is delivered to the plant.",
        null,
        () -> status.get().problem().isEmpty() && status.get().counts().connections() > 0 ? 1 : 0);
    unlabelled.gauge(
        "chordlog_plant_waiting_rows",
        "Readings and changed records that the plant does not have yet.",
        null,
        () -> status.get().rest().rows());
    unlabelled.gauge(
        "chordlog_plant_waiting",
        "Age of the newest reading that the plant does not have yet; 0 without any.",
        Unit.SECONDS,
        () -> age(status.get().rest().lastMicros(), nowMicros.getAsLong()));
    unlabelled.gauge(
        "chordlog_plant_last_delivery",
        "Time since the plant took something; 0 before the first.",
        Unit.SECONDS,
        () -> age(status.get().lastDeliveredMicros(), nowMicros.getAsLong()));
    unlabelled.counter(
        "chordlog_plant_delivered_rows",
        "Rows delivered to the plant.",
        () -> status.get().counts().rows());
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
