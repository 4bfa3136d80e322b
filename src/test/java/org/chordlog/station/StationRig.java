package org.chordlog.station;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.chordlog.Await;
import org.chordlog.capture.CaptureOptions;
import org.chordlog.capture.CaptureOptionsBuilder;
import org.chordlog.capture.Direction;
import org.chordlog.decode.BuiltInProfile;
import org.chordlog.link.LinkSettings;
import org.chordlog.link.SerialSettings;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Job;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Section;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.simulator.PseudoTerminal;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;

/**
 * A real store, real stations, and hands that move the plunger of an indicator on a real device.
 */
final class StationRig implements AutoCloseable {
  static final Bridge BRIDGE =
      new Bridge(0, "long", new Bridge.Span(200, 0.01), new Bridge.Feet(0, 0), 0);
  static final Indicator INDICATOR = new Indicator(0.001, 0.002, 12.7);
  static final double FREE_AIR_MM = -6;
  private static final long PERIOD_NANOS = TimeUnit.MILLISECONDS.toNanos(5);

  final Path directory;
  final Store store;
  final Stations stations;
  final List<Announcement> heard = new CopyOnWriteArrayList<>();

  StationRig(Path directory) {
    this(directory, StationClock.system());
  }

  StationRig(Path directory, StationClock clock) {
    this.directory = directory;
    store = Stores.open(directory.resolve("data"));
    stations = new Stations(store, clock, 1);
    stations.subscribe(heard::add);
  }

  Path port(String name) {
    return directory.resolve("port-" + name);
  }

  /** A new device under the name of that station's port. */
  PseudoTerminal plugIn(String name) throws IOException {
    PseudoTerminal terminal = PseudoTerminal.open();
    terminal.publish(port(name));
    return terminal;
  }

  /** Adds a station on that port and waits until its link is open. */
  void open(String name, CaptureOptions capture, ZeroRule zero) throws Exception {
    stations.add(settings(name, capture, zero));
    Await.until(() -> stations.status(name).link() == StationStatus.LinkState.OPEN);
  }

  StationSettings settings(String name, CaptureOptions capture, ZeroRule zero) {
    return settings(name, SerialSettings.of(port(name).toString()), capture, zero);
  }

  static StationSettings settings(
      String name, LinkSettings link, CaptureOptions capture, ZeroRule zero) {
    return StationSettings.of(name, link, BuiltInProfile.SIGNED_MM_LINES.profile(), INDICATOR)
        .machine("bender")
        .bridge(BRIDGE)
        .capture(capture)
        .zero(zero)
        .direction(Direction.COUNTS_UP)
        .silenceSeconds(0.0)
        .build();
  }

  static CaptureOptions settled() {
    return new CaptureOptionsBuilder(CaptureMode.SETTLED)
        .restSeconds(0.05)
        .leastSamples(5)
        .freeAirMm(FREE_AIR_MM)
        .build();
  }

  /** A job of that station on the outer face of a tube, with two positions, made the active one. */
  Job startJob(String station) {
    return startJob(station, 10);
  }

  /** The same, of R 1000 with limits that far on either side. */
  Job startJob(String station, double plusMinusMm) {
    Job job = job(station, 1_000, plusMinusMm);
    stations.at(station).selectJob(job.id());
    return job;
  }

  /** A job that is not begun. */
  Job job(String station, double targetMm, double plusMinusMm) {
    return store
        .jobs()
        .add(
            new Job(
                0,
                0,
                new Job.Order("hoops", "hoop", "lot 1"),
                new Job.Workplace("bender", station),
                new Job.Inspection(
                    new Section.RoundTube(60.3, 3.2),
                    Face.OUTER,
                    new Specification(
                        Face.OUTER, targetMm, targetMm - plusMinusMm, targetMm + plusMinusMm),
                    new Plan(
                        List.of("start", "end"),
                        new SubgroupRule(SubgroupRule.Kind.CONSECUTIVE, 5))),
                Job.State.OPEN,
                0),
            "test");
  }

  static byte[] line(double mm) {
    return String.format(Locale.ROOT, "%+07.3f\r\n", mm).getBytes(StandardCharsets.US_ASCII);
  }

  /** Holds the plunger there for that many values at 200 a second, as a real indicator sends. */
  static void hold(PseudoTerminal terminal, double mm, int values) throws IOException {
    for (int i = 0; i < values; i++) {
      terminal.write(line(mm));
      LockSupport.parkNanos(PERIOD_NANOS);
    }
  }

  List<Reading> taken() {
    return heard.stream()
        .filter(Announcement.Taken.class::isInstance)
        .map(each -> ((Announcement.Taken) each).reading())
        .toList();
  }

  @Override
  public void close() {
    stations.close();
    store.close();
  }
}
