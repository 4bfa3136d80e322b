package org.chordlog.notify;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.LogbookEntry;
import org.chordlog.measure.Specification;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.measure.alert.AlertSubject;
import org.chordlog.monitor.MachineTarget;
import org.chordlog.monitor.Monitor;
import org.chordlog.notify.rule.AlertRule;
import org.chordlog.notify.rule.Found;
import org.chordlog.notify.rule.MachineJudgement;
import org.chordlog.notify.rule.MachineLimits;
import org.chordlog.notify.rule.MachineStreaks;
import org.chordlog.stats.drift.MachineVerdict;
import org.chordlog.store.Jobs;
import org.chordlog.store.Logbooks;
import org.chordlog.store.Store;
import org.chordlog.verdict.AlertWords;
import org.jspecify.annotations.Nullable;

/**
 * Judges each machine that has new readings at its next multiple of {@value MachineStreaks#PIECES}
 * pieces. How far it is, and what the judgements before said, are cursors in the store, moved in
 * the commit of what they caused; so a restart judges neither twice nor too often. The watch's
 * thread only.
 */
final class MachineRound implements Round {
  private static final String READINGS = "alerts/readings";
  private static final long KEPT_EACH = 100;
  private static final int ENTRIES = 50;
  private static final Set<LogbookEntry.Kind> REPAIRS =
      Set.of(
          LogbookEntry.Kind.ROLLER_CHANGED,
          LogbookEntry.Kind.BEARING_RENEWED,
          LogbookEntry.Kind.SET_STRAIGHT);

  private final Store store;
  private final Monitor monitor;
  private final AlertBook book;

  /** Machines with new readings, and the newest of these. */
  private final Map<String, Long> due = new HashMap<>();

  private long seen;

  /** As {@link #seen} in the store: a start looks again at machines with readings since then. */
  private long kept;

  MachineRound(Store store, Monitor monitor, AlertBook book) {
    this.store = store;
    this.monitor = monitor;
    this.book = book;
  }

  @Override
  public void run(long atMicros) {
    setUps(atMicros);
    note();
    due.entrySet().removeIf(each -> judged(each.getKey(), each.getValue(), atMicros));
    if (due.isEmpty() && seen - kept >= KEPT_EACH) {
      keep(seen);
    }
  }

  /** Where nothing was ever judged, only what comes from now on counts as new. */
  private void note() {
    long last = store.readings().lastId();
    if (seen == 0) {
      seen = book.alerts().cursor(READINGS);
      kept = seen;
    }
    if (seen == 0 && last > 0) {
      seen = last;
      keep(last);
    }
    if (last > seen) {
      due.putAll(store.readings().machinesSince(seen));
      seen = last;
    }
  }

  private void keep(long readingId) {
    book.alerts().moveCursor(READINGS, readingId);
    kept = readingId;
  }

  /** False where not all of its readings are in the statistics yet. */
  private boolean judged(String machine, long lastReadingId, long atMicros) {
    long before = book.alerts().cursor(name(machine, "pieces"));
    MachineLimits limits = limits(machine);
    Double relative = limits == null ? null : (Double) limits.relative();
    return monitor.readMachine(
        machine,
        (statistics, behind) -> {
          long complete = Math.max(0, statistics.pieces() - 1);
          if (behind == 0 && MachineStreaks.due(complete, before)) {
            MachineVerdict verdict = statistics.verdict(relative);
            judge(
                new MachineJudgement(machine, verdict, limits, complete), lastReadingId, atMicros);
          }
          return behind == 0;
        });
  }

  private @Nullable MachineLimits limits(String machine) {
    return MachineTarget.of(store, machine).map(MachineRound::limits).orElse(null);
  }

  private static MachineLimits limits(Specification asked) {
    return new MachineLimits(asked.targetMm(), MachineTarget.toleranceMm(asked));
  }

