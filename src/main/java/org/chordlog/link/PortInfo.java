package org.chordlog.link;

import java.util.List;

/**
 * A serial port as the system knows it; texts are empty and USB ids -1 where it does not say.
 * {@code stableLinks} are the names that stay when the port's number changes; {@code alike} are the
 * paths of other USB adapters of the same ids and serial number: the system has one name by id for
 * all of them, which goes to whichever came last.
 */
public record PortInfo(
    String path,
    String description,
    String manufacturer,
    String serialNumber,
    int usbVendorId,
    int usbProductId,
    List<String> stableLinks,
    List<String> alike) {
  public PortInfo {
    stableLinks = List.copyOf(stableLinks);
    alike = List.copyOf(alike);
  }

  /** With those of the ports there are that can't be told from it by id. */
  PortInfo among(List<PortInfo> ports) {
    List<String> same = ports.stream().filter(this::sameAdapter).map(PortInfo::path).toList();
    return new PortInfo(
        path,
        description,
        manufacturer,
        serialNumber,
        usbVendorId,
        usbProductId,
        stableLinks,
        same);
  }

  private boolean sameAdapter(PortInfo other) {
    return usbVendorId >= 0
        && !other.path.equals(path)
        && other.usbVendorId == usbVendorId
        && other.usbProductId == usbProductId
        && other.serialNumber.equals(serialNumber);
  }
}
