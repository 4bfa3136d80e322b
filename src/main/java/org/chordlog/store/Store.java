package org.chordlog.store;

/** Everything that is kept. Reads never hold up writes; what was committed survives a kill. */
public interface Store extends AutoCloseable {
  Readings readings();

  Jobs jobs();

  Gauges gauges();

  Traces traces();

  Changes changes();

  StoreHealth health();

  @Override
  void close();
}
