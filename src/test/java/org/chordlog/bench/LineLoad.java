package org.chordlog.bench;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Section;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.measure.Zero;
import org.chordlog.profile.Profile;
import org.chordlog.simulator.LineErrors;
import org.chordlog.simulator.LineStream;
import org.chordlog.simulator.PseudoTerminal;
import org.chordlog.station.StationClock;
import org.chordlog.station.StationFile;
import org.chordlog.station.Stations;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;

/**
 * What a station in a line at 1,000 frames/s costs: processor time of its thread while a section
 * runs through, and of one that gets the same frames and waits for rests, in turn, in one run; and
 * bytes a bin of the profiles stored. Arguments: seconds each (60).
 */
public final class LineLoad {
  private static final double RATE = 1000;
  private static final double FEED = 100;

  private LineLoad() {}

  /** Share of a core that the station's thread took. */
  private record Cost(double threadPercent, double processPercent) {}

  public static void main(String[] arguments) throws Exception {
    int seconds = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 60;
    Path directory = Files.createTempDirectory("line-load");
    try (PseudoTerminal terminal = PseudoTerminal.open();
        Store store = Stores.open(directory.resolve("data"))) {
      Path port = directory.resolve("port");
      terminal.publish(port);
      Job job = job(store);
      LineStream stream =
          new LineStream(LineSetting.of(200, RATE, FEED, 3000).scenario(0), LineErrors.NONE, 1);
      Cost settled = run(store, port, terminal, stream, "{mode: settled}", "", seconds);
      Cost passing = run(store, port, terminal, stream, "{mode: passing}", feed(), seconds);
      Cost settledAgain = run(store, port, terminal, stream, "{mode: settled}", "", seconds);
      double at = (settled.threadPercent + settledAgain.threadPercent) / 2;
      System.out.printf(
          Locale.ROOT,
          "%.0f frames/s, %d s each: thread of the station %.2f %% of a core passing, %.2f %% settled"
              + " (%.2f, %.2f), ratio %.2f; whole process %.1f %% against %.1f %%%n",
          RATE,
          seconds,
          passing.threadPercent,
          at,
          settled.threadPercent,
          settledAgain.threadPercent,
          passing.threadPercent / at,
          passing.processPercent,
          (settled.processPercent + settledAgain.processPercent) / 2);
      bytes(store, job);
    }
  }

  private static String feed() {
    return "feed: {length: channel, channel: 2, mmPerCount: 0.1}";
  }

  private static Job job(Store store) {
    Bridge bridge =
        store
            .gauges()
            .add(
                new Bridge(0, "bridge", new Bridge.Span(200, 0.02), new Bridge.Feet(0, 0, null), 0),
                "load");
    store.gauges().mount("L", bridge.id(), 1, "load");
    store.gauges().add(new Zero(0, "L", bridge.id(), 0, 300, 100, new Recorded(1, "load")));
    Job job =
        store
            .jobs()
            .add(
                Job.opened(
                    new Job.Order("load", "hoop", ""),
                    new Job.Workplace("line", "L"),
                    new Job.Inspection(
                        new Section.RoundTube(60.3, 3.2),
                        Face.OUTER,
                        new Specification(Face.OUTER, 1800, 1780.0, 1820.0),
                        new Plan(
                            List.of("whole"), new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1))),
                    1),
                "load");
    store.jobs().activate("L", job.id());
    return job;
  }

  private static String yaml(Path port, String capture, String feed) {
    return """
        stations:
          - name: L
            machine: line
            link: {kind: serial, port: %s}
            profile:
              framing: {kind: terminator, terminator: "\\r\\n"}
              pattern: '(?P<value1>[+-][0-9]+\\.[0-9]+);(?P<value2>[+-][0-9]+)'
              unit: MM
            channel: 1
            indicator: {resolutionMm: 0.001, permissibleErrorMm: 0.003, travelMm: 12.5}
            capture: %s
            %s
        """
        .formatted(port, capture, feed);
  }

  private static Cost run(
      Store store,
      Path port,
      PseudoTerminal terminal,
      LineStream stream,
      String capture,
      String feed,
      int seconds)
      throws Exception {
    try (Stations stations = new Stations(store, StationClock.system())) {
      StationFile.parse(yaml(port, capture, feed), "load").forEach(stations::add);
      send(terminal, stream, 5);
      long thread = threadNanos();
      long process = processNanos();
      long start = System.nanoTime();
      send(terminal, stream, seconds);
      double took = System.nanoTime() - start;
      return new Cost(
          100 * (threadNanos() - thread) / took, 100 * (processNanos() - process) / took);
    }
  }

  private static long threadNanos() {
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    for (long id : threads.getAllThreadIds()) {
      var info = threads.getThreadInfo(id);
      if (info != null && info.getThreadName().equals("station-L")) {
        return threads.getThreadCpuTime(id);
      }
    }
    throw new IllegalStateException("the station does not run");
  }

  private static long processNanos() {
    return ((OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
        .getProcessCpuTime();
  }

  /** Frames as they are due, 20 at once as a USB adapter hands them over. */
  private static void send(PseudoTerminal terminal, LineStream stream, int seconds)
      throws Exception {
    long start = System.nanoTime();
    for (int sent = 0; sent < seconds * RATE; sent += 20) {
      StringBuilder frames = new StringBuilder();
      for (int i = 0; i < 20; i++) {
        stream.next();
        frames.append(
            String.format(
                Locale.ROOT, "%+07.3f;%+010d\r\n", stream.depthNm() / 1e6, stream.counts()));
      }
      terminal.write(frames.toString().getBytes(StandardCharsets.US_ASCII));
      long due = start + Math.round((sent + 20) / RATE * TimeUnit.SECONDS.toNanos(1));
      LockSupport.parkNanos(due - System.nanoTime());
    }
  }

  private static void bytes(Store store, Job job) {
    List<Reading> readings = new ArrayList<>();
    for (Reading each : store.readings().ofJob(job.id(), 0, 1000)) {
      if (!store.readings().profiles(each.id()).isEmpty()) {
        readings.add(each);
      }
    }
    long bytes = 0;
    long bins = 0;
    for (Reading each : readings) {
      for (PassedProfile profile : store.readings().profiles(each.id())) {
        bytes += profile.packed().length;
        bins += Profile.unpacked(profile.packed()).bins();
      }
    }
    System.out.printf(
        Locale.ROOT,
        "%d pieces with a profile, %d bins, %.2f bytes a bin%n",
        readings.size(),
        bins,
        bins == 0 ? Double.NaN : (double) bytes / bins);
  }
}
