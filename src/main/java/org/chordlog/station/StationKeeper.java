package org.chordlog.station;

import org.chordlog.measure.BadInput;

/**
 * Keeps what a page does to the stations, so that it is so at the next start. Each refuses with
 * {@link BadInput} and changes nothing then.
 */
public interface StationKeeper {
  /** Keeps a station that is new. */
  void add(StationSettings station);

  /** Keeps the settings of the station of that name in place of those before. */
  void replace(StationSettings station);

  /** No longer keeps the station of that name. */
  void remove(String name);

  /** For as long as the service runs. */
  static StationKeeper forThisRun() {
    return new StationKeeper() {
      @Override
      public void add(StationSettings station) {}

      @Override
      public void replace(StationSettings station) {}

      @Override
      public void remove(String name) {}
    };
  }
}
