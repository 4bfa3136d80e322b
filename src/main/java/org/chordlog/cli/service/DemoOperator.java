package org.chordlog.cli.service;

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

/** Does at the page what the operator of the scenario would: takes the zero, records events. */
final class DemoOperator implements AutoCloseable {
  private static final String BY = "demo";
  private static final long LOOK_NANOS = 20_000_000L;

  /** As the operator sees that the bridge is on the flat, not in free air. */
  private static final double NEAR_MM = 0.5;

  /** The flat itself is refused as a reading first; a piece after it means that it was missed. */
  private static final int FLAT_AND_PIECE = 2;

  private static final long PATIENCE_NANOS = 60_000_000_000L;

  private final Scenario scenario;
  private final Stations stations;
  private final DemoSimulator simulator;
  private volatile boolean onFlat;
  private volatile boolean missedFlat;
  private int unzeroed;
  private final ExecutorService hand = Executors.newSingleThreadExecutor(DemoOperator::thread);

  DemoOperator(Scenario scenario, Stations stations, DemoSimulator simulator) {
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
        .filter(correction -> correction.beforePiece() == piece)
        .forEach(correction -> correct(piece, correction.byMm()));
  }

  private void correct(int piece, double byMm) {
    double before =
        scenario.corrections().stream()
            .filter(earlier -> earlier.beforePiece() < piece)
            .mapToDouble(Scenario.Correction::byMm)
            .sum();
    double start = scenario.machine().settingMm() + before;
    record(JobEvent.Kind.CORRECTION, start, start + byMm, "");
  }

  private void record(
      JobEvent.Kind kind, @Nullable Double before, @Nullable Double after, String lot) {
    stations.at(DemoStation.NAME).record(new Happening(kind, before, after, lot, "", null), BY);
  }

  @Override
  public void close() {
    hand.shutdownNow();
  }
}
