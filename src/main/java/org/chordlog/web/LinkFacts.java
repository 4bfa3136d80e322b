package org.chordlog.web;

import java.util.Locale;
import java.util.Map;
import org.chordlog.link.LinkSettings;
import org.chordlog.link.ReplaySettings;
import org.chordlog.link.SerialSettings;
import org.chordlog.link.TcpSettings;
import org.chordlog.measure.BadInput;

/** A setting that was tried, as words and as the station file has it. */
record LinkFacts(int attempt) implements LinkSettings.Cases<PortProbeRoutes.Try> {
  static PortProbeRoutes.Try of(int attempt, LinkSettings link) {
    return link.match(new LinkFacts(attempt));
  }

  @Override
  public PortProbeRoutes.Try serial(SerialSettings serial) {
    String parity = serial.parity().name().toLowerCase(Locale.ROOT);
    return new PortProbeRoutes.Try(
        attempt,
        serial.rate() + " bits a second, parity " + parity,
        Map.of(
            "kind", "serial",
            "port", serial.port(),
            "rate", serial.rate(),
            "dataBits", serial.dataBits(),
            "parity", serial.parity(),
            "stopBits", serial.stopBits()));
  }

  @Override
  public PortProbeRoutes.Try tcp(TcpSettings tcp) {
    return new PortProbeRoutes.Try(
        attempt,
        "network address " + tcp.target(),
        Map.of("kind", "tcp", "host", tcp.host(), "port", tcp.port()));
  }

  /** No recording is searched for, so none is ever tried. */
  @Override
  public PortProbeRoutes.Try replay(ReplaySettings replay) {
    throw new BadInput("port", replay.target(), "is a recording", "serial port, HOST:PORT");
  }
}
