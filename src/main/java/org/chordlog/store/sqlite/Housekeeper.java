package org.chordlog.store.sqlite;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.chordlog.store.StoreException;
import org.chordlog.store.StoreSettings;
import org.chordlog.store.sql.Database;
import org.chordlog.store.sql.Now;
import org.chordlog.store.sql.SqlTraces;
import org.chordlog.timer.TimedWork;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Every so often looks at the free space, merges small trace blocks, and deletes traces that are
 * too old. All of it on the thread "store-keep-house"; {@link #warnings} from any thread.
 */
final class Housekeeper implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Housekeeper.class);
  private static final int PRUNES_A_ROUND = 50;
  private static final int CLOSE_SECONDS = 5;
  private static final int SLOW_COMMIT_MILLIS = 200;

  private final Path file;
  private final Database database;
  private final SqlTraces traces;
  private final Writing writing;
  private final StoreSettings settings;
  private volatile String damage = "";
  private final ScheduledExecutorService rounds = TimedWork.timer("store-keep-house");

  Housekeeper(Path file, Database database, Writing writing, StoreSettings settings) {
    this.file = file;
    this.database = database;
    this.traces = new SqlTraces(database);
    this.writing = writing;
    this.settings = settings;
  }

  void start() {
    lookAtSpace();
    if (file.toFile().length() > Damage.CHECKED_FIRST_BYTES) {
      rounds.execute(this::check);
    }
    var unused =
        rounds.scheduleWithFixedDelay(
            TimedWork.of(this::round),
            settings.roundMillis(),
            settings.roundMillis(),
            TimeUnit.MILLISECONDS);
  }

  private void round() {
    try {
      lookAtSpace();
      merge();
      prune();
    } catch (StoreException e) {
      LOG.atDebug().setCause(e).log("housekeeping skipped: the store does not take writes");
    } catch (RuntimeException e) {
      LOG.atWarn().setCause(e).log("housekeeping failed");
    }
  }

  private void check() {
    try {
      damage = Damage.find(file);
    } catch (SQLException e) {
      LOG.atWarn().setCause(e).log("the database could not be checked");
    }
  }

  /** What needs attention though everything is still stored. */
  List<String> warnings() {
    List<String> warnings = new ArrayList<>(Damage.warnings(file));
    warnings.addAll(Announced.warnings(file));
    if (!damage.isEmpty()) {
      warnings.add("the database is damaged (" + damage + "): " + Failures.RESTART);
    }
    if (spaceIsShort()) {
      warnings.add("little space is left on the disk: raw samples are not stored, readings are");
    }
    if (writing.meter().commitMillisP95() > SLOW_COMMIT_MILLIS) {
      warnings.add("the disk is slow: a commit takes " + SLOW_COMMIT_MILLIS + " ms and more");
    }
    return warnings;
  }

  private boolean spaceIsShort() {
    return file.toFile().getUsableSpace() < settings.traceFreeBytes();
  }

  /** Readings go on to the last byte; traces leave them room. */
  void lookAtSpace() {
    writing.traces().refuse(spaceIsShort());
  }

  private void merge() {
    List<String> ready = database.read(connection -> TraceMerger.ready(connection, Now.micros()));
    for (String station : ready) {
      new TraceMerger(database, station).merge();
    }
  }

  private void prune() {
    if (settings.traceDays() == 0) {
      return;
    }
    long before = Now.micros() - TimeUnit.DAYS.toMicros(settings.traceDays());
    for (int i = 0; i < PRUNES_A_ROUND && traces.prune(before) > 0; i++) {
      // a few at a time, so that no reading waits long
    }
  }

  @Override
  public void close() {
    Threads.end(rounds, CLOSE_SECONDS);
  }
}
