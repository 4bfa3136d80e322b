package org.chordlog.link;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

final class PortInfoTest {
  @Test
  void adaptersThatNoIdTellsApartAreNamedAtEachOther() {
    List<PortInfo> ports =
        List.of(
            usb("/dev/ttyUSB0", "A1"),
            usb("/dev/ttyUSB1", ""),
            usb("/dev/ttyUSB2", ""),
            builtIn("/dev/ttyS0"),
            builtIn("/dev/ttyS1"));
    assertEquals(
        List.of(List.of(), List.of("/dev/ttyUSB2"), List.of("/dev/ttyUSB1"), List.of(), List.of()),
        ports.stream().map(port -> port.among(ports).alike()).toList());
  }

  private static PortInfo usb(String path, String serialNumber) {
    return new PortInfo(
        path, "USB adapter", "", serialNumber, 0x1a86, 0x7523, List.of(), List.of());
  }

  private static PortInfo builtIn(String path) {
    return new PortInfo(path, "", "", "", -1, -1, List.of(), List.of());
  }
}
