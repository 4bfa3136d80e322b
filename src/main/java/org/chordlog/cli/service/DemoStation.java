package org.chordlog.cli.service;

import java.util.Locale;
import org.chordlog.simulator.Scenario;

/** The station of the demo, as a station file would have it. */
final class DemoStation {
  static final String NAME = "demo";

  /** How long the plunger must rest in life, seconds. */
  private static final double REST_SECONDS = 0.4;

  private DemoStation() {}

  /** {@code address} is the simulator's: a path, or host:port. */
  static String yaml(Scenario scenario, String address, double speed) {
    Scenario.Gauge gauge = scenario.indicator();
    return String.format(
        Locale.ROOT,
        """
        stations:
          - name: %s
            machine: %s
            link: %s
            profile: %s
            direction: counts_up
            indicator: {resolutionMm: %s, permissibleErrorMm: %s, travelMm: %s}
            capture: {mode: SETTLED, restSeconds: %s, freeAirMm: %s}
        """,
        NAME,
        text(scenario.job().machine()),
        link(address),
        gauge.profile(),
        gauge.resolutionMm(),
        gauge.permissibleErrorMm(),
        gauge.travelMm(),
        restSeconds(speed),
        gauge.showsOnFlatMm() - gauge.protrusionMm());
  }

  /** In whole milliseconds, as a person would set it. */
  private static double restSeconds(double speed) {
    return Math.max(1, Math.round(1000 * REST_SECONDS / speed)) / 1000.0;
  }

  static String link(String address) {
    if (address.startsWith("/")) {
      return "{kind: serial, port: " + text(address) + "}";
    }
    int colon = address.lastIndexOf(':');
    return "{kind: tcp, host: "
        + address.substring(0, colon)
        + ", port: "
        + address.substring(colon + 1)
        + "}";
  }

  /** As YAML reads it back, whatever is in it (YAML 1.2.2, 7.3.2, single-quoted style). */
  static String text(String name) {
    return "'" + name.replace("'", "''") + "'";
  }
}
