package org.chordlog.notify;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertState;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A watch over a store on disk and the statistics of the service. */
abstract class WatchOfShop {
  @TempDir Path directory;
  WatchedShop shop;

  @BeforeEach
  void open() {
    shop = new WatchedShop(directory, Duration.ZERO);
  }

  @AfterEach
  void close() {
    shop.close();
  }

  Alert only() {
    List<Alert> open = shop.store.alerts().open();
    assertEquals(1, open.size(), open::toString);
    return open.get(0);
  }

  AlertState state(Alert alert) {
    return shop.store.alerts().find(alert.id()).orElseThrow().state();
  }
}
