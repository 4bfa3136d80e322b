package org.chordlog.cli.device;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.chordlog.link.PortInfo;
import org.junit.jupiter.api.Test;

final class PortsTest {
  @Test
  void aNameThatTwoAdaptersShareIsWarnedOf() {
    PortInfo port =
        new PortInfo(
            "/dev/ttyUSB0",
            "USB adapter",
            "",
            "",
            0x1a86,
            0x7523,
            List.of("/dev/serial/by-path/1", "/dev/serial/by-id/usb"),
            List.of("/dev/ttyUSB1"));
    String text = Ports.text(List.of(port));
    assertTrue(text.startsWith("/dev/ttyUSB0  USB adapter  USB 1a86:7523\n"), text);
    assertTrue(text.contains("is at /dev/ttyUSB1: neither `serial:` nor a name by id"), text);
  }

  @Test
  void noPortIsSaid() {
    assertEquals(
        "No serial port. Plug the indicator in, or pair it over Bluetooth first.",
        Ports.text(List.of()));
  }
}
