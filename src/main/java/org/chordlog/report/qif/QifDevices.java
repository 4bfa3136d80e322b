package org.chordlog.report.qif;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Reading;
import org.chordlog.measure.SetUp;

/** The gauges of a job, a bridge on a station each, with the calibrations that readings used. */
final class QifDevices {
  /** A bridge on a station. */
  record Device(
      String station, Bridge bridge, Indicator indicator, Set<Calibration> calibrations) {}

  private record Key(String station, long bridgeId, String bridge) {}

  private record Use(String station, long setUpId) {}

  private final Map<Key, Integer> numbers = new LinkedHashMap<>();
  private final Map<Use, Integer> byUse = new LinkedHashMap<>();
  private final List<Device> devices = new ArrayList<>();
  private final QifReadings readings;

  QifDevices(QifReadings readings) {
    this.readings = readings;
  }

  /** Number from 0 of the device that took the reading. */
  int number(Reading reading) {
    Use use = new Use(reading.station(), reading.setUpId());
    return byUse.computeIfAbsent(use, this::seen);
  }

  private int seen(Use use) {
    SetUp setUp = readings.setUp(use.setUpId());
    Bridge bridge = setUp.bridge();
    Key key = new Key(use.station(), bridge.id(), bridge.name());
    int number = numbers.computeIfAbsent(key, each -> added(use, setUp));
    Calibration calibration = setUp.calibration();
    if (calibration != null) {
      devices.get(number).calibrations().add(calibration);
    }
    return number;
  }

  private int added(Use use, SetUp setUp) {
    devices.add(
        new Device(use.station(), setUp.bridge(), setUp.indicator(), new LinkedHashSet<>()));
    return devices.size() - 1;
  }

  List<Device> all() {
    return devices;
  }
}
