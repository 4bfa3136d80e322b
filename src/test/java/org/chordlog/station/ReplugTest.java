package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.chordlog.Await;
import org.chordlog.measure.Incident;
import org.chordlog.simulator.PseudoTerminal;
import org.chordlog.station.StationStatus.LinkState;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Unplugging and plugging in again: all recover, and nothing is left behind. */
final class ReplugTest {
  @TempDir private Path directory;
  private long worstLossNanos;

  @Test
  void aDeviceThatComesBackUnderAnotherNumberIsReadAgain() throws Exception {
    try (StationRig rig = new StationRig(directory)) {
      PseudoTerminal first = rig.plugIn("a");
      rig.open("a", StationRig.settled(), ZeroRule.DEFAULT);
      PseudoTerminal second = PseudoTerminal.open();
      first.close();
      Await.until(() -> state(rig, "a") != LinkState.OPEN);
      second.publish(rig.port("a"));
      Await.until(() -> state(rig, "a") == LinkState.OPEN);
      assertTrue(!first.path().equals(second.path()), "another number");
      StationRig.hold(second, 1, 20);
      Await.until(() -> rig.stations.status("a").counts().samples() > 0);
      Await.until(() -> !incidents(rig).isEmpty());
      Incident gap = incidents(rig).get(0);
      assertEquals(Incident.Kind.LINK_LOST, gap.kind());
      assertTrue(gap.toMicros() > gap.fromMicros(), gap.toString());
      second.close();
    }
  }

  private static List<Incident> incidents(StationRig rig) {
    return rig.store.incidents().ofStation("a", Long.MAX_VALUE, 10);
  }

  @Test
  void threeCyclesOfTwoStationsLeaveNothingBehind() throws Exception {
    cycle(2, 3);
  }

  @Test
  @Tag("long")
  void twoHundredCyclesOfEightStationsLeaveNothingBehind() throws Exception {
    cycle(8, 200);
  }

  private void cycle(int stations, int cycles) throws Exception {
    try (StationRig rig = new StationRig(directory)) {
      List<String> names = IntStream.range(0, stations).mapToObj(i -> "s" + i).toList();
      List<PseudoTerminal> devices = new ArrayList<>();
      for (String name : names) {
        devices.add(rig.plugIn(name));
        rig.stations.add(rig.settings(name, StationRig.settled(), ZeroRule.DEFAULT));
      }
      recovery(rig, names, devices);
      long threads = threads();
      long descriptors = descriptors();
      long worstNanos = 0;
      for (int i = 0; i < cycles; i++) {
        replug(rig, names, devices);
        worstNanos = Math.max(worstNanos, recovery(rig, names, devices));
      }
      System.out.printf(
          "%d stations, %d cycles: worst time until all losses were seen %.2f s, to the first samples"
              + " after replugging %.2f s; threads %d then %d, descriptors %d then %d%n",
          stations,
          cycles,
          worstLossNanos / 1e9,
          worstNanos / 1e9,
          threads,
          threads(),
          descriptors,
          descriptors());
      long threadsBefore = threads;
      long descriptorsBefore = descriptors;
      Await.until(() -> threads() <= threadsBefore && descriptors() <= descriptorsBefore);
      for (PseudoTerminal device : devices) {
        device.close();
      }
    }
  }

  private void replug(StationRig rig, List<String> names, List<PseudoTerminal> devices)
      throws Exception {
    for (int i = 0; i < names.size(); i++) {
      devices.get(i).close();
    }
    long unplugged = System.nanoTime();
    Await.until(() -> names.stream().noneMatch(name -> state(rig, name) == LinkState.OPEN));
    worstLossNanos = Math.max(worstLossNanos, System.nanoTime() - unplugged);
    for (int i = 0; i < names.size(); i++) {
      devices.set(i, rig.plugIn(names.get(i)));
    }
  }

  /** Nanoseconds until every station has a new sample. */
  private static long recovery(StationRig rig, List<String> names, List<PseudoTerminal> devices)
      throws Exception {
    long start = System.nanoTime();
    List<Long> before = names.stream().map(name -> samples(rig, name)).toList();
    Await.until(
        () -> {
          send(devices);
          return IntStream.range(0, names.size())
              .allMatch(i -> samples(rig, names.get(i)) > before.get(i));
        });
    return System.nanoTime() - start;
  }

  private static void send(List<PseudoTerminal> devices) throws IOException {
    for (PseudoTerminal device : devices) {
      device.write(StationRig.line(1));
    }
  }

  private static long samples(StationRig rig, String name) {
    return rig.stations.status(name).counts().samples();
  }

  private static LinkState state(StationRig rig, String name) {
    return rig.stations.status(name).link();
  }

  private static long threads() {
    return Thread.getAllStackTraces().keySet().stream()
        .filter(thread -> !thread.getName().equals("incidents"))
        .count();
  }

  private static long descriptors() throws IOException {
    try (Stream<Path> open = Files.list(Path.of("/proc/self/fd"))) {
      return open.count();
    }
  }
}
