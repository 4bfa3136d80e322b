package org.chordlog.web.service;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.chordlog.forward.ForwardStatus;
import org.chordlog.notify.AlertCounts;
import org.chordlog.notify.send.DeliveryStatus;
import org.chordlog.station.StationStatus;
import org.chordlog.station.StationStatus.LinkState;
import org.chordlog.store.StoreHealth;
import org.chordlog.web.tls.TlsState;
import org.jspecify.annotations.Nullable;

/**
 * Puts a {@link Health} together, part by part; each part adds a sentence for whatever is not well
 * with it. Used by one thread and thrown away.
 */
public final class HealthReport {
  private final List<String> reasons = new ArrayList<>();
  private final StoreHealth store;
  private final List<StationStatus> stations;
  private final int eventClients;
  private Health.@Nullable CertificateHealth certificate;
  private @Nullable AlertsHealth alerts;
  private @Nullable MessagesHealth messages;
  private @Nullable DeliveryHealth plant;

  /** {@code chartFault}: why no charts can be drawn, or empty. */
  public HealthReport(
      StoreHealth store, List<StationStatus> stations, String chartFault, int eventClients) {
    this.store = store;
    this.stations = stations;
    this.eventClients = eventClients;
    add(store);
    stations.forEach(this::add);
    if (!chartFault.isEmpty()) {
      reasons.add(chartFault);
    }
  }

  /** More that is not well, each in a sentence. */
  public HealthReport because(List<String> more) {
    reasons.addAll(more);
    return this;
  }

  /** The certificate, where the service speaks TLS itself. */
  public HealthReport certificate(Optional<TlsState> tls, Instant now) {
    tls.ifPresent(
        each -> {
          reasons.addAll(each.reasons(now));
          certificate = Health.CertificateHealth.of(each, now);
        });
    return this;
  }

  /** The alerts; null where nothing is watched. */
  public HealthReport alerts(@Nullable AlertCounts counts) {
    if (counts == null) {
      return this;
    }
    if (!counts.watching()) {
      reasons.add("alerts: the watch for them has not looked for a minute or more");
    }
    alerts = AlertsHealth.of(counts);
    return this;
  }

  /** The messages about alerts; null where nobody is told. */
  public HealthReport messages(@Nullable DeliveryStatus told) {
    if (told == null) {
      return this;
    }
    told.problems().forEach(each -> reasons.add("alerts: " + each));
    messages = MessagesHealth.of(told);
    return this;
  }

  /** The delivery to the plant; null where there is none. */
  public HealthReport plant(@Nullable ForwardStatus delivery) {
    if (delivery == null) {
      return this;
    }
    if (!delivery.problem().isEmpty()) {
      reasons.add(
          "plant: %s; %s readings wait".formatted(delivery.problem(), delivery.rest().readings()));
    }
    plant = DeliveryHealth.of(delivery);
    return this;
  }

  /** Of all parts so far. */
  public Health health() {
    return new Health(
        level(),
        store.writable(),
        List.copyOf(reasons),
        Health.StoreView.of(store),
        stations.stream().map(Health.StationHealth::of).toList(),
        eventClients,
        certificate,
        alerts,
        messages,
        plant,
        Health.Program.running());
  }

  private Health.Level level() {
    if (!store.writable()) {
      return Health.Level.FAILING;
    }
    return reasons.isEmpty() ? Health.Level.WELL : Health.Level.DEGRADED;
  }

  private void add(StoreHealth store) {
    if (!store.fault().isEmpty()) {
      reasons.add("store: " + store.fault());
    } else if (!store.writable()) {
      reasons.add("store: can't be written");
    }
    store.warnings().forEach(warning -> reasons.add("store: " + warning));
    if (store.counts().droppedSamples() > 0) {
      reasons.add("store: " + store.counts().droppedSamples() + " raw samples could not be stored");
    }
    if (store.queue().waiting() > store.queue().capacity() / 2) {
      reasons.add("store: its queue is more than half full");
    }
  }

  private void add(StationStatus s) {
    if (s.link() != LinkState.OPEN) {
      reasons.add("station " + s.station() + ": " + s.message());
    }
    StationStatus.LengthNow length = s.length();
    if (length != null && (length.link() != LinkState.OPEN || !length.known())) {
      reasons.add("station " + s.station() + ": " + length.words());
    }
    if (s.doubt() != null) {
      reasons.add("station " + s.station() + ": " + s.doubt().words());
    }
    long dropped = s.counts().droppedReadings();
    if (dropped > 0) {
      reasons.add("station " + s.station() + ": " + dropped + " readings could not be stored");
    }
  }
}
