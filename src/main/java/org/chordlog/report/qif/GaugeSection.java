package org.chordlog.report.qif;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.xml.stream.XMLStreamException;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.report.UtcTime;

/** The gauges that took the readings, with their calibrations; none without readings. */
final class GaugeSection {
  private final QifXml xml;
  private final QifIds ids;

  GaugeSection(QifXml xml, QifIds ids) {
    this.xml = xml;
    this.ids = ids;
  }

  void write(QifDevices devices) throws XMLStreamException {
    List<QifDevices.Device> all = devices.all();
    if (all.isEmpty()) {
      return;
    }
    xml.open("MeasurementResources");
    xml.open("MeasurementDevices", "n", all.size());
    for (int i = 0; i < all.size(); i++) {
      device(all.get(i), ids.device(i));
    }
    xml.close();
    xml.close();
  }

  private void device(QifDevices.Device device, long id) throws XMLStreamException {
    Bridge bridge = device.bridge();
    xml.open("MeasurementDevice", "id", id);
    xml.text("Name", "station " + device.station());
    xml.text(
        "Description",
        "Bridge "
            + bridge.name()
            + " with depth indicator, step "
            + QifXml.plain(device.indicator().resolutionMm(), 4)
            + " mm");
    xml.text("SerialNumber", bridge.id() == 0 ? bridge.name() : "bridge " + bridge.id());
    xml.attributes(attributes(device));
    calibrations(new ArrayList<>(device.calibrations()));
    xml.close();
  }

  private static Map<String, Object> attributes(QifDevices.Device device) {
    Bridge bridge = device.bridge();
    Map<String, Object> attributes = new LinkedHashMap<>();
    attributes.put("spanMm", bridge.spanMm());
    attributes.put("spanUncertaintyMm", bridge.spanUncertaintyMm());
    attributes.put("footRadiusMm", bridge.footRadiusMm());
    attributes.put("footRadiusUncertaintyMm", bridge.footRadiusUncertaintyMm());
    attributes.put("skewLimitDegrees", bridge.skewLimitDegrees());
    if (bridge.footKind() != null) {
      attributes.put("footKind", bridge.footKind().name());
    }
    attributes.put("resolutionMm", device.indicator().resolutionMm());
    attributes.put("permissibleErrorMm", device.indicator().permissibleErrorMm());
    int number = 0;
    for (Calibration calibration : device.calibrations()) {
      String of = "calibration " + ++number + " ";
      attributes.put(of + "spanMm", calibration.spanMm());
      attributes.put(of + "zeroOffsetMm", calibration.zeroOffsetMm());
      attributes.put(of + "footRadiusMm", calibration.footRadiusMm());
    }
    return attributes;
  }

  private void calibrations(List<Calibration> calibrations) throws XMLStreamException {
    if (calibrations.isEmpty()) {
      return;
    }
    xml.open("Calibrations", "n", calibrations.size());
    for (Calibration calibration : calibrations) {
      xml.open("Calibration");
      xml.text("CalibrationDate", UtcTime.text(calibration.takenAtMicros()));
      xml.text("ExpirationDate", UtcTime.text(calibration.dueAtMicros()));
      xml.close();
    }
    xml.close();
  }
}
