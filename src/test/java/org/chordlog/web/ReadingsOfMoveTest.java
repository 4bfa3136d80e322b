package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.Set;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Face;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Job;
import org.chordlog.measure.Mark;
import org.chordlog.measure.Master;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Recorded;
import org.chordlog.stats.drift.Corrections;
import org.chordlog.stats.drift.DriftFinding;
import org.chordlog.stats.drift.MachinePlace;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.chordlog.verdict.GaugeBesideMachine;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Where a move of a machine's level began, and whether the gauge may have made it. */
final class ReadingsOfMoveTest {
  private static final String MACHINE = "three-roll bender";
  private static final int MOVED = 20;

  @TempDir Path directory;
  private Store store;
  private Job job;
  private Bridge bridge;
  private long master;

  @BeforeEach
  void open() {
    store = Stores.open(directory);
    bridge = store.gauges().add(Some.bridge("long"), "me");
    master = store.gauges().add(new Master(0, "R1000", Face.OUTER, 1000, 0.1), "me").id();
    job = store.jobs().add(Some.job("hoops", MACHINE), "tester");
  }

  @AfterEach
  void close() {
    store.close();
  }

  private Reading measured(int sequence, Bridge by, Set<Mark> marks) {
    long setUp = store.readings().keep(Some.setUp(by));
    Reading made = Some.reading("A", sequence, job.id(), setUp);
    Reading.Result result =
        new Reading.Result(made.result().radius(), made.result().decision(), marks);
    return store
        .readings()
        .append(
            new Reading(
                0, made.source(), made.place(), made.measured(), result, made.circumstances()))
        .join();
  }

  private Reading measured(int from, int to, Bridge by, Set<Mark> marks) {
    Reading last = measured(from, by, marks);
    for (int i = from + 1; i <= to; i++) {
      last = measured(i, by, marks);
    }
    return last;
  }

  private static DriftFinding moved(Reading first) {
    return moved(first, MOVED);
  }

  private static DriftFinding moved(Reading first, int piece) {
    return new DriftFinding(
        DriftFinding.Kind.JUMP,
        new MachinePlace(piece, first.wallMicros()),
        null,
        1e-3,
        null,
        Corrections.NONE,
        "");
  }

  private GaugeBesideMachine found(Reading first) {
    return new ReadingsOfMove(store, MACHINE).gauge(moved(first));
  }

  private void checked(boolean passed, long atMicros) {
    InterimCheck unused =
        store
            .gauges()
            .add(
                new InterimCheck(
                    0,
                    "A",
                    bridge.id(),
                    master,
                    new InterimCheck.Comparison(passed ? 1000.1 : 1003.1, 1000, 1, passed),
                    new Recorded(atMicros, "me")));
  }

  /** The machine's piece 20 is this job's piece 7, its readings being three to a piece. */
  @Test
  void whichPieceOfWhichJobItBeganWith() {
    Reading first = measured(1, MOVED, bridge, Set.of());
    ReadingsOfMove readings = new ReadingsOfMove(store, MACHINE);
    assertEquals("piece 7 of job hoops", readings.place(moved(first)));
    assertEquals("", readings.place(moved(first, first.piece())));
  }

  @Test
  void aGaugeThatNothingIsKnownAgainst() {
    measured(1, MOVED - 1, bridge, Set.of());
    Reading first = measured(MOVED, bridge, Set.of());
    measured(MOVED + 1, 40, bridge, Set.of());
    assertEquals(GaugeBesideMachine.TRUSTED, found(first));
    checked(true, store.readings().find(40).orElseThrow().wallMicros() + 1);
    assertEquals(GaugeBesideMachine.TRUSTED, found(first));
    checked(false, store.readings().find(40).orElseThrow().wallMicros() + 2);
    assertEquals(GaugeBesideMachine.TRUSTED, found(first), "they were before the passed check");
  }

  @Test
  void aCheckThatFailedSince() {
    measured(1, MOVED - 1, bridge, Set.of());
    Reading first = measured(MOVED, bridge, Set.of());
    Reading last = measured(MOVED + 1, 40, bridge, Set.of());
    checked(false, last.wallMicros() + 1);
    assertEquals(GaugeBesideMachine.CHECK_FAILED, found(first));
  }

  @Test
  void aZeroInDoubt() {
    measured(1, MOVED - 1, bridge, Set.of());
    Reading first = measured(MOVED, bridge, Set.of(Mark.ZERO_DOUBTFUL));
    measured(MOVED + 1, 40, bridge, Set.of());
    assertEquals(GaugeBesideMachine.ZERO_IN_DOUBT, found(first));
  }

  @Test
  void anotherBridge() {
    measured(1, MOVED - 1, bridge, Set.of());
    Bridge other = store.gauges().add(Some.bridge("short"), "me");
    Reading first = measured(MOVED, other, Set.of());
    measured(MOVED + 1, 40, other, Set.of());
    assertEquals(GaugeBesideMachine.OTHER_BRIDGE, found(first));
  }
}
