package org.chordlog.web.service;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.time.Instant;
import java.util.List;
import org.chordlog.station.StationStatus;
import org.chordlog.station.StationStatus.LinkState;
import org.chordlog.store.MeasuringPart;
import org.chordlog.store.StoreHealth;
import org.chordlog.web.http.Times;
import org.chordlog.web.tls.TlsState;
import org.jspecify.annotations.Nullable;

/**
 * How the service is, with a sentence for everything that is not well; {@link HealthReport} puts it
 * together.
 */
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
          String problem) {
    static CertificateHealth of(TlsState tls, Instant now) {
      return new CertificateHealth(tls.notAfter().toString(), tls.daysLeft(now), tls.problem());
    }
  }

  /** A station in one line. */
  record StationHealth(String station, LinkState link, String message, String since) {
    static StationHealth of(StationStatus now) {
      return new StationHealth(
          now.station(), now.link(), now.message(), Times.iso(now.sinceMicros()));
    }
  }

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
    static StoreView of(StoreHealth h) {
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
}
