package org.chordlog.web;

import java.util.Map;
import org.chordlog.link.LinkSettings;
import org.chordlog.link.SerialSettings;
import org.chordlog.link.TcpSettings;
import org.chordlog.measure.BadInput;

/** A link as words and as the station file has it. */
final class LinkFacts {
  private LinkFacts() {}

  static PortProbeRoutes.Try of(int attempt, LinkSettings link) {
    if (link instanceof SerialSettings serial) {
      return new PortProbeRoutes.Try(
          attempt,
          words(serial),
          Map.of(
              "kind", "serial",
              "port", serial.port(),
              "rate", serial.rate(),
              "dataBits", serial.dataBits(),
              "parity", serial.parity(),
              "stopBits", serial.stopBits()));
    }
    if (link instanceof TcpSettings tcp) {
      return new PortProbeRoutes.Try(
          attempt,
          "network address " + tcp.target(),
          Map.of("kind", "tcp", "host", tcp.host(), "port", tcp.port()));
    }
    throw new BadInput("port", link.target(), "is of another kind", "serial port, HOST:PORT");
  }

  private static String words(SerialSettings s) {
    return s.rate()
        + " bits a second, parity "
        + s.parity().name().toLowerCase(java.util.Locale.ROOT);
  }
}
