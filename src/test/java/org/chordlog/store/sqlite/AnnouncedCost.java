package org.chordlog.store.sqlite;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.util.Arrays;
import org.chordlog.measure.Reading;
import org.chordlog.store.Kept;
import org.chordlog.store.Some;
import org.chordlog.store.sql.Sql;

/**
 * What it costs that the newest announced ids are written to a file of their own after each commit,
 * beside the commit itself: medians of rounds. Arguments: rounds (9), writes a round (20,000).
 */
final class AnnouncedCost {
  private static final int COMMITS = 500;

  private AnnouncedCost() {}

  public static void main(String[] arguments) throws Exception {
    int rounds = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 9;
    int writes = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 20_000;
    Path folder = Files.createTempDirectory("announced");
    double[] counted = new double[rounds];
    double[] committed = new double[rounds];
    try (SqliteStore store = SqliteStore.open(folder.resolve("data"))) {
      Reading like = Kept.first(store);
      for (int i = 0; i < rounds; i++) {
        committed[i] = commits(store, like);
        counted[i] = writes(folder.resolve("other.db"), writes);
      }
    }
    System.out.printf(
        "%.1f µs to count what is announced, %.0f µs for a commit of one reading with its"
            + " acknowledgement: %.1f %% (medians of %d rounds of %,d and %,d)%n",
        median(counted),
        median(committed),
        100 * median(counted) / median(committed),
        rounds,
        writes,
        COMMITS);
  }

  private static double commits(SqliteStore store, Reading like) {
    long start = System.nanoTime();
    for (int i = 0; i < COMMITS; i++) {
      long next = store.readings().lastSequence("A") + 1;
      var unused =
          store.readings().append(Some.reading("A", next, like.jobId(), like.setUpId())).join();
    }
    return (System.nanoTime() - start) / 1e3 / COMMITS;
  }

  private static double writes(Path database, int writes) throws Exception {
    try (Connection connection = Connections.writer(database)) {
      Sql.run(connection, "CREATE TABLE IF NOT EXISTS reading (id INTEGER PRIMARY KEY)");
      Sql.run(connection, "CREATE TABLE IF NOT EXISTS change (id INTEGER PRIMARY KEY)");
      Sql.run(connection, "CREATE TABLE IF NOT EXISTS job_event (id INTEGER PRIMARY KEY)");
      Sql.run(connection, "CREATE TABLE IF NOT EXISTS exclusion (id INTEGER PRIMARY KEY)");
      Announced.forget(database);
      try (Announced announced = Announced.open(database, connection)) {
        long start = System.nanoTime();
        for (int i = 1; i <= writes; i++) {
          Announced.Ids asked = Announced.Ids.of(connection);
          announced.committed(new Announced.Ids(asked.readings() + i, 0, 0, 0));
        }
        return (System.nanoTime() - start) / 1e3 / writes;
      }
    }
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }
}
