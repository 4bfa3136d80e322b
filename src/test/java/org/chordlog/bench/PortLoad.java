package org.chordlog.bench;

import static java.nio.charset.StandardCharsets.US_ASCII;

import com.fazecast.jSerialComm.SerialPort;
import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongSupplier;
import org.chordlog.capture.CaptureOptions;
import org.chordlog.decode.BuiltInProfile;
import org.chordlog.link.SerialSettings;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Indicator;
import org.chordlog.simulator.PseudoTerminal;
import org.chordlog.station.StationClock;
import org.chordlog.station.StationSettings;
import org.chordlog.station.StationStatus;
import org.chordlog.station.Stations;
import org.chordlog.station.ZeroRule;
import org.chordlog.store.sqlite.SqliteStore;

/**
 * Lines a second from one pseudo-terminal: split by bare jSerialComm reads, against a whole station
 * (decoded, captured, every sample in the durable trace). Rounds alternate; prints medians and
 * their ratio.
 */
public final class PortLoad {
  private static final int ROUNDS = 7;
  private static final long ROUND_NANOS = 2_000_000_000L;

  private PortLoad() {}

  public static void main(String[] arguments) throws Exception {
    double[] lines = new double[ROUNDS];
    double[] bytes = new double[ROUNDS];
    double[] station = new double[ROUNDS];
    bareRound(PortLoad::readLines);
    stationRound();
    for (int i = 0; i < ROUNDS; i++) {
      lines[i] = bareRound(PortLoad::readLines);
      bytes[i] = bareRound(PortLoad::countLines);
      station[i] = stationRound();
      System.out.printf(
          Locale.ROOT,
          "lines %.0f  counted %.0f  station %.0f lines/s%n",
          lines[i],
          bytes[i],
          station[i]);
    }
    System.out.printf(
        Locale.ROOT,
        "median: line by line %.0f, counted %.0f, station %.0f lines/s; station / line by line %.2f"
            + " (budget 0.80), station / counted %.2f%n",
        median(lines),
        median(bytes),
        median(station),
        median(station) / median(lines),
        median(station) / median(bytes));
    double ratio = median(station) / median(lines);
    new BudgetRow(
            "one port: decoded, captured, logged, durable",
            "%,.0f lines/s".formatted(median(station)),
            "%,.0f lines/s (jSerialComm alone, line by line)".formatted(median(lines)),
            ratio,
            "at least 0.80",
            ratio >= 0.8)
        .print();
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }

  /** Takes lines from a port, and counts them, until it is told to stop. */
  private interface Reader {
    void read(SerialPort port, AtomicLong lines, AtomicBoolean done);
  }

  private static double bareRound(Reader how) throws Exception {
    try (PseudoTerminal terminal = PseudoTerminal.open()) {
      SerialPort port = SerialPort.getCommPort(terminal.path().toString());
      port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, 200, 0);
      if (!port.openPort()) {
        throw new IOException("not opened");
      }
      AtomicLong lines = new AtomicLong();
      AtomicBoolean done = new AtomicBoolean();
      Thread reader = new Thread(() -> how.read(port, lines, done));
      reader.start();
      double rate = rate(terminal, lines::get);
      done.set(true);
      reader.join();
      port.closePort();
      return rate;
    }
  }

  private static void countLines(SerialPort port, AtomicLong lines, AtomicBoolean done) {
    byte[] buffer = new byte[16_384];
    while (!done.get()) {
      int count = port.readBytes(buffer, buffer.length);
      long found = 0;
      for (int i = 0; i < count; i++) {
        found += buffer[i] == '\n' ? 1 : 0;
      }
      lines.addAndGet(found);
    }
  }

  private static void readLines(SerialPort port, AtomicLong lines, AtomicBoolean done) {
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                new Patient(port.getInputStreamWithSuppressedTimeoutExceptions(), done),
                US_ASCII))) {
      while (!done.get() && reader.readLine() != null) {
        lines.incrementAndGet();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Asks again where the port says 0 bytes after a time-out, which readers do not stand. */
  private static final class Patient extends FilterInputStream {
    private final AtomicBoolean done;

    Patient(InputStream port, AtomicBoolean done) {
      super(port);
      this.done = done;
    }

    @Override
    public int read(byte[] into, int from, int most) throws IOException {
      int count = 0;
      while (count == 0 && !done.get()) {
        count = super.read(into, from, most);
      }
      return count == 0 ? -1 : count;
    }
  }

  private static double stationRound() throws Exception {
    Path directory = Files.createTempDirectory("port-load");
    try (PseudoTerminal terminal = PseudoTerminal.open();
        SqliteStore store = SqliteStore.open(directory);
        Stations stations = new Stations(store, StationClock.system())) {
      stations.add(settings(terminal.path()));
      double rate = rate(terminal, () -> stations.status("load").counts().samples());
      StationStatus.Counts counts = stations.status("load").counts();
      if (counts.droppedSamples() > 0) {
        System.out.println("dropped: " + counts.droppedSamples());
      }
      return rate;
    }
  }

  private static StationSettings settings(Path port) {
    return new StationSettings(
        "load",
        "none",
        SerialSettings.of(port.toString()),
        BuiltInProfile.SIGNED_MM_LINES.profile(),
        0,
        new Indicator(0.001, 0.002, 12.7),
        new Bridge(0, "long", 200, 0.01, 0, 0, 0),
        CaptureOptions.of(CaptureMode.SETTLED),
        ZeroRule.DEFAULT,
        0);
  }

  /** Sends as fast as the device takes; the rate at which the reader counts. */
  private static double rate(PseudoTerminal terminal, LongSupplier counted) throws IOException {
    byte[] block = block();
    send(terminal, block, ROUND_NANOS / 4);
    long before = counted.getAsLong();
    long start = System.nanoTime();
    send(terminal, block, ROUND_NANOS);
    return (counted.getAsLong() - before) * 1e9 / (System.nanoTime() - start);
  }

  private static void send(PseudoTerminal terminal, byte[] block, long nanos) throws IOException {
    long until = System.nanoTime() + nanos;
    int at = 0;
    while (System.nanoTime() < until) {
      byte[] rest = at == 0 ? block : Arrays.copyOfRange(block, at, block.length);
      int taken = terminal.write(rest);
      at = (at + taken) % block.length;
      if (taken == 0) {
        Thread.onSpinWait();
      }
    }
  }

  /** A plunger that goes out and in, with noise of one step. */
  private static byte[] block() {
    ByteArrayOutputStream block = new ByteArrayOutputStream();
    for (int i = 0; i < 256; i++) {
      double mm = (i < 128 ? 5 : -6) + 0.001 * (i % 2);
      block.writeBytes(String.format(Locale.ROOT, "%+07.3f\r\n", mm).getBytes(US_ASCII));
    }
    return block.toByteArray();
  }
}
