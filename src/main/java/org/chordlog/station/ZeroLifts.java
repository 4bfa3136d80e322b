package org.chordlog.station;

import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.chordlog.measure.Mounted;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.Zero;
import org.chordlog.store.Checkpoints;
import org.chordlog.store.Checkpoints.Slot;
import org.jspecify.annotations.Nullable;

/**
 * What free air said of a station's newest zeros, remembered over a restart. Where it is lost the
 * next zero is not compared with one before.
 */
public record ZeroLifts(Checkpoints checkpoints, String station) {
  private static final int LEVEL = 0;
  private static final int KEPT = 100;

  /** What is in doubt about that zero; null where nothing is, or nothing is known. */
  public @Nullable Sentence doubt(long zeroId) {
    return doubts().get(zeroId);
  }

  /** What is in doubt about each zero of which anything is, by their numbers. */
  public Map<Long, Sentence> doubts() {
    Map<Long, Sentence> doubts = new HashMap<>();
    for (ZeroLift each : all()) {
      Sentence doubt = each.doubt();
      if (doubt != null) {
        doubts.put(each.zeroId(), doubt);
      }
    }
    return doubts;
  }

  /** Keeps that zero with what is to be said of it. */
  ZeroLift add(Zero zero, AtRest rest, long freeAirNm, Mounted mounted, StationSettings settings) {
    List<ZeroLift> all = all();
    List<ZeroLift> before =
        all.stream().filter(each -> mounted.keeps(each.bridgeId(), each.atMicros())).toList();
    long pushedIn = zero.valueNm() - freeAirNm;
    long most = ZeroLift.mostNm(settings.indicator());
    long shift = ZeroLift.shiftNm(pushedIn, before, !rest.onNoPiece(), most);
    ZeroLift kept =
        new ZeroLift(
            zero.id(),
            zero.bridgeId(),
            zero.takenAtMicros(),
            pushedIn,
            shift,
            StationNode.readAs(settings));
    put(Stream.concat(Stream.of(kept), all.stream()).limit(KEPT).toList());
    return kept;
  }

  /** What was shown in free air at that zero; empty where it is not known by these settings. */
  Optional<Long> freeAirNm(Zero zero, StationSettings settings) {
    String readAs = StationNode.readAs(settings);
    return all().stream()
        .filter(each -> each.zeroId() == zero.id() && each.readAs().equals(readAs))
        .map(each -> zero.valueNm() - each.pushedInNm())
        .findFirst();
  }

  /** The newest first. */
  private List<ZeroLift> all() {
    return checkpoints
        .find(slot())
        .map(bytes -> new String(bytes, StandardCharsets.UTF_8).lines().map(ZeroLift::of).toList())
        .orElse(List.of());
  }

  private void put(List<ZeroLift> all) {
    String lines = all.stream().map(ZeroLift::line).collect(Collectors.joining("\n"));
    checkpoints.put(slot(), lines.getBytes(StandardCharsets.UTF_8));
  }

  private Slot slot() {
    return new Slot("zeros/" + station, LEVEL, 0);
  }
}
