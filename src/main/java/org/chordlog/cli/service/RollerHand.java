package org.chordlog.cli.service;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import org.chordlog.measure.Reading;
import org.chordlog.simulator.Scenario;

/** How the demo's operator moves the rollers after a piece, on a scale in mm. */
enum RollerHand {
  /** As the scenario is written. */
  WRITTEN,
  /** As the station page advises. */
  FOLLOWS,
  /** Never. */
  IGNORES,
  /** By each reading's whole deviation, as if it were all the machine's doing. */
  CHASES;

  private static final Duration PATIENCE = Duration.ofSeconds(10);
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final HttpClient CLIENT = HttpClient.newHttpClient();

  /** Whether the simulator leaves the scenario's own corrections out. */
  boolean byHand() {
    return this != WRITTEN;
  }

  /** By how much, 0: not at all; {@code page}: address of the station's summary. */
  double move(Scenario scenario, Reading reading, URI page)
      throws IOException, InterruptedException {
    return switch (this) {
      case WRITTEN, IGNORES -> 0;
      case FOLLOWS -> advised(scenario, page);
      case CHASES -> chased(scenario, reading);
    };
  }

  /** Where the page names a direction but no amount yet, the operator makes one up. */
  private static double advised(Scenario scenario, URI page)
      throws IOException, InterruptedException {
    HttpRequest request = HttpRequest.newBuilder(page).timeout(PATIENCE).build();
    String answer = CLIENT.send(request, BodyHandlers.ofString()).body();
    JsonNode said = JSON.readTree(answer).path("correction");
    if (said.path("action").asText().equals("AMOUNT_UNKNOWN")) {
      return guessed(scenario, said.path("levelMm").asDouble());
    }
    return said.path("amount").isNumber() ? said.path("amount").asDouble() : 0;
  }

  private static double chased(Scenario scenario, Reading reading) {
    Double radius = reading.radius().radiusMm();
    return radius == null ? 0 : guessed(scenario, radius - scenario.job().targetMm());
  }

  /** By the chord of the outer rollers: dκ = 2/a² for one mm, so dR = −R²·2/a². */
  private static double guessed(Scenario scenario, double offMm) {
    double half = scenario.machine().halfDistanceMm();
    double target = scenario.job().targetMm();
    return offMm * half * half / (2 * target * target);
  }
}
