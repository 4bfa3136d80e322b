package org.chordlog.store.sqlite;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.chordlog.measure.BadInput;
import org.chordlog.store.sql.Now;
import org.chordlog.timer.TimedWork;
import org.chordlog.timer.Tried;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Writes a checkpoint of the chain of hashes at start and end, and in between each hour or 1,000
 * records, looked at every second on the thread "store-seal". A checkpoint that can't be written is
 * said and holds up nothing.
 */
final class SealClock implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(SealClock.class);
  private static final long RECORDS = 1_000;
  private static final long HOUR_MICROS = TimeUnit.HOURS.toMicros(1);
  private static final int CLOSE_SECONDS = 5;

  private final SealFile file;
  private final String uuid;
  private final Sealer sealer;
  private final ScheduledExecutorService rounds = TimedWork.timer("store-seal");
  private long signedSeq;
  private long signedRecords;
  private long signedMicros;
  private volatile String fault = "";

  SealClock(Path database, String uuid, Sealer sealer) {
    this.file = new SealFile(database);
    this.uuid = uuid;
    this.sealer = sealer;
  }

  void start() {
    sign(isNew() ? SealCheckpoint.Kind.NEW : SealCheckpoint.Kind.START);
    Tried round = new Tried(LOG, "no checkpoint was looked for; tried again", this::round);
    var unused = rounds.scheduleWithFixedDelay(TimedWork.of(round), 1, 1, TimeUnit.SECONDS);
  }

  /** No line speaks of this database yet, and nothing is in its chain. */
  private boolean isNew() {
    try {
      return sealer.newest().seq() == 0
          && file.lines().stream()
              .map(SealCheckpoint::read)
              .filter(Objects::nonNull)
              .noneMatch(each -> each.uuid().equals(uuid));
    } catch (IOException e) {
      return false;
    }
  }

  private void round() {
    long records = sealer.records();
    boolean hour = Now.micros() - signedMicros >= HOUR_MICROS && sealer.newest().seq() > signedSeq;
    if (hour || records - signedRecords >= RECORDS) {
      sign(SealCheckpoint.Kind.RUN);
    }
  }

  private void sign(SealCheckpoint.Kind kind) {
    long records = sealer.records();
    SealEntry newest = sealer.newest();
    try {
      file.add(kind, uuid, new SealCheckpoint.Tip(newest.seq(), newest.hashText()));
      signedSeq = newest.seq();
      signedRecords = records;
      fault = "";
    } catch (IOException | BadInput e) {
      fault = "a signed checkpoint of the records could not be written: " + e.getMessage();
      LOG.atWarn().setCause(e).log(fault);
    }
    signedMicros = Now.micros();
  }

  List<String> warnings() {
    String now = fault;
    return now.isEmpty() ? List.of() : List.of(now);
  }

  /** After the last commit. */
  @Override
  public void close() {
    Threads.end(rounds, CLOSE_SECONDS);
    sign(SealCheckpoint.Kind.STOP);
  }
}
