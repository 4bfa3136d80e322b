package org.chordlog.bench;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.math.BigDecimal;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.chordlog.measure.LengthUnit;
import org.chordlog.measure.Sample;
import org.chordlog.simulator.Scenario;
import org.chordlog.simulator.ScenarioFile;
import org.chordlog.simulator.Simulator;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.StoreSettings;
import org.chordlog.store.open.Stores;
import org.chordlog.store.sqlite.SqliteStore;

/**
 * Bytes on disk for each sample of the simulator's stream: the values as it sends them, the times
 * as at its rate with an arrival jitter of 1 ms (standard deviation), handed over in pieces of a
 * second as a station does.
 */
public final class TraceLoad {
  private static final int SAMPLES = 100_000;
  private static final double SPEED = 2_000;

  /** A block a piece, as at 20 values a second, without the waits. */
  private static final StoreSettings HURRIED =
      new StoreSettings(1, 100, 60_000, 200, 0, 500L << 20);

  private TraceLoad() {}

  public static void main(String[] arguments) throws Exception {
    Scenario scenario = ScenarioFile.read(ScenarioFile.DEMO);
    List<Sample> samples = samples(scenario);
    int second = (int) Math.round(scenario.indicator().valuesPerSecond());
    Path directory = Files.createTempDirectory("trace-load");
    try {
      long empty = fileSize(directory, List.of(), second);
      long full = fileSize(directory, samples, second);
      System.out.printf(
          "%,d samples in %,d bytes of file: %.2f bytes a sample%n",
          SAMPLES, full - empty, (full - empty) / (double) SAMPLES);
      double bytes = (full - empty) / (double) SAMPLES;
      new BudgetRow(
              "raw trace on disk",
              "%.2f bytes a sample".formatted(bytes),
              "9 bytes (the frame as sent, without its time)",
              bytes / 9,
              "under 3 bytes",
              bytes < 3)
          .print();
      printBlocks(directory);
    } finally {
      StoreLoad.delete(directory);
    }
  }

  private static long fileSize(Path directory, List<Sample> samples, int piece) throws Exception {
    try (Store store = Stores.open(directory, HURRIED)) {
      for (int i = 0; i < samples.size(); i += piece) {
        List<Sample> part = samples.subList(i, Math.min(samples.size(), i + piece));
        while (!store.traces().append("A", part)) {
          Thread.onSpinWait();
        }
        long last = part.get(part.size() - 1).sequence();
        while (store.traces().lastSequence("A") < last) {
          Thread.onSpinWait();
        }
      }
    }
    return Files.size(directory.resolve(SqliteStore.FILE_NAME));
  }

  private static void printBlocks(Path directory) throws Exception {
    String url = "jdbc:sqlite:" + directory.resolve(SqliteStore.FILE_NAME);
    try (var connection = DriverManager.getConnection(url);
        var statement = connection.createStatement();
        var rows =
            statement.executeQuery(
                "SELECT merged, count(*), sum(sample_count), sum(length(body)) FROM trace_block"
                    + " GROUP BY merged")) {
      while (rows.next()) {
        System.out.printf(
            "merged %d: %,d blocks, %,d samples, %,d bytes packed%n",
            rows.getInt(1), rows.getLong(2), rows.getLong(3), rows.getLong(4));
      }
    }
  }

  private static List<Sample> samples(Scenario scenario) throws Exception {
    List<Sample> samples = new ArrayList<>(SAMPLES);
    Random jitter = new Random(1);
    long period = Math.round(1e9 / scenario.indicator().valuesPerSecond());
    try (Simulator simulator = Simulator.onSocket(scenario, SPEED, 1, 0, contact -> {})) {
      Thread playing = new Thread(() -> play(simulator));
      playing.start();
      URI address = URI.create("tcp://" + simulator.address());
      try (Socket socket = new Socket(address.getHost(), address.getPort());
          BufferedReader lines =
              new BufferedReader(
                  new InputStreamReader(socket.getInputStream(), StandardCharsets.US_ASCII))) {
        for (int i = 1; i <= SAMPLES; i++) {
          long nanos = i * period + Math.round(jitter.nextGaussian() * 1e6);
          long value = LengthUnit.MM.toNm(new BigDecimal(lines.readLine()));
          samples.add(new Sample(i, nanos, Some.T0 + nanos / 1_000, value, 0, false));
        }
      }
      simulator.stop();
      playing.join();
    }
    return samples;
  }

  private static void play(Simulator simulator) {
    try {
      simulator.run();
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }
}
