package org.chordlog.cli.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.chordlog.station.StationClock;
import org.chordlog.station.StationKeeper;
import org.chordlog.store.StoreSettings;
import org.chordlog.web.http.WebSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is off has no thread, so it costs nothing. */
final class AlertsOffTest {
  private static final WebSettings WEB = new WebSettings(WebSettings.LOOPBACK, 0, "", 4, 4, 65_536);

  /** Of the page of alerts: looks at nothing while no page is open. */
  private static final String OF_THE_PAGE = "alert-feed";

  @TempDir Path folder;

  private static Set<Thread> alive() {
    return new HashSet<>(Thread.getAllStackTraces().keySet());
  }

  private static Set<String> ofAlerts(Set<Thread> before) {
    Set<Thread> started = alive();
    started.removeAll(before);
    Set<String> names = new HashSet<>();
    started.stream()
        .map(Thread::getName)
        .filter(name -> name.startsWith("alert") && !name.equals(OF_THE_PAGE))
        .forEach(names::add);
    return names;
  }

  @Test
  void whereNothingIsWatchedAndNobodyIsToldNothingRuns() {
    Set<Thread> before = alive();
    try (Service service =
        Service.start(
            folder,
            StoreSettings.USUAL,
            List.of(),
            WEB,
            StationKeeper.forThisRun(),
            StationClock.system())) {
      assertTrue(service.port() > 0);
      assertEquals(Set.of(), ofAlerts(before));
    }
  }

  @Test
  void whereNobodyIsToldOnlyTheWatchRuns() {
    Set<Thread> before = alive();
    try (Service service =
        Service.start(folder, StoreSettings.USUAL, List.of(), WEB, StationKeeper.forThisRun())) {
      assertTrue(service.port() > 0);
      Set<String> names = ofAlerts(before);
      assertTrue(Set.of("alert-watch", "alert-audit").containsAll(names), names::toString);
      assertTrue(names.contains("alert-watch"), names::toString);
    }
  }
}
