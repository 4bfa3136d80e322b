package org.chordlog.web.service;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.chordlog.forward.ForwardState;
import org.chordlog.forward.ForwardStatus;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.notify.AlertCounts;
import org.chordlog.notify.send.DeliveryStatus;
import org.chordlog.station.StationStatus;
import org.chordlog.station.StationStatus.LinkState;
import org.chordlog.store.FeedPage;
import org.chordlog.store.MeasuringPart;
import org.chordlog.store.StoreHealth;
import org.chordlog.web.http.Times;
import org.chordlog.web.tls.TlsState;
import org.jspecify.annotations.Nullable;

/** How the service is, with a sentence for everything that is not well. */
public record Health(
    Level status,
    @JsonPropertyDescription("false while readings can't be kept") boolean ready,
    List<String> reasons,
    StoreView store,
    List<StationHealth> stations,
    int eventClients,
    @JsonPropertyDescription("null where the service speaks no TLS of its own")
        @Nullable CertificateHealth certificate,
    @JsonPropertyDescription("null where nothing is watched for alerts")
        @Nullable AlertsHealth alerts,
    @JsonPropertyDescription("null where nobody is told of alerts")
        @Nullable MessagesHealth messages,
    @JsonPropertyDescription("null where no plant is named in plant.yaml")
        @Nullable DeliveryHealth plant,
    Program program) {
  /** The program, and the SHA-256 of the part of it that decides a measurement. */
  record Program(String version, String measuringPart) {
    static Program running() {
      return new Program(MeasuringPart.version(), MeasuringPart.sha256());
    }
  }

  /** How bad it is. */
  enum Level {
    WELL,
    DEGRADED,
    FAILING
  }

  /** The certificate in use. */
  record CertificateHealth(
      String validUntil,
      @JsonPropertyDescription("whole days; negative once it has expired") long daysLeft,
      @JsonPropertyDescription("why newer files are not used; empty where they are")
          String problem) {}

  /** Alerts that are not over, and the watch for them. */
  record AlertsHealth(
      @JsonPropertyDescription("false where it has not looked for a minute") boolean watching,
      @JsonPropertyDescription("null before the first") @Nullable String lastRound,
      @JsonPropertyDescription("for somebody to acknowledge them") int waiting,
      @JsonPropertyDescription("those that are not over") AlertStates open) {
    static AlertsHealth of(AlertCounts counts) {
      return new AlertsHealth(
          counts.watching(),
          counts.lastRoundMicros() == 0 ? null : Times.iso(counts.lastRoundMicros()),
          counts.waiting(),
          AlertStates.of(counts));
    }
  }

  /** How many alerts there are in each state. */
  record AlertStates(
      int unacknowledged,
      int acknowledged,
      int returnedUnacknowledged,
      int shelved,
      int outOfService) {
    static AlertStates of(AlertCounts counts) {
      return new AlertStates(
          counts.in(AlertState.UNACKNOWLEDGED),
          counts.in(AlertState.ACKNOWLEDGED),
          counts.in(AlertState.RETURNED_UNACKNOWLEDGED),
          counts.in(AlertState.SHELVED),
          counts.in(AlertState.OUT_OF_SERVICE));
    }
  }

  /** Messages about alerts to people and programs; numbers of the last 90 days. */
  record MessagesHealth(
      long waiting,
      long delivered,
      @JsonPropertyDescription("given up") long failed,
      @JsonPropertyDescription("given up in the last 24 hours") long failedLately) {}

  /** The delivery of what is recorded here to the database of the plant. */
  record DeliveryHealth(
      ForwardState state,
      @JsonPropertyDescription("why nothing is delivered now; empty where it is") String problem,
      @JsonPropertyDescription("readings that the plant does not have yet") long readingsWaiting,
      @JsonPropertyDescription("these and changed records") long rowsWaiting,
      @JsonPropertyDescription("when the first of these readings was taken; null without any")
          @Nullable String waitingSince,
      @JsonPropertyDescription("when the last of them was taken; null without any")
          @Nullable String newestWaiting,
      @JsonPropertyDescription("null before the first delivery") @Nullable String lastDelivered) {
    static DeliveryHealth of(ForwardStatus now) {
      FeedPage.Rest rest = now.rest();
      return new DeliveryHealth(
          now.state(),
          now.problem(),
          rest.readings(),
          rest.rows(),
          time(rest.firstMicros()),
          time(rest.lastMicros()),
          time(now.lastDeliveredMicros()));
    }

    private static @Nullable String time(long micros) {
      return micros == 0 ? null : Times.iso(micros);
    }
  }

  /** A station in one line. */
  record StationHealth(String station, LinkState link, String message, String since) {}

  /** The store in figures. */
  record StoreView(
      boolean writable,
      String fault,
      int queuedCommands,
      int queueCapacity,
      long committedReadings,
      long droppedSamples,
      double commitMillisP95,
      long databaseBytes,
      long walBytes) {
    public static StoreView of(StoreHealth h) {
      return new StoreView(
          h.writable(),
          h.fault(),
          h.queue().waiting(),
          h.queue().capacity(),
          h.counts().committedReadings(),
          h.counts().droppedSamples(),
          h.commits().millisP95(),
          h.space().dataBytes(),
          h.space().logBytes());
    }
  }

  public static Health of(
      StoreHealth store, List<StationStatus> stations, String chartFault, int eventClients) {
    List<String> reasons = new ArrayList<>();
    storeReasons(store, reasons);
    stations.forEach(station -> stationReasons(station, reasons));
    if (!chartFault.isEmpty()) {
      reasons.add(chartFault);
    }
    Level level =
        !store.writable() ? Level.FAILING : reasons.isEmpty() ? Level.WELL : Level.DEGRADED;
    return new Health(
        level,
        store.writable(),
        List.copyOf(reasons),
        StoreView.of(store),
        stations.stream().map(Health::line).toList(),
        eventClients,
        null,
        null,
        null,
        null,
        Program.running());
  }

  /** The same with more that is not well. */
  public Health withReasons(List<String> more) {
    List<String> all = new ArrayList<>(reasons);
    all.addAll(more);
    return with(all, certificate, alerts, messages);
  }

  /** The same with the certificate of the service, where it has one. */
  public Health with(Optional<TlsState> tls, Instant now) {
    return tls.map(each -> with(each, now)).orElse(this);
  }

  private Health with(TlsState tls, Instant now) {
    List<String> all = new ArrayList<>(reasons);
    all.addAll(tls.reasons(now));
    return with(
        all,
        new CertificateHealth(tls.notAfter().toString(), tls.daysLeft(now), tls.problem()),
        alerts,
        messages);
  }

  /** The same with those parts; more reasons than before make what was well degraded. */
  private Health with(
      List<String> all,
      @Nullable CertificateHealth thatCertificate,
      @Nullable AlertsHealth thatAlerts,
      @Nullable MessagesHealth thatMessages) {
    return new Health(
        status == Level.WELL && !all.isEmpty() ? Level.DEGRADED : status,
        ready,
        List.copyOf(all),
        store,
        stations,
        eventClients,
        thatCertificate,
        thatAlerts,
        thatMessages,
        plant,
        program);
  }

  /** The same with the delivery to the plant, null where there is none. */
  public Health with(@Nullable ForwardStatus delivery) {
    if (delivery == null) {
      return this;
    }
    List<String> all = new ArrayList<>(reasons);
    if (!delivery.problem().isEmpty()) {
      all.add(
          "plant: %s; %d readings wait".formatted(delivery.problem(), delivery.rest().readings()));
    }
    return new Health(
        status == Level.WELL && !all.isEmpty() ? Level.DEGRADED : status,
        ready,
        List.copyOf(all),
        store,
        stations,
        eventClients,
        certificate,
        alerts,
        messages,
        DeliveryHealth.of(delivery),
        program);
  }

  /** The same with the alerts, null where nothing is watched. */
  public Health with(@Nullable AlertCounts counts) {
    if (counts == null) {
      return this;
    }
    List<String> all = new ArrayList<>(reasons);
    if (!counts.watching()) {
      all.add("alerts: the watch for them has not looked for a minute or more");
    }
    return with(all, certificate, AlertsHealth.of(counts), messages);
  }

  /** The same with the messages about alerts, null where nobody is told. */
  public Health with(@Nullable DeliveryStatus told) {
    if (told == null) {
      return this;
    }
    List<String> all = new ArrayList<>(reasons);
    told.problems().forEach(each -> all.add("alerts: " + each));
    return with(
        all,
        certificate,
        alerts,
        new MessagesHealth(told.waiting(), told.delivered(), told.failed(), told.failedLately()));
  }

  private static void storeReasons(StoreHealth store, List<String> reasons) {
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

  private static void stationReasons(StationStatus s, List<String> reasons) {
    if (s.link() != LinkState.OPEN) {
      reasons.add("station " + s.station() + ": " + s.message());
    }
    StationStatus.LengthNow length = s.length();
    if (length != null && (length.link() != LinkState.OPEN || !length.known())) {
      reasons.add("station " + s.station() + ": " + length.words());
    }
    if (s.doubt() != null) {
      reasons.add("station " + s.station() + ": " + s.doubt());
    }
    long dropped = s.counts().droppedReadings();
    if (dropped > 0) {
      reasons.add("station " + s.station() + ": " + dropped + " readings could not be stored");
    }
  }

  private static StationHealth line(StationStatus s) {
    return new StationHealth(s.station(), s.link(), s.message(), Times.iso(s.sinceMicros()));
  }
}
