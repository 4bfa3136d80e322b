package org.chordlog.cli.service;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.chordlog.measure.BadInput;
import org.chordlog.notify.send.DeliveryStatus;
import org.chordlog.notify.send.Dispatcher;
import org.chordlog.store.Store;
import org.chordlog.timer.TimedWork;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells people and programs of alerts, as the file of alerts says; a file that changes is read
 * again without a restart, on the thread "alerts-file". One with a mistake changes nothing: the
 * settings before go on, and the mistake is among the problems. Passwords, secrets and the issuers
 * of a mail server are read anew at each use. Any thread may ask for the status.
 */
final class Telling implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Telling.class);

  /** How often the file is looked at, and the pause between two rounds of telling. */
  record Pace(Duration look, Duration pause) {
    static final Pace USUAL = new Pace(Duration.ofSeconds(10), Dispatcher.USUAL_PAUSE);

    /** The usual look. */
    static Pace of(Duration pause) {
      return new Pace(USUAL.look, pause);
    }
  }

  private final Path file;
  private final Store store;
  private final Clock clock;
  private final BooleanSupplier turn;
  private final Duration pause;
  private final ScheduledExecutorService looks = TimedWork.timer("alerts-file");
  private volatile Dispatcher dispatcher;
  private volatile String mistake = "";

  /** Of the thread that looks. */
  private String known;

  Telling(AlertSource source, Store store, Clock clock, Pace pace) {
    this(source, store, clock, pace, () -> true);
  }

  /** {@code turn}: whether it is this program that tells now, where several have the same store. */
  Telling(AlertSource source, Store store, Clock clock, Pace pace, BooleanSupplier turn) {
    this.turn = turn;
    this.pause = pace.pause();
    this.file = source.file();
    this.store = store;
    this.clock = clock;
    known = content(file);
    dispatcher = new Dispatcher(source.settings(), store, clock, pause, turn).start();
    long millis = pace.look().toMillis();
    var unused =
        looks.scheduleWithFixedDelay(
            TimedWork.of(this::look), millis, millis, TimeUnit.MILLISECONDS);
  }

  private void look() {
    String now = content(file);
    if (!now.equals(known)) {
      known = now;
      readAgain();
    }
  }

  /** Empty where it can't be read now, which is a mistake of its own once it is read again. */
  private static String content(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      return "";
    }
  }

  private void readAgain() {
    try {
      AlertSource changed = AlertSource.read(file);
      dispatcher.close();
      dispatcher = new Dispatcher(changed.settings(), store, clock, pause, turn).start();
      mistake = "";
      LOG.atInfo().addKeyValue("file", file).log("the file of alerts changed and is in use");
    } catch (BadInput e) {
      mistake = file.getFileName() + " changed, but is not in use: " + e.getMessage();
      LOG.atWarn().addKeyValue("file", file).log(mistake);
    } catch (RuntimeException e) {
      LOG.atError().setCause(e).log("the file of alerts could not be read again");
    }
  }

  DeliveryStatus status() {
    DeliveryStatus status = dispatcher.status();
    if (mistake.isEmpty()) {
      return status;
    }
    List<String> problems = new ArrayList<>(List.of(mistake));
    problems.addAll(status.problems());
    return new DeliveryStatus(
        status.waiting(), status.delivered(), status.failed(), status.failedLately(), problems);
  }

  @Override
  public void close() {
    looks.shutdownNow();
    try {
      boolean unused = looks.awaitTermination(1, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    dispatcher.close();
  }
}