  private void judge(MachineJudgement now, long lastReadingId, long atMicros) {
    String machine = now.machine();
    String name = name(machine, "streaks");
    MachineStreaks streaks = MachineStreaks.unpacked(book.alerts().cursor(name)).after(now);
    Map<String, Long> cursors = new HashMap<>();
    cursors.put(name, streaks.packed());
    cursors.put(name(machine, "pieces"), now.completePieces());
    book.write(events(streaks, now, lastReadingId, atMicros), cursors);
  }

  private List<AlertEvent> events(
      MachineStreaks streaks, MachineJudgement now, long lastReadingId, long atMicros) {
    Map<AlertKind, Alert> open = new EnumMap<>(AlertKind.class);
    openOf(now.machine()).forEach(each -> open.put(each.kind(), each));
    Optional<Found> appeared = streaks.appeared(now, open.keySet());
    Set<AlertKind> replaced = MachineStreaks.replaced(now, appeared);
    Set<AlertKind> gone = streaks.gone();
    gone.removeAll(replaced);
    List<AlertEvent> events =
        book.events(
            appeared.stream().map(each -> placed(each, now, lastReadingId)).toList(),
            open.values().stream().filter(each -> gone.contains(each.kind())).toList(),
            atMicros);
    String by = appeared.map(each -> AlertWords.of(each.key().kind())).orElse("");
    replaced.stream()
        .flatMap(kind -> Stream.ofNullable(open.get(kind)))
        .flatMap(each -> AlertRule.replaced(each, by, atMicros).stream())
        .forEach(events::add);
    return events;
  }

  /** With the readings that it was found in. */
  private Found placed(Found found, MachineJudgement now, long lastReadingId) {
    Long since = now.verdict().sinceMicros();
    long first =
        since == null ? 0 : store.readings().firstOfMachine(now.machine(), since).orElse(0L);
    return new Found(found.key(), found.evidence().withReadings(first, lastReadingId));
  }

  private List<Alert> openOf(String machine) {
    AlertSubject subject = AlertSubject.machine(machine);
    return book.alerts().open().stream().filter(each -> each.subject().equals(subject)).toList();
  }

  /**
   * A set-up or a repair ends what is out of service, and a jump: the level is a new one on
   * purpose, so two more judgements are asked for.
   */
  private void setUps(long atMicros) {
    for (Alert each : book.alerts().open()) {
      String machine = each.subject().name();
      long since = each.status().changedMicros();
      if (endsWithSetUp(each) && (setUpSince(machine, since) || repairedSince(machine, since))) {
        Optional<AlertEvent> ended = AlertRule.repaired(each, atMicros);
        Map<String, Long> anew = Map.of(name(machine, "streaks"), MachineStreaks.NONE.packed());
        ended.ifPresent(event -> book.write(List.of(event), anew));
      }
    }
  }

  private static boolean endsWithSetUp(Alert alert) {
    boolean ofMachine = alert.subject().type() == AlertSubject.Type.MACHINE;
    boolean jumped = alert.kind() == AlertKind.ROLLER_JUMPED && alert.status().present();
    return ofMachine && (alert.state() == AlertState.OUT_OF_SERVICE || jumped);
  }

  /** By its log book, whose newest entries are looked at. */
  private boolean repairedSince(String machine, long sinceMicros) {
    return store.logbooks().ofMachine(machine, Long.MAX_VALUE, ENTRIES).stream()
        .filter(each -> each.correctedById() == null && each.entry().tellsOfWork())
        .map(Logbooks.Listed::entry)
        .filter(each -> REPAIRS.contains(each.work().kind()))
        .anyMatch(each -> each.done().atMicros() > sinceMicros);
  }

  private boolean setUpSince(String machine, long sinceMicros) {
    Jobs jobs = store.jobs();
    List<JobEvent> counting =
        EventWithdrawal.counting(
            jobs.eventsOfMachine(machine), jobs.withdrawalsOfMachine(machine, 0));
    return counting.stream()
        .filter(each -> each.kind() == JobEvent.Kind.SET_UP)
        .anyMatch(each -> each.atMicros() > sinceMicros);
  }

  private static String name(String machine, String what) {
    return "alerts/machine/" + machine + "/" + what;
  }
}
