package org.chordlog.harness;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Section;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.measure.Zero;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;

/**
 * A directory with a station file, and records with which every station can take readings: a
 * bridge, a zero and an open job each (invented).
 */
public final class Rig {
  private final Path directory;
  private final int stations;
  private final double restSeconds;

  public Rig(Path directory, int stations, double restSeconds) {
    this.directory = directory;
    this.stations = stations;
    this.restSeconds = restSeconds;
  }

  public Path data() {
    return directory.resolve("data");
  }

  /** The same stations, whose devices are not there, on an empty data directory. */
  Rig beside(Path other) throws IOException {
    Rig rig = new Rig(other, stations, restSeconds);
    rig.writeConfig();
    return rig;
  }

  public Path log() {
    return directory.resolve("service.log");
  }

  public Path link(int station) {
    return directory.resolve("indicator-" + station);
  }

  Path config() {
    return directory.resolve("stations.yaml");
  }

  List<String> serveArguments() {
    return List.of(
        "serve",
        "--data",
        data().toString(),
        "--config",
        config().toString(),
        "--port",
        "0",
        "--json");
  }

  /** Ids of the jobs, one a station. */
  public List<Long> prepare() throws IOException {
    writeConfig();
    return records();
  }

  private void writeConfig() throws IOException {
    StringBuilder yaml = new StringBuilder("stations:\n");
    for (int station = 0; station < stations; station++) {
      yaml.append(yaml(station));
    }
    Files.writeString(config(), yaml);
    Files.createDirectories(data());
  }

  private String yaml(int station) {
    return String.format(
        Locale.ROOT,
        """
          - name: S%d
            machine: roller %d
            link: {kind: serial, port: %s}
            profile: signed-mm-lines
            direction: counts_up
            indicator: {resolutionMm: 0.001, permissibleErrorMm: 0.003, travelMm: 12.7}
            capture: {mode: SETTLED, restSeconds: %s, freeAirMm: -6.5, contactMm: 1.5}
        """,
        station,
        station,
        link(station),
        restSeconds);
  }

  private List<Long> records() {
    List<Long> jobs = new ArrayList<>();
    try (Store store = Stores.open(data())) {
      long now = System.currentTimeMillis() * 1_000;
      for (int station = 0; station < stations; station++) {
        String name = "S" + station;
        Bridge bridge =
            store
                .gauges()
                .add(
                    new Bridge(
                        0, "B" + station, new Bridge.Span(200, 0.02), new Bridge.Feet(0, 0), 0.3),
                    "x");
        store.gauges().mount(name, bridge.id(), now, "x");
        store.gauges().add(new Zero(0, name, bridge.id(), 0, 500, 20, new Recorded(now, "x")));
        Job job = store.jobs().add(job(name, station, now), "x");
        store.jobs().activate(name, job.id());
        jobs.add(job.id());
      }
    }
    return jobs;
  }

  private static Job job(String station, int number, long now) {
    return Job.opened(
        new Job.Order("Job of " + station, "hoop", "A-1"),
        new Job.Workplace("roller " + number, station),
        new Job.Inspection(
            new Section.RoundTube(60.3, 3.2),
            Face.OUTER,
            new Specification(Face.OUTER, 1800, 1788.0, 1812.0),
            new Plan(List.of("middle"), new SubgroupRule(SubgroupRule.Kind.CONSECUTIVE, 5))),
        now);
  }
}
