package org.chordlog.store;

import java.util.List;
import java.util.Optional;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Master;
import org.chordlog.measure.Mounted;
import org.chordlog.measure.Zero;

/**
 * Bridges, zeros, calibrations, masters and checks. Nothing is overwritten; each {@code add} stores
 * under a new id, and newest means the highest one. Ids that do not exist throw {@link
 * org.chordlog.measure.BadInput} where something is written.
 */
public interface Gauges {
  /** With it goes an entry "bridge NAME" in {@link Changes}. */
  Bridge add(Bridge bridge, String by);

  /**
   * Stores a changed bridge under a new id; the old one is no longer in use, but readings go on
   * naming it. With it goes an entry "bridge NAME" in {@link Changes}.
   */
  Bridge replace(long bridgeId, Bridge bridge, String by, String why);

  Optional<Bridge> bridge(long id);

  /** Bridges in use, that is, not replaced, by id. */
  List<Bridge> bridges();

  void mount(String station, long bridgeId, long atMicros, String by);

  /** The bridge mounted last. */
  Optional<Bridge> mountedOn(String station);

  /** The same, with when another one was there. */
  Optional<Mounted> mounted(String station);

  Zero add(Zero zero);

  Optional<Zero> latestZero(String station);

  /** The newest zero, where it holds for the bridge as it is mounted. */
  default Optional<Zero> zeroOfMounted(String station) {
    return mounted(station).flatMap(on -> latestZero(station).filter(on::keeps));
  }

  /** Zeros of a station, the newest first. */
  List<Zero> zeros(String station, int limit);

  /** Zeros of a station that were taken in that time, ends included, in order of their numbers. */
  List<Zero> zeros(String station, long fromMicros, long toMicros);

  Calibration add(Calibration calibration);

  /**
   * From a file, all or none; each with an entry "calibration of STATION" in {@link Changes}, since
   * who calibrated is seldom who brought the file.
   */
  List<Calibration> importCalibrations(List<Calibration> calibrations, String by);

  Optional<Calibration> latestCalibration(String station, long bridgeId);

  /** Calibrations of all stations, the newest first. */
  List<Calibration> calibrations(int limit);

  /** With it goes an entry "master NAME" in {@link Changes}. */
  Master add(Master master, String by);

  /** From a file, all or none; each with an entry "master NAME" in {@link Changes}. */
  List<Master> importMasters(List<Master> masters, String by);

  /** All masters by id. */
  List<Master> masters();

  InterimCheck add(InterimCheck check);

  /** Checks of a station with a bridge, the newest first. */
  List<InterimCheck> checks(String station, long bridgeId, int limit);
}
