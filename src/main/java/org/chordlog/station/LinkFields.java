package org.chordlog.station;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.chordlog.link.LinkKind;
import org.chordlog.link.LinkSettings;
import org.chordlog.link.ReplaySettings;
import org.chordlog.link.SerialSettings;
import org.chordlog.link.SerialSettings.FlowControl;
import org.chordlog.link.SerialSettings.FootSwitch;
import org.chordlog.link.SerialSettings.LineState;
import org.chordlog.link.SerialSettings.Parity;
import org.chordlog.link.SerialSettings.StopBits;
import org.chordlog.link.TcpSettings;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Fault;
import org.chordlog.yaml.FieldBinder;
import org.jspecify.annotations.Nullable;

/** The part {@code link} of the station file; what is not given takes its default. */
interface LinkFields {
  LinkSettings settings();

  /** Reads the part by its {@code kind}; serial where none is given. */
  static @Nullable LinkSettings read(FieldBinder binder, String path, @Nullable JsonNode node) {
    if (!(node instanceof ObjectNode given)) {
      binder.add(path, node == null ? "" : node, "is missing", "kind, port, …");
      return null;
    }
    ObjectNode rest = given.deepCopy();
    @Nullable JsonNode kind = rest.remove("kind");
    @Nullable Class<? extends LinkFields> type = typeOf(kind == null ? "serial" : kind.asText());
    if (type == null) {
      binder.add(path + ".kind", String.valueOf(kind), "is not a kind of link", kinds());
      return null;
    }
    @Nullable LinkFields fields = binder.bind(path, rest, type);
    return fields == null ? null : binder.under(path, fields::settings);
  }

  private static @Nullable Class<? extends LinkFields> typeOf(String name) {
    return Arrays.stream(LinkKind.values())
        .filter(kind -> kind.name().equalsIgnoreCase(name))
        .findFirst()
        .map(LinkFields::typeOf)
        .orElse(null);
  }

  private static Class<? extends LinkFields> typeOf(LinkKind kind) {
    return switch (kind) {
      case SERIAL -> Serial.class;
      case TCP -> Tcp.class;
      case REPLAY -> Replay.class;
    };
  }

  private static String kinds() {
    return Arrays.stream(LinkKind.values())
        .map(kind -> kind.name().toLowerCase(Locale.ROOT))
        .collect(Collectors.joining(", "));
  }

  private static <T> T or(@Nullable T given, T otherwise) {
    return given == null ? otherwise : given;
  }

  /** A serial port. */
  record Serial(
      @Nullable String port,
      @Nullable Integer rate,
      @Nullable Integer dataBits,
      @Nullable Parity parity,
      @Nullable StopBits stopBits,
      @Nullable FlowControl flowControl,
      @Nullable LineState dtr,
      @Nullable LineState rts,
      @Nullable Boolean exclusive,
      @Nullable FootSwitch footSwitch)
      implements LinkFields {
    private static final int MOST_RATE = 4_000_000;

    @Override
    public SerialSettings settings() {
      List<Fault> faults = new ArrayList<>();
      within(faults, "rate", or(rate, 9_600), 50, MOST_RATE);
      within(faults, "dataBits", or(dataBits, 8), 5, 8);
      String where = checkedPort(faults);
      if (!faults.isEmpty()) {
        throw new BadInput(faults);
      }
      SerialSettings usual = SerialSettings.of(where);
      return new SerialSettings(
          where,
          or(rate, usual.rate()),
          or(dataBits, usual.dataBits()),
          or(parity, usual.parity()),
          or(stopBits, usual.stopBits()),
          or(flowControl, usual.flowControl()),
          or(dtr, usual.dtr()),
          or(rts, usual.rts()),
          or(exclusive, usual.exclusive()),
          or(footSwitch, usual.footSwitch()));
    }

    private String checkedPort(List<Fault> faults) {
      String given = or(port, "");
      if (!SerialSettings.namesPort(given)) {
        faults.add(
            new Fault(
                "port",
                port == null ? "" : "'" + given + "'",
                port == null ? "is missing" : "does not name a port",
                "an absolute path, COM1…, serial:NUMBER or description:TEXT"));
      }
      return given;
    }
  }

  /** A serial device server. */
  record Tcp(@Nullable String host, @Nullable Integer port) implements LinkFields {
    @Override
    public TcpSettings settings() {
      List<Fault> faults = new ArrayList<>();
      if (host == null || host.isBlank()) {
        faults.add(new Fault("host", "", "is missing", "a name or address"));
      } else if (host.matches(".*[^:]:[0-9]+")) {
        faults.add(new Fault("host", host, "has a port in it", "the host alone, beside port"));
      }
      if (port == null) {
        faults.add(new Fault("port", "", "is missing", "1 to 65535"));
      } else {
        within(faults, "port", port, 1, 65_535);
      }
      if (!faults.isEmpty()) {
        throw new BadInput(faults);
      }
      return new TcpSettings(or(host, ""), or(port, 0));
    }
  }

  /** A recorded stream. */
  record Replay(@Nullable String file, @Nullable Double speed) implements LinkFields {
    @Override
    public ReplaySettings settings() {
      double times = or(speed, 1.0);
      if (!(times >= 0 && times <= 1e6)) {
        throw new BadInput("speed", times, "is out of range", "0 (as fast as possible) to 1000000");
      }
      try {
        return new ReplaySettings(Path.of(or(file, "")), times);
      } catch (InvalidPathException e) {
        throw new BadInput("file", or(file, ""), "is not a path", "a recorded stream");
      }
    }
  }

  private static void within(List<Fault> faults, String field, int value, int least, int most) {
    if (value < least || value > most) {
      faults.add(
          new Fault(field, Integer.toString(value), "is out of range", least + " to " + most));
    }
  }
}
