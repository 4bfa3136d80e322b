package org.chordlog.shop;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.LogbookEntry;
import org.chordlog.measure.LogbookEntry.Correction;
import org.chordlog.measure.LogbookEntry.Kind;
import org.chordlog.measure.LogbookEntry.Work;
import org.chordlog.measure.Master;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Zero;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.measure.alert.AlertStatus;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;

/** Fills a store with invented jobs of which every record is real; the same each time. */
public final class Shop {
  public static final long END_MICROS = 1_793_000_000_000_000L;
  private static final long DAY = 86_400_000_000L;
  private static final long HOUR = 3_600_000_000L;
  private final Store store;
  private final long nowMicros;
  private final String station;
  private final Bridge bridge;
  private final Zero zero;
  private final Calibration calibration;
  private long sequence;

  private Shop(Store store, long nowMicros, String station) {
    this.station = station;
    this.store = store;
    this.nowMicros = nowMicros;
    bridge =
        store
            .gauges()
            .add(
                new Bridge(
                    0, "bridge 200", new Bridge.Span(200, 0.01), new Bridge.Feet(5, 0.005), 0.3),
                "qa");
    store.gauges().mount(station, bridge.id(), nowMicros - 5 * DAY, "qa");
    zero =
        store
            .gauges()
            .add(
                new Zero(
                    0,
                    station,
                    bridge.id(),
                    417_000,
                    300,
                    20,
                    new Recorded(nowMicros - 5 * DAY, "operator")));
    calibration = store.gauges().add(calibration());
    check(true, 4 * DAY);
    check(true, DAY);
  }

  /** Jobs end at that time; their readings are of that station. */
  public static Shop open(Store store, long nowMicros, String station) {
    return new Shop(store, nowMicros, station);
  }

  /** Five jobs on two machines, the newest one without a reading. */
  public void usual() {
    Job ring = take(Order.ring(), 5 * DAY, 400);
    Job hoops = take(Order.hoops(), 2 * DAY, 360);
    Reading middle = readings(hoops).get(224);
    event(hoops, JobEvent.Kind.CORRECTION, middle, 25.58, 25.67, "", "crept up since piece 45");
    event(hoops, JobEvent.Kind.MATERIAL_LOT, readings(hoops).get(299), null, null, "B-204", "");
    exclude(readings(hoops).get(100), "bridge slipped off the weld seam");
    Job closed = take(Order.frame(), 4 * DAY, 80);
    store.jobs().update(closed(closed), "qa", "delivered");
    Job handrail = take(Order.handrail(), 3 * HOUR, 12);
    store.jobs().activate(station, handrail.id());
    store
        .jobs()
        .add(
            new Order(
                    "Test arch",
                    "roller 1",
                    Order.handrail().section(),
                    700,
                    695.0,
                    705.0,
                    List.of("middle"),
                    Order.handrail().subgroups(),
                    piece -> 0)
                .job(station, nowMicros),
            "qa");
    exclude(readings(ring).get(3), "trial piece");
    logbook("roller 1");
    alerts();
  }

  /** One of each urgency that waits, and one that somebody knows. */
  private void alerts() {
    AlertEvidence jump =
        AlertEvidence.of(
            Map.of(
                AlertFigure.SINCE_PIECE,
                120.0,
                AlertFigure.CHANGE,
                -0.0049,
                AlertFigure.TARGET_MM,
                1500.0));
    raised(AlertKey.machine(AlertKind.ROLLER_JUMPED, "roller 2"), jump, 2 * HOUR);
    AlertEvidence creep =
        AlertEvidence.of(
            Map.of(
                AlertFigure.SINCE_PIECE,
                44.0,
                AlertFigure.CHANGE_PER_PIECE,
                -2.8e-5,
                AlertFigure.CHANGE_PER_PIECE_LOWER,
                -5.6e-5,
                AlertFigure.CHANGE_PER_PIECE_UPPER,
                0.0,
                AlertFigure.CORRECTIONS,
                1.0,
                AlertFigure.TARGET_MM,
                1800.0));
    Alert creeping = raised(AlertKey.machine(AlertKind.ROLLER_CREEPS, "roller 1"), creep, DAY);
    AlertStatus seen = creeping.status().in(AlertState.ACKNOWLEDGED, nowMicros - 20 * HOUR);
    store
        .alerts()
        .add(
            new AlertEvent(
                AlertEvent.What.ACKNOWLEDGED,
                creeping.state(),
                creeping.next(seen),
                new Recorded(nowMicros - 20 * HOUR, "Petra"),
                "bearing ordered"));
    AlertEvidence due = AlertEvidence.of(Map.of(AlertFigure.DAYS_LEFT, 14.0));
    raised(AlertKey.station(AlertKind.CALIBRATION_DUE, station), due, HOUR);
  }

