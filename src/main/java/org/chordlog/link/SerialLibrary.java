package org.chordlog.link;

import com.fazecast.jSerialComm.SerialPort;
import java.util.Optional;
import org.chordlog.link.LinkException.Reason;

/** The native part of the serial library, which unpacks itself into the temporary folder. */
public final class SerialLibrary {
  private SerialLibrary() {}

  /** Why serial ports can't be used, with what helps; empty when they can. Lists the ports once. */
  public static Optional<String> fault() {
    try {
      int unused = SerialPort.getCommPorts().length;
      return Optional.empty();
    } catch (LinkageError e) {
      return Optional.of(advice(String.valueOf(e.getMessage())));
    }
  }

  static LinkException notLoaded(LinkageError e) {
    return new LinkException(Reason.REFUSED, advice(String.valueOf(e.getMessage())));
  }

  private static String advice(String why) {
    return "The native serial library can't be loaded from "
        + System.getProperty("java.io.tmpdir")
        + " (is it mounted noexec?): start with -Djava.io.tmpdir=DIR of a folder that allows"
        + " programs, or unpack it and start with -DjSerialComm.library.path=DIR. "
        + why;
  }
}
