package org.chordlog.stats.control;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.stats.math.Moments;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/**
 * Collects readings into subgroups. An excluded reading keeps its place in the subgroup, so that
 * excluding and undoing never regroups the others.
 */
public final class Subgrouper {
  private record Member(Observation seen, String exclusion) {
    boolean in() {
      return exclusion.isEmpty();
    }
  }

  private final SubgroupRule rule;
  private final List<Member> open = new ArrayList<>();

  public Subgrouper(SubgroupRule rule) {
    this.rule = rule;
  }

  /** The subgroup that this reading completes or, as the first of another piece, leaves behind. */
  public @Nullable Point add(Observation seen, String exclusion) {
    Point left = nextPiece(seen) ? close() : null;
    open.add(new Member(seen, exclusion));
    return open.size() >= rule.size() ? close() : left;
  }

  /** What is collected so far, as it is; null if nothing. */
  public @Nullable Point close() {
    if (open.isEmpty()) {
      return null;
    }
    List<Member> members = open.stream().filter(Member::in).toList();
    Point point = point(members.isEmpty() ? List.copyOf(open) : members, members.isEmpty());
    open.clear();
    return point;
  }

  /** So many readings wait until their subgroup, by that rule, is full. */
  public record Waiting(int readings, SubgroupRule rule) {}

  public Waiting waiting() {
    return new Waiting(open.size(), rule);
  }

  private boolean nextPiece(Observation seen) {
    return rule.kind() == SubgroupRule.Kind.PIECE
        && !open.isEmpty()
        && open.get(0).seen().piece() != seen.piece();
  }

  private Point point(List<Member> members, boolean excluded) {
    Moments values = new Moments();
    members.forEach(member -> values.add(member.seen().value()));
    Observation first = open.get(0).seen();
    Observation last = open.get(open.size() - 1).seen();
    boolean single = members.size() < 2;
    return new Point(
        values.mean(),
        single ? Double.NaN : values.most() - values.least(),
        values.deviation(),
        members.size(),
        new PointReadings(
            first.readingId(), last.readingId(), last.piece(), position(first), last.atMicros()),
        new PointExclusion(excluded, reason()));
  }

  private String position(Observation first) {
    return open.stream().allMatch(member -> member.seen().position().equals(first.position()))
        ? first.position()
        : StatisticsPlan.WHOLE_PIECE;
  }

  private String reason() {
    List<Member> out = open.stream().filter(member -> !member.in()).toList();
    return out.isEmpty()
        ? ""
        : out.size()
            + " of "
            + open.size()
            + " excluded: "
            + out.stream().map(Member::exclusion).distinct().collect(Collectors.joining("; "));
  }

  /** Writes the whole state. */
  public void pack(Packer packer) {
    packer.put(open.size());
    for (Member member : open) {
      Observation seen = member.seen();
      packer.put(seen.readingId()).put(seen.piece()).put(seen.position()).put(seen.atMicros());
      packer.put(seen.value()).put(seen.standardUncertainty()).put(seen.bias());
      packer.put(member.exclusion());
    }
  }

  /** Takes up the state that was written. */
  public void unpack(Unpacker from) {
    int count = from.anInt();
    for (int i = 0; i < count; i++) {
      open.add(member(from));
    }
  }

  private static Member member(Unpacker from) {
    Observation seen =
        new Observation(
            from.aLong(),
            from.anInt(),
            from.text(),
            from.aLong(),
            from.aDouble(),
            from.aDouble(),
            from.aDouble());
    return new Member(seen, from.text());
  }
}
