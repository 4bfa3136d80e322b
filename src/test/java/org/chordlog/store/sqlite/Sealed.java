package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.stream.Stream;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.LogbookEntry;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Specification;
import org.chordlog.measure.Zero;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.store.LogbooksContract;
import org.chordlog.store.SealExpected;
import org.chordlog.store.SealReport;
import org.chordlog.store.Some;
import org.chordlog.store.sql.Sql;

/** A data directory with rows in every sealed table, and edits of its file behind its back. */
record Sealed(Path directory) {
  static final int READINGS = 40;

  /** Two commits at least; every reading is acknowledged before the next. */
  static Sealed in(Path directory) {
    Sealed made = new Sealed(directory);
    try (SqliteStore store = SqliteStore.open(directory)) {
      Bridge bridge = store.gauges().add(Some.bridge("200"), "me");
      Zero zero = new Zero(0, "A", bridge.id(), -12_340_000, 2_000, 20, new Recorded(7, "me"));
      store.gauges().add(zero);
      store.gauges().add(zero);
      store.gauges().add(Some.calibration(bridge.id()));
      store.gauges().add(Some.calibration(bridge.id()));
      Job job = store.jobs().add(Some.job("J", "M"), "me");
      long setUp = store.readings().keep(Some.setUp(bridge));
      made.append(store, 1, READINGS, Some.reading("A", 1, job.id(), setUp));
      Specification tighter = new Specification(job.specification().face(), 950, 949.0, 951.0);
      store.jobs().update(job.withSpecification(tighter), "me", "drawing B");
      store.readings().add(Some.exclusion(3, true));
      store.readings().add(Some.exclusion(3, false));
      JobEvent event = store.jobs().add(note(job.id()));
      store.jobs().add(new EventWithdrawal(0, event.id(), "wrong", 9, "me"));
      store.alerts().add(Some.raised(AlertKey.station(AlertKind.LINK_LOST, "A"), Some.T0));
      LogbookEntry done = LogbooksContract.entry("M", LogbookEntry.Kind.LUBRICATED, 0);
      long first = store.logbooks().add(done).id();
      store.logbooks().add(LogbooksContract.entry("M", LogbookEntry.Kind.OTHER, first));
    }
    return made;
  }

  private static JobEvent note(long job) {
    JobEvent.Content content = new JobEvent.Content(12.5, 12.25, "", "half a turn");
    return new JobEvent(0, job, "M", JobEvent.Kind.CORRECTION, 0, content, new Recorded(7, "me"));
  }

  void append(SqliteStore store, int first, int last, Reading like) {
    for (int i = first; i <= last; i++) {
      Reading unused =
          store.readings().append(Some.reading("A", i, like.jobId(), like.setUpId())).join();
    }
  }

  /** Goes on measuring for that many readings. */
  void goOn(int more) {
    try (SqliteStore store = SqliteStore.open(directory)) {
      int last = (int) store.readings().lastId();
      append(store, last + 1, last + more, store.readings().find(1).orElseThrow());
    }
  }

  Path file() {
    return directory.resolve(SqliteStore.FILE_NAME);
  }

  Path checkpoints() {
    return directory.resolve(SealFile.FILE_NAME);
  }

  /** All files, elsewhere. */
  Sealed copy(Path to) throws IOException {
    Files.createDirectories(to);
    try (Stream<Path> files = Files.list(directory)) {
      for (Path each : files.filter(Files::isRegularFile).toList()) {
        Files.copy(each, to.resolve(each.getFileName()));
      }
    }
    return new Sealed(to);
  }

  /** As any program that knows SQL may, without keys between tables and without checks. */
  void edit(String... statements) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
        Statement statement = connection.createStatement()) {
      statement.executeUpdate("PRAGMA foreign_keys = OFF");
      statement.executeUpdate("PRAGMA ignore_check_constraints = ON");
      for (String each : statements) {
        statement.executeUpdate(each);
      }
    }
  }

  <T> T ask(Sql.Body<T> body) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file())) {
      return body.run(connection);
    }
  }

  SealReport report(SealExpected expected) {
    return new SqliteFiles(directory).auditSeal(expected);
  }

  List<String> faults() {
    return report(SealExpected.NOTHING).faults();
  }

  /** Each of these words is in one of the faults. */
  void assertFound(String... words) {
    List<String> faults = faults();
    for (String each : words) {
      assertTrue(faults.stream().anyMatch(said -> said.contains(each)), each + ": " + faults);
    }
  }
}
