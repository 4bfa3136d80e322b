package org.chordlog.station;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.locks.LockSupport;
import org.chordlog.Await;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Section;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.measure.Zero;
import org.chordlog.simulator.LineErrors;
import org.chordlog.simulator.LineScenario;
import org.chordlog.simulator.LineStream;
import org.chordlog.simulator.PseudoTerminal;
import org.chordlog.simulator.ScenarioFile;
import org.chordlog.store.Store;

/** A station in a line: an invented section runs through, sent over a real device. */
final class LineRig {
  static final String STATION = "outfeed";

  /** Shown on a flat, mm, as in the scenario. */
  static final double ON_FLAT_MM = 0.417;

  /** Values sent at once, as adapters hand them over. */
  private static final int AT_ONCE = 8;

  private static final long PAUSE_NANOS = 500_000;

  /** How many times faster than life. */
  private static final double SPEED = 40;

  final LineStream stream;

  /** What was sent, as a file of the command {@code profile}; counts of 0.1 mm. */
  final List<String> rows = new ArrayList<>(List.of("time_s,depth_mm,count"));

  private final PseudoTerminal terminal;
  private final LineScenario scenario;

  LineRig(PseudoTerminal terminal, LineScenario scenario, long seed) {
    this.terminal = terminal;
    this.scenario = scenario;
    stream = new LineStream(scenario, LineErrors.NONE, seed);
  }

  static LineScenario scenario() throws IOException {
    return ScenarioFile.readLine(ScenarioFile.LINE);
  }

  /** The station file's text; {@code feed} is its part of that name. */
  static String yaml(Path port, String feed) {
    return """
        stations:
          - name: outfeed
            machine: roller 2
            link: {kind: serial, port: %s}
            profile:
              framing: {kind: terminator, terminator: "\\r\\n"}
              pattern: '(?P<value1>[+-][0-9]+\\.[0-9]+);(?P<value2>[+-][0-9]+)'
              unit: MM
            channel: 1
            direction: counts_up
            indicator: {resolutionMm: 0.001, permissibleErrorMm: 0.003, travelMm: 12.5}
            capture: {mode: passing}
            feed: %s
            silenceSeconds: 0
        """
        .formatted(port, feed);
  }

  static String byWheel() {
    return "{length: channel, channel: 2, mmPerCount: 0.1, mostMmPerSecond: 10000}";
  }

  static Job startJob(Store store, DecideBy decideBy) {
    Bridge bridge =
        store
            .gauges()
            .add(
                new Bridge(
                    0, "bridge 200", new Bridge.Span(200, 0.02), new Bridge.Feet(0, 0, null), 0),
                "test");
    store.gauges().mount(STATION, bridge.id(), 1, "test");
    store
        .gauges()
        .add(
            new Zero(
                0,
                STATION,
                bridge.id(),
                Math.round(ON_FLAT_MM * 1e6),
                300,
                100,
                new Recorded(1, "test")));
    Job job =
        store
            .jobs()
            .add(
                Job.opened(
                    new Job.Order("Canopy line (invented)", "hoop", "lot 1"),
                    new Job.Workplace("roller 2", STATION),
                    new Job.Inspection(
                        new Section.RoundTube(60.3, 3.2),
                        Face.OUTER,
                        new Specification(Face.CENTRELINE, 1800, 1788.0, 1812.0, decideBy),
                        new Plan(
                            List.of("whole"), new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1))),
                    1),
                "test");
    store.jobs().activate(STATION, job.id());
    return job;
  }

  /** Until somebody has opened the device. */
  void awaitListener() throws Exception {
    Await.until(terminal::connected);
  }

  /**
   * Sends until the line is that many seconds old, never faster than {@link #SPEED}: what is late
   * on a busy machine is not caught up with, since the feed is told by the clock.
   */
  void runUntil(double seconds) throws IOException {
    double from = stream.seconds();
    long sent = System.nanoTime();
    StringBuilder frames = new StringBuilder();
    int waiting = 0;
    while (stream.seconds() < seconds) {
      stream.next();
      rows.add(
          String.format(
              Locale.ROOT,
              "%.6f,%.6f,%d",
              stream.seconds(),
              stream.depthNm() / 1e6,
              stream.counts()));
      frames.append(
          String.format(
              Locale.ROOT,
              "%+07.3f;%+010d\r\n",
              stream.depthNm() / 1e6 + scenario.indicator().showsOnFlatMm(),
              stream.counts()));
      if (++waiting == AT_ONCE || stream.seconds() >= seconds) {
        long due = sent + Math.round((stream.seconds() - from) / SPEED * 1e9);
        LockSupport.parkNanos(due - System.nanoTime());
        sent = Math.max(due, System.nanoTime());
        from = stream.seconds();
        send(frames.toString().getBytes(StandardCharsets.US_ASCII));
        frames.setLength(0);
        waiting = 0;
      }
    }
  }

  /** Waits where the device takes no more, so that nothing is dropped. */
  private void send(byte[] bytes) throws IOException {
    int sent = 0;
    while (sent < bytes.length) {
      sent += Math.max(0, terminal.write(Arrays.copyOfRange(bytes, sent, bytes.length)));
      LockSupport.parkNanos(PAUSE_NANOS);
    }
  }
}
