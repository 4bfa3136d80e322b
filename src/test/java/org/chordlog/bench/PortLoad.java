package org.chordlog.bench;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.LongSupplier;
import java.util.regex.Pattern;
import org.chordlog.decode.BuiltInProfile;
import org.chordlog.harness.Directories;
import org.chordlog.link.SerialSettings;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Indicator;
import org.chordlog.simulator.PseudoTerminal;
import org.chordlog.station.StationClock;
import org.chordlog.station.StationSettings;
import org.chordlog.station.Stations;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;

/**
 * Lines a second from one pseudo-terminal: by jSerialComm alone, in two ways, against a whole
 * station. A round lasts until the last line sent is read; of a station, until it is decoded and
 * captured, and until {@value #HELD_NANOS} ns (what a trace block gathers) before it is committed,
 * whichever is later. A line that is lost ends the program. Rounds alternate, medians. Arguments:
 * rounds (7), seconds a round (2).
 */
public final class PortLoad {
  private static final long TOO_LONG_NANOS = TimeUnit.SECONDS.toNanos(20);
  private static final long HELD_NANOS = 750_000_000;
  private static final Pattern READERS = Pattern.compile("bare-port|station-.*|store-.*");
  private static final double BUDGET = 0.8;

  private final int rounds;
  private final long nanos;

  /** Of the last round. */
  private double cpuNanosPerLine;

  private PortLoad(int rounds, double seconds) {
    this.rounds = rounds;
    this.nanos = Math.round(seconds * 1e9);
  }

  public static void main(String[] arguments) throws Exception {
    int rounds = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 7;
    double seconds = arguments.length > 1 ? Double.parseDouble(arguments[1]) : 2;
    PortLoad load = new PortLoad(rounds, seconds);
    load.station(PortSender.BLOCKS);
    for (PortSender sender : PortSender.values()) {
      load.compare(sender);
    }
  }

  private void compare(PortSender sender) throws Exception {
    double[] readLine = new double[rounds];
    double[] bulk = new double[rounds];
    double[] station = new double[rounds];
    double[] bareCpu = new double[rounds];
    double[] stationCpu = new double[rounds];
    for (int i = 0; i < rounds; i++) {
      readLine[i] = bare(sender, BarePort.Way.READ_LINE);
      bareCpu[i] = cpuNanosPerLine;
      bulk[i] = bare(sender, BarePort.Way.BULK);
      station[i] = station(sender);
      stationCpu[i] = cpuNanosPerLine;
      System.out.printf(
          Locale.ROOT,
          "%s: readLine %,.0f (%.0f ns of processor a line)  bulk %,.0f  station %,.0f (%.0f ns)%n",
          sender,
          readLine[i],
          bareCpu[i],
          bulk[i],
          station[i],
          stationCpu[i]);
    }
    double ratio = StoreLoad.median(station) / StoreLoad.median(readLine);
    new BudgetRow(
            "one port, " + sender.words + ": decoded, captured, logged, durable, none lost",
            "%,.0f lines/s, %.0f ns of processor each"
                .formatted(StoreLoad.median(station), StoreLoad.median(stationCpu)),
            "%,.0f lines/s, %.0f ns (jSerialComm alone, line by line; %,.0f if counted in bulk)"
                .formatted(
                    StoreLoad.median(readLine), StoreLoad.median(bareCpu), StoreLoad.median(bulk)),
            ratio,
            "at least 0.80",
            ratio >= BUDGET)
        .print();
  }

  private double bare(PortSender sender, BarePort.Way way) throws Exception {
    try (PseudoTerminal terminal = PseudoTerminal.open();
        BarePort port = new BarePort(terminal, way)) {
      return rate(sender, terminal, port::lines, port::lines, 0);
    }
  }

  private double station(PortSender sender) throws Exception {
    Path directory = Files.createTempDirectory("port-load");
    try (PseudoTerminal terminal = PseudoTerminal.open();
        Store store = Stores.open(directory);
        Stations stations = new Stations(store, StationClock.system())) {
      stations.add(settings(terminal.path()));
      // The first frame since opening is refused: it may have lost its beginning.
      return rate(
          sender,
          terminal,
          () -> stations.status("load").counts().samples(),
          () -> store.health().counts().keptSamples(),
          1);
    } finally {
      Directories.delete(directory);
    }
  }

  private static StationSettings settings(Path port) {
    return StationSettings.of(
            "load",
            SerialSettings.of(port.toString()),
            BuiltInProfile.SIGNED_MM_LINES.profile(),
            new Indicator(0.001, 0.002, 12.7))
        .machine("none")
        .bridge(new Bridge(0, "long", new Bridge.Span(200, 0.01), new Bridge.Feet(0, 0), 0))
        .silenceSeconds(0.0)
        .build();
  }

  private double rate(
      PortSender sender,
      PseudoTerminal terminal,
      LongSupplier read,
      LongSupplier committed,
      int refused)
      throws Exception {
    while (!terminal.connected()) {
      LockSupport.parkNanos(1_000_000);
    }
    LockSupport.parkNanos(100_000_000); // what the port held is flushed at its opening
    double cpu = readersNanos();
    long start = System.nanoTime();
    long lines = sender.send(terminal, nanos) - refused;
    long readNanos = until(read, lines);
    long committedNanos = until(committed, lines);
    cpuNanosPerLine = (readersNanos() - cpu) / lines;
    return lines * 1e9 / (Math.max(readNanos, committedNanos - HELD_NANOS) - start);
  }

  /** Processor time of the threads that read, decode, capture, pack and commit. */
  private static double readersNanos() {
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    return Arrays.stream(threads.dumpAllThreads(false, false))
        .filter(thread -> READERS.matcher(thread.getThreadName()).matches())
        .mapToLong(thread -> Math.max(0, threads.getThreadCpuTime(thread.getThreadId())))
        .sum();
  }

  private static long until(LongSupplier count, long lines) {
    long begun = System.nanoTime();
    while (count.getAsLong() < lines) {
      LockSupport.parkNanos(1_000_000);
      if (System.nanoTime() - begun > TOO_LONG_NANOS) {
        throw new IllegalStateException(lines - count.getAsLong() + " lines are lost");
      }
    }
    return System.nanoTime();
  }
}
