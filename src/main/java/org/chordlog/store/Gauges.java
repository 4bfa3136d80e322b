package org.chordlog.store;

import java.util.List;
import java.util.Optional;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Master;
import org.chordlog.measure.Zero;

/** Bridges, zeros, calibrations, masters and checks; nothing is ever overwritten. */
public interface Gauges {
  Bridge add(Bridge bridge, String by);

  /** Keeps a changed bridge under a new id; readings go on naming the old one. */
  Bridge replace(long bridgeId, Bridge bridge, String by, String why);

  Optional<Bridge> bridge(long id);

  /** Bridges in use, that is, not replaced. */
  List<Bridge> bridges();

  void mount(String station, long bridgeId, long atMicros, String by);

  Optional<Bridge> mountedOn(String station);

  Zero add(Zero zero);

  Optional<Zero> latestZero(String station);

  List<Zero> zeros(String station, int limit);

  Calibration add(Calibration calibration);

  Optional<Calibration> latestCalibration(String station, long bridgeId);

  List<Calibration> calibrations(int limit);

  Master add(Master master);

  List<Master> masters();

  InterimCheck add(InterimCheck check);

  List<InterimCheck> checks(String station, long bridgeId, int limit);
}
