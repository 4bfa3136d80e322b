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

  /** Numbers on the scale are rounded to this, so that they have no binary digits behind. */
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

  /** The scenario's events before this piece were recorded; 0: none; of the same thread. */
  private int recordedTo;

  /** The reading before the newest one; of the same thread. */
  private @Nullable Long earlier;

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

  /** Tries until the bridge stands still on the flat; without any zero for as long as it takes. */
  private void takeZero() {
    long deadline = System.nanoTime() + PATIENCE_NANOS;
    while ((System.nanoTime() < deadline || isWithoutZero())
        && !Thread.currentThread().isInterrupted()) {
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

  private boolean isWithoutZero() {
    return stations.status(DemoStation.NAME).zeroId() == null;
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
      newest = taken.reading().piece();
      hand.execute(() -> after(taken.reading()));
    }
  }

  private boolean lastOfPiece(Reading reading) {
    List<String> positions = scenario.job().positions();
    return reading.position().equals(positions.get(positions.size() - 1));
  }

  /** A move that failed is advised again after the next piece. */
  private void after(Reading reading) {
    try {
      int bent = simulator.piece();
      recordBefore(bent + 1, reading);
      earlier = reading.id();
      move(bent, reading);
    } catch (IOException e) {
      LOG.atWarn().setCause(e).log("rollers not moved");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** The simulator counts pieces that were missed too, so its number says what has happened. */
  private void recordBefore(int next, Reading reading) {
    int known = recordedTo == 0 ? next - 1 : recordedTo;
    recordedTo = next;
    scenario.lots().stream()
        .filter(lot -> lot.fromPiece() > known && lot.fromPiece() <= next)
        .forEach(
            lot ->
                record(
                    new Happening(
                        JobEvent.Kind.MATERIAL_LOT,
                        null,
                        null,
                        lot.name(),
                        "",
                        readingBefore(lot.fromPiece(), next, reading),
                        null)));
    scenario.corrections().stream()
        .filter(each -> !moves.hand().byHand())
        .filter(each -> each.beforePiece() > known && each.beforePiece() <= next)
        .forEach(each -> correct(each, readingBefore(each.beforePiece(), next, reading)));
  }

  /** After which reading that piece came: it is the next one, or was bent before this reading. */
  private @Nullable Long readingBefore(int piece, int next, Reading reading) {
    return piece == next ? (Long) reading.id() : earlier;
  }

  private void correct(Scenario.Correction correction, @Nullable Long afterReading) {
    double before =
        scenario.corrections().stream()
            .filter(each -> each.beforePiece() < correction.beforePiece())
            .mapToDouble(Scenario.Correction::byMm)
            .sum();
    double start = scenario.machine().settingMm() + before;
    if (moves.memory().records()) {
      record(
          new Happening(
              JobEvent.Kind.CORRECTION,
              rounded(start),
              rounded(start + correction.byMm()),
              "",
              "",
              afterReading,
              null));
    }
  }

  private static double rounded(double setting) {
    return Math.rint(setting * STEPS_A_MM) / STEPS_A_MM;
  }

  private void move(int bent, Reading reading) throws IOException, InterruptedException {
    Move open = waiting;
    if (open != null) {
      recordOnce(open, bent, reading);
    } else if (port != 0 && reading.piece() == newest) {
      made(moves.hand().move(scenario, reading, page()), bent, reading);
    }
  }

  private void made(double amount, int bent, Reading reading) throws IOException {
    if (amount != 0) {
      double after = rounded(setting + amount);
      boolean recorded = moves.memory().records();
      Move move = new Move(setting, after, simulator.move(amount), recorded);
      setting = move.after();
      waiting = move;
      recordOnce(move, bent, reading);
    }
  }

  /** A piece that was on its way to the bench meanwhile was bent before the move. */
  private void recordOnce(Move move, int bent, Reading reading) {
    if (bent + 1 >= move.fromPiece()) {
      waiting = null;
      if (move.recorded()) {
        record(
            new Happening(
                JobEvent.Kind.CORRECTION, move.before(), move.after(), "", "", reading.id(), null));
      }
    }
  }

  private URI page() {
    return URI.create(
        "http://127.0.0.1:" + port + "/api/stations/" + DemoStation.NAME + "/overview");
  }

  private void record(Happening happening) {
    stations.at(DemoStation.NAME).record(happening, BY);
  }

  @Override
  public void close() {
    hand.shutdownNow();
  }
}
