package org.chordlog.cli.device;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.Locale;
import java.util.function.Consumer;
import org.chordlog.decode.Arrival;
import org.chordlog.decode.Escapes;
import org.chordlog.link.LinkSettings;
import org.chordlog.link.ReplaySettings;
import org.chordlog.link.SerialSettings;
import org.chordlog.link.TcpSettings;
import org.chordlog.station.PortSearch.Heard;
import org.chordlog.station.RegisterSearch;
import org.jspecify.annotations.Nullable;

/** Prints bytes as they come: seconds, text, bytes. */
final class LiveText implements Consumer<Arrival> {
  private static final HexFormat HEX = HexFormat.ofDelimiter(" ").withUpperCase();
  private static final int ROW = 16;

  /** A serial port was named by the user, so what was tried there is told; else where it was. */
  private static final LinkSettings.Cases<String> DESCRIPTION =
      new LinkSettings.Cases<>() {
        @Override
        public String serial(SerialSettings serial) {
          return frame(serial);
        }

        @Override
        public String tcp(TcpSettings tcp) {
          return tcp.target();
        }

        @Override
        public String replay(ReplaySettings replay) {
          return replay.target();
        }
      };

  private final PrintWriter out;
  private @Nullable Long startNanos;

  LiveText(PrintWriter out) {
    this.out = out;
  }

  @Override
  public void accept(Arrival arrival) {
    if (startNanos == null) {
      startNanos = arrival.monotonicNanos();
    }
    double seconds = (arrival.monotonicNanos() - startNanos) / 1e9;
    byte[] bytes = arrival.bytes();
    for (int from = 0; from < bytes.length; from += ROW) {
      int to = Math.min(bytes.length, from + ROW);
      String text = new String(bytes, from, to - from, StandardCharsets.ISO_8859_1);
      out.printf(
          Locale.ROOT,
          "%9.3f s  %-28s  %s%n",
          seconds,
          Escapes.show(text),
          HEX.formatHex(bytes, from, to));
    }
    out.flush();
  }

  void tried(LinkSettings settings, Heard heard) {
    long bytes = heard.bytes();
    out.printf(
        Locale.ROOT,
        "-- %s: %d bytes, %s%n",
        describe(settings),
        bytes,
        bytes == 0
            ? "nothing came"
            : String.format(
                Locale.ROOT, "looks like an indicator: %.0f %%", 100 * heard.likeness()));
    out.flush();
  }

  void answered(LinkSettings settings, RegisterSearch.Found found) {
    String what =
        found.answered()
            ? found.registers() + " registers, read " + found.sweeps() + " times"
            : "no answer";
    say("-- " + describe(settings) + ": " + what);
  }

  void say(String line) {
    out.println(line);
    out.flush();
  }

  static String describe(LinkSettings settings) {
    return settings.match(DESCRIPTION);
  }

  private static String frame(SerialSettings serial) {
    String stop =
        switch (serial.stopBits()) {
          case ONE -> "1";
          case ONE_AND_A_HALF -> "1.5";
          case TWO -> "2";
        };
    return serial.rate() + " " + serial.dataBits() + serial.parity().name().charAt(0) + stop;
  }
}
