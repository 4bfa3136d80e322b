package org.chordlog.store;

import java.nio.file.Path;

/** Everything that is kept. Reads never hold up writes; what was committed survives a kill. */
public interface Store extends AutoCloseable {
  Readings readings();

  Jobs jobs();

  Gauges gauges();

  Traces traces();

  Changes changes();

  Incidents incidents();

  Checkpoints checkpoints();

  StoreHealth health();

  /**
   * Writes a checked copy of everything to {@code target} while the store goes on; the target must
   * not exist.
   */
  void backup(Path target);

  @Override
  void close();
}
