package org.chordlog.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import org.chordlog.link.LinkSettings;
import org.chordlog.link.SerialSettings;
import org.chordlog.link.TcpSettings;
import org.chordlog.measure.BadInput;

/** A link as words and as the station file has it. */
final class LinkFacts {
  private LinkFacts() {}

  static HearingRoutes.Try of(int attempt, LinkSettings link) {
    ObjectNode node = Json.shared().createObjectNode();
    if (link instanceof SerialSettings serial) {
      node.put("kind", "serial").put("port", serial.port()).put("rate", serial.rate());
      node.put("dataBits", serial.dataBits()).put("parity", serial.parity().name());
      node.put("stopBits", serial.stopBits().name());
      return new HearingRoutes.Try(attempt, words(serial), node);
    }
    if (link instanceof TcpSettings tcp) {
      node.put("kind", "tcp").put("host", tcp.host()).put("port", tcp.port());
      return new HearingRoutes.Try(attempt, "network address " + tcp.target(), node);
    }
    throw new BadInput("port", link.target(), "is of another kind", "serial port, HOST:PORT");
  }

  private static String words(SerialSettings s) {
    return s.rate()
        + " bits a second, parity "
        + s.parity().name().toLowerCase(java.util.Locale.ROOT);
  }
}