  private Alert raised(AlertKey key, AlertEvidence evidence, long agoMicros) {
    long at = nowMicros - agoMicros;
    Alert alert = Alert.raised(key, AlertStatus.raised(at, false), evidence);
    Recorded by = new Recorded(at, AlertEvent.SERVICE);
    return store
        .alerts()
        .add(new AlertEvent(AlertEvent.What.RAISED, AlertState.NORMAL, alert, by, ""))
        .alert();
  }

  private void logbook(String machine) {
    Work bearing =
        new Work(Kind.BEARING_RENEWED, "bending roller", "play 0.4 mm", "play 0.05 mm", "");
    LogbookEntry wrong = work(machine, bearing, 30 * DAY, null);
    Work both = new Work(bearing.kind(), "bending roller", "play 0.4 mm", "0.05 mm", "both sides");
    work(machine, both, 30 * DAY, new Correction(wrong.id(), "both sides were done", false));
    work(machine, new Work(Kind.LUBRICATED, "", "", "", "all four bearings"), 9 * DAY, null);
    work(machine, new Work(Kind.SET_STRAIGHT, "entry", "0.12 mm", "0.02 mm", ""), 6 * HOUR, null);
  }

  private LogbookEntry work(
      String machine, Work work, long agoMicros, @Nullable Correction correction) {
    return store
        .logbooks()
        .add(
            new LogbookEntry(
                0,
                machine,
                work,
                new Recorded(nowMicros - agoMicros, "Petra"),
                correction,
                new Recorded(nowMicros - agoMicros + HOUR, "maintenance")));
  }

  /** One long job. */
  public Job large(int readings) {
    return take(Order.large(readings), Math.min(300 * DAY, readings * 4_000_000L), readings);
  }

  private Calibration calibration() {
    List<Double> none = List.of(0.0, 0.0, 0.0);
    return new Calibration(
        0,
        station,
        bridge.id(),
        new Calibration.Fitted(
            200.013, 0.0004, 5, List.of(List.of(1e-4, 0.0, 0.0), List.of(0.0, 1e-7, 0.0), none), 6),
        new Recorded(nowMicros - 20 * DAY, "qa"),
        nowMicros + 160 * DAY,
        "The readings fit together within their uncertainties.");
  }

  private void check(boolean passed, long agoMicros) {
    Master master =
        store.gauges().masters().stream()
            .findFirst()
            .orElseGet(
                () ->
                    store
                        .gauges()
                        .add(new Master(0, "disc 1500", Face.OUTER, 1500.02, 0.05), "me"));
    store
        .gauges()
        .add(
            new InterimCheck(
                0,
                station,
                bridge.id(),
                master.id(),
                new InterimCheck.Comparison(1500.41, master.radiusMm(), 1.5, passed),
                new Recorded(nowMicros - agoMicros, "operator")));
  }

  private Job take(Order order, long agoMicros, int count) {
    Job job = store.jobs().add(order.job(station, nowMicros - agoMicros), "qa");
    SetUp setUp =
        new SetUp(
            bridge,
            new Indicator(0.001, 0.003, 12.5),
            zero,
            calibration,
            job.section(),
            Face.OUTER,
            Face.CENTRELINE);
    Pieces pieces = new Pieces(store, job, order, setUp);
    List<CompletableFuture<Reading>> kept = new ArrayList<>();
    long step = Math.max(1, agoMicros / (count + 1));
    for (int i = 0; i < count; i++) {
      kept.add(pieces.take(++sequence, i, nowMicros - agoMicros + (i + 1) * step));
      if (kept.size() == 5_000) {
        kept.forEach(CompletableFuture::join);
        kept.clear();
      }
    }
    kept.forEach(CompletableFuture::join);
    return job;
  }

  private List<Reading> readings(Job job) {
    return store.readings().ofJob(job.id(), 0, 1_000);
  }

  private void event(
      Job job,
      JobEvent.Kind kind,
      Reading after,
      @Nullable Double before,
      @Nullable Double now,
      String lot,
      String note) {
    store
        .jobs()
        .add(
            new JobEvent(
                0,
                job.id(),
                job.machine(),
                kind,
                after.id(),
                new JobEvent.Content(before, now, lot, note),
                new Recorded(after.wallMicros() + 1, "operator")));
  }

  private void exclude(Reading reading, String reason) {
    store
        .readings()
        .add(new Exclusion(0, reading.id(), true, reason, reading.wallMicros() + HOUR, "qa"));
  }

  private static Job closed(Job job) {
    return job.withState(Job.State.CLOSED);
  }
}
