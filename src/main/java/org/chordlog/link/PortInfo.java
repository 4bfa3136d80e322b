package org.chordlog.link;

import java.util.List;

/**
 * A serial port as the system knows it; texts are empty and USB ids -1 where it does not say.
 * {@code stableLinks} are the names that stay when the port's number changes.
 */
public record PortInfo(
    String path,
    String description,
    String manufacturer,
    String serialNumber,
    int usbVendorId,
    int usbProductId,
    List<String> stableLinks) {
  public PortInfo {
    stableLinks = List.copyOf(stableLinks);
  }
}
