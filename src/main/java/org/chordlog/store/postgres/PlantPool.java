package org.chordlog.store.postgres;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.util.concurrent.TimeUnit;
import org.chordlog.store.PlantAddress;

/** A few connections for all edges of a plant; none is opened before it is asked for. */
final class PlantPool {
  private static final long WAIT_MILLIS = 3_000;
  private static final long PROBE_MILLIS = 2_000;

  private PlantPool() {}

  static HikariDataSource open(PlantAddress address, int most) {
    return open(address, most, PlantConnections.Limits.PAGES);
  }

  static HikariDataSource open(PlantAddress address, int most, PlantConnections.Limits limits) {
    HikariConfig config = new HikariConfig();
    config.setPoolName("plant");
    config.setDataSource(new PlantSource(address, limits));
    config.setMaximumPoolSize(most);
    config.setMinimumIdle(0);
    config.setIdleTimeout(TimeUnit.MINUTES.toMillis(1));
    config.setConnectionTimeout(WAIT_MILLIS);
    config.setValidationTimeout(PROBE_MILLIS);
    config.setMaxLifetime(TimeUnit.MINUTES.toMillis(15));
    config.setInitializationFailTimeout(-1);
    return new HikariDataSource(config);
  }
}
