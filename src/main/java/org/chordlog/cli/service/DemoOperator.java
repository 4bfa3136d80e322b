package org.chordlog.cli.service;

import java.io.IOException;
import java.net.URI;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.locks.LockSupport;
import org.chordlog.capture.CaptureOutcome;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Length;
import org.chordlog.measure.Reading;
import org.chordlog.simulator.Scenario;
import org.chordlog.station.Announcement;
import org.chordlog.station.Happening;
import org.chordlog.station.Stations;
import org.chordlog.store.StoreException;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Does at the page what an operator would: takes the zero, records events, and moves the rollers as
 * the {@link RollerHand} does; moves that are recorded are so from the first piece bent after them.
 */
final class DemoOperator implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(DemoOperator.class);
  private static final String BY = "demo";
  private static final long LOOK_NANOS = 20_000_000L;

  /** As the operator sees that the bridge is on the flat, not in free air. */
  private static final double NEAR_MM = 0.5;

  /** The flat itself is refused as a reading first; a piece after it means that it was missed. */
  private static final int FLAT_AND_PIECE = 2;

  /** Numbers on the scale are kept without the dust of binary arithmetic. */
  private static final double STEPS_A_MM = 1e6;

  private static final long PATIENCE_NANOS = 60_000_000_000L;

  private final Scenario scenario;
  private final Stations stations;
  private final DemoSimulator simulator;
  private final DemoMoves moves;
  private volatile int port;

  /** Piece of the newest reading: what came before it is not acted on any more. */
  private volatile int newest;

  /** On the rollers' scale, as set by now; used by the operator's own thread. */
  private double setting;

  /** A move whose first piece is still to come; of the same thread. */
  private @Nullable Move waiting;

  /** Numbers on the scale, the first piece that is bent so, and whether it is recorded. */
  private record Move(double before, double after, int fromPiece, boolean recorded) {}

  private volatile boolean onFlat;
  private volatile boolean missedFlat;
  private int unzeroed;
  private final ExecutorService hand = Executors.newSingleThreadExecutor(DemoOperator::thread);

  DemoOperator(Scenario scenario, Stations stations, DemoSimulator simulator, DemoMoves moves) {
    this.moves = moves;
    setting = scenario.machine().settingMm() + moves.movedMm();
    this.scenario = scenario;
    this.simulator = simulator;
    this.stations = stations;
  }

  private static Thread thread(Runnable work) {
    Thread thread = new Thread(work, "demo-operator");
    thread.setDaemon(true);
    return thread;
  }

  void work() {
    stations.subscribe(this::hear);
    hand.execute(this::takeZero);
  }

  void servedAt(int servedPort) {
    port = servedPort;
  }

  /** Tries until the bridge stands still on the flat. */
  private void takeZero() {
    long deadline = System.nanoTime() + PATIENCE_NANOS;
    while (System.nanoTime() < deadline && !Thread.currentThread().isInterrupted()) {
      if (onFlat && zeroed()) {
        return;
      }
      if (missedFlat) {
        missedFlat = false;
        simulator.again();
      }
      LockSupport.parkNanos(LOOK_NANOS);
    }
  }

  private boolean zeroed() {
    try {
      stations.at(DemoStation.NAME).takeZero(BY);
      return true;
    } catch (BadInput | StoreException notYet) {
      return false;
    }
  }

  private void hear(Announcement announcement) {
    if (announcement instanceof Announcement.Live live) {
      double shown = Length.mm(live.valueNm());
      onFlat = Math.abs(shown - scenario.indicator().showsOnFlatMm()) < NEAR_MM;
    }
    if (announcement instanceof Announcement.Refused refused
        && refused.rejection().reason() == CaptureOutcome.Reason.NOT_ZEROED) {
      missedFlat = ++unzeroed % FLAT_AND_PIECE == 0;
    }
    if (announcement instanceof Announcement.Taken taken && lastOfPiece(taken.reading())) {
      hand.execute(() -> recordBefore(taken.reading().piece() + 1));
      newest = taken.reading().piece();
      hand.execute(() -> move(taken.reading()));
    }
  }

  private boolean lastOfPiece(Reading reading) {
    List<String> positions = scenario.job().positions();
    return reading.position().equals(positions.get(positions.size() - 1));
  }

  private void recordBefore(int piece) {
    scenario.lots().stream()
        .filter(lot -> lot.fromPiece() == piece)
        .forEach(lot -> record(JobEvent.Kind.MATERIAL_LOT, null, null, lot.name()));
    scenario.corrections().stream()
        .filter(correction -> !moves.hand().byHand() && correction.beforePiece() == piece)
        .forEach(correction -> correct(piece, correction.byMm()));
  }

  private void correct(int piece, double byMm) {
    double before =
        scenario.corrections().stream()
            .filter(earlier -> earlier.beforePiece() < piece)
            .mapToDouble(Scenario.Correction::byMm)
            .sum();
    double start = scenario.machine().settingMm() + before;
    if (moves.memory().records()) {
      record(JobEvent.Kind.CORRECTION, start, start + byMm, "");
    }
  }

  /** A move that failed is advised again after the next piece. */
  private void move(Reading reading) {
    try {
      Move open = waiting;
      if (open != null) {
        recordOnce(open, reading);
      } else if (port != 0 && reading.piece() == newest) {
        made(moves.hand().move(scenario, reading, page()), reading);
      }
    } catch (IOException e) {
      LOG.atWarn().setCause(e).log("rollers not moved");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void made(double amount, Reading reading) throws IOException {
    if (amount != 0) {
      double after = Math.rint((setting + amount) * STEPS_A_MM) / STEPS_A_MM;
      boolean recorded = moves.memory().records();
      Move move = new Move(setting, after, simulator.move(amount), recorded);
      setting = move.after();
      waiting = move;
      recordOnce(move, reading);
    }
  }

  /** A piece that was on its way to the bench meanwhile was bent before the move. */
  private void recordOnce(Move move, Reading reading) {
    if (reading.piece() + 1 >= move.fromPiece()) {
      waiting = null;
      if (move.recorded()) {
        record(
            new Happening(
                JobEvent.Kind.CORRECTION, move.before(), move.after(), "", "", reading.id()));
      }
    }
  }

  private URI page() {
    return URI.create(
        "http://127.0.0.1:" + port + "/api/stations/" + DemoStation.NAME + "/overview");
  }

  private void record(
      JobEvent.Kind kind, @Nullable Double before, @Nullable Double after, String lot) {
    record(new Happening(kind, before, after, lot, "", null));
  }

  private void record(Happening happening) {
    stations.at(DemoStation.NAME).record(happening, BY);
  }

  @Override
  public void close() {
    hand.shutdownNow();
  }
}
