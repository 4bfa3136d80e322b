package org.chordlog.harness;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.monitor.Monitor;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.Scope;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.chordlog.store.sqlite.SqliteStore;
import org.chordlog.web.ShownReading;
import org.jspecify.annotations.Nullable;

/**
 * What was announced, and whether a data directory still bears it out: the file sound, every
 * announced reading there and equal, none doubled, no hole in a sequence, and the statistics that a
 * restart finds the same as those processed from the first reading.
 */
public final class Proof {
  private static final int PAGE = 5_000;
  private static final int FAULTS = 20;

  private final Map<Long, String> announced = new ConcurrentHashMap<>();
  private final List<String> contradictions = new ArrayList<>();
  private long keptReadings;

  /** To be given each event; takes up the readings. */
  public void note(EventNotes.Event event) {
    if (!event.name().equals("reading")) {
      return;
    }
    String before = announced.putIfAbsent(Long.valueOf(event.id()), event.data());
    if (before != null && !before.equals(event.data())) {
      synchronized (contradictions) {
        contradictions.add("announced anew and otherwise: " + event.data());
      }
    }
  }

  /** What was announced up to now. */
  Proof copy() {
    Proof copy = new Proof();
    copy.announced.putAll(announced);
    return copy;
  }

  public int announcedReadings() {
    return announced.size();
  }

  /** Highest id announced, from which a client resumes. */
  public long lastId() {
    return announced.keySet().stream().mapToLong(Long::longValue).max().orElse(0);
  }

  /** Lowest id announced; ids have no holes. */
  public long firstId() {
    return announced.keySet().stream().mapToLong(Long::longValue).min().orElse(1);
  }

  /** Readings stored when last looked. */
  public long keptReadings() {
    return keptReadings;
  }

  /** A sentence for each fault; the service must not run. */
  public List<String> faults(Path data) throws IOException, SQLException {
    List<String> faults = new ArrayList<>(Stores.files(data).audit());
    synchronized (contradictions) {
      faults.addAll(contradictions);
    }
    readings(data, faults);
    statistics(data, faults);
    return faults.subList(0, Math.min(FAULTS, faults.size()));
  }

  private void readings(Path data, List<String> faults) {
    Map<String, Long> sequences = new HashMap<>();
    Map<String, Long> samples = new HashMap<>();
    Map<Long, String> missing = new HashMap<>(announced);
    long afterId = 0;
    keptReadings = 0;
    try (Store store = Stores.openForReading(data)) {
      List<Reading> page;
      do {
        page = store.readings().all(afterId, PAGE);
        for (Reading reading : page) {
          afterId = reading.id();
          keptReadings++;
          follows(reading, sequences, samples, faults);
          equal(reading, missing.remove(reading.id()), faults);
        }
      } while (!page.isEmpty());
    }
    missing.values().forEach(reading -> faults.add("announced but not kept: " + reading));
  }

  /** The next of its station, from samples that no earlier reading was taken from. */
  private static void follows(
      Reading reading,
      Map<String, Long> sequences,
      Map<String, Long> samples,
      List<String> faults) {
    Long before = sequences.put(reading.station(), reading.stationSequence());
    if (reading.stationSequence() != (before == null ? 0 : before) + 1) {
      faults.add("after " + before + " comes " + ShownReading.json(reading));
    }
    Long lastSample = samples.put(reading.station(), reading.captured().lastSequence());
    if (lastSample != null && reading.captured().firstSequence() <= lastSample) {
      faults.add("samples up to " + lastSample + " used again: " + ShownReading.json(reading));
    }
  }

  private static void equal(Reading reading, @Nullable String said, List<String> faults) {
    String kept = ShownReading.json(reading);
    if (said != null && !said.equals(kept)) {
      faults.add("announced " + said + " but kept " + kept);
    }
  }

  private static void statistics(Path data, List<String> faults) throws IOException, SQLException {
    Path copy = Files.createTempDirectory("proof");
    try {
      copyWithoutCheckpoints(data, copy);
      Map<Long, List<Object>> anew = seen(copy);
      Map<Long, List<Object>> restored = seen(data);
      if (!anew.equals(restored)) {
        faults.add("statistics: " + firstDifference(restored, anew));
      }
    } finally {
      Directories.delete(copy);
    }
  }

  private static String firstDifference(
      Map<Long, List<Object>> restored, Map<Long, List<Object>> anew) {
    for (Map.Entry<Long, List<Object>> job : anew.entrySet()) {
      List<Object> other = restored.getOrDefault(job.getKey(), List.of());
      for (int i = 0; i < job.getValue().size(); i++) {
        if (i >= other.size() || !other.get(i).equals(job.getValue().get(i))) {
          Object found = i < other.size() ? other.get(i) : "nothing";
          String ofJob = "of job " + job.getKey() + " restored " + found;
          return ofJob + " but gone over " + job.getValue().get(i);
        }
      }
    }
    return "restored of jobs " + restored.keySet() + " but gone over of " + anew.keySet();
  }

  /** The file as it is now with its WAL, but nothing to restore statistics from. */
  static void copyWithoutCheckpoints(Path data, Path copy) throws IOException, SQLException {
    for (String name : List.of(SqliteStore.FILE_NAME, SqliteStore.FILE_NAME + "-wal")) {
      if (Files.exists(data.resolve(name))) {
        Files.copy(data.resolve(name), copy.resolve(name));
      }
    }
    String url = "jdbc:sqlite:" + copy.resolve(SqliteStore.FILE_NAME);
    try (Connection connection = DriverManager.getConnection(url);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate("DELETE FROM checkpoint");
    }
  }

  /** Every figure and chart of every job. */
  private static Map<Long, List<Object>> seen(Path data) {
    Map<Long, List<Object>> seen = new HashMap<>();
    try (Store store = Stores.openForReading(data);
        Monitor monitor = new Monitor(store)) {
      for (Job job : store.jobs().list(Long.MAX_VALUE, 1_000)) {
        while (monitor.standing(job.id()).behind() > 0) {
          Thread.onSpinWait(); // each look takes in more
        }
        seen.put(job.id(), monitor.read(job.id(), Proof::seen));
      }
    }
    return seen;
  }

  private static List<Object> seen(JobStatistics statistics) {
    List<Object> seen = new ArrayList<>();
    for (String name : statistics.characteristics()) {
      for (ChartKind kind : statistics.kinds(name)) {
        seen.add(statistics.chart(name, kind).points());
        seen.add(statistics.chart(name, kind).limits());
      }
      seen.add(statistics.summary(name, Scope.JOB));
      seen.add(statistics.summary(name, Scope.PHASE));
    }
    return seen;
  }
}
