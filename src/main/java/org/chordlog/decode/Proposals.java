package org.chordlog.decode;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Proposes profiles for a stream of unknown form. Pure: bytes with times in, proposals out. */
public final class Proposals {
  static final int SHOWN = 10;
  static final int MOST_BYTES = 1 << 16;
  private static final int MOST_PROPOSALS = 5;
  private static final double LEAST = 0.05;

  private Proposals() {}

  /**
   * Whether something could be read, but nothing is proposed because no value changed: a standing
   * value does not show its form.
   */
  public static boolean standsStill(List<Arrival> stream) {
    return of(stream, null).isEmpty() && !stream.isEmpty() && repeats(stream);
  }

  /** Whether the second half of what came is the first half again. */
  private static boolean repeats(List<Arrival> stream) {
    List<String> frames = new ArrayList<>();
    FramingCandidates.of(newest(stream)).forEach(cut -> frames.addAll(cut.bodies()));
    return !frames.isEmpty() && frames.stream().distinct().count() * 10 <= frames.size() + 10;
  }

  /**
   * Ranked proposals, the best first, at most five; none when nothing fits. Looks at the newest 64
   * KiB. {@code polling} is the request that was sent meanwhile, or null.
   */
  public static List<Proposal> of(List<Arrival> stream, @Nullable Polling polling) {
    List<Arrival> newest = newest(stream);
    List<Candidate> candidates = new ArrayList<>();
    for (boolean sevenBit :
        Stream7.worthMasking(newest) ? new boolean[] {false, true} : new boolean[1]) {
      List<Arrival> seen = sevenBit ? Stream7.masked(newest) : newest;
      FramingCandidates.of(seen)
          .forEach(cut -> candidates.addAll(FrameBodies.candidates(cut, sevenBit, polling)));
    }
    candidates.addAll(ModbusGuess.candidates(newest, polling));
    return candidates.stream()
        .distinct()
        .map(candidate -> Trials.of(candidate, newest))
        .filter(Proposal::moved)
        .filter(proposal -> proposal.confidence() >= LEAST)
        .sorted(
            Comparator.comparingDouble(Proposal::confidence)
                .thenComparing(p -> Trials.strictness(p.profile()))
                .reversed())
        .limit(MOST_PROPOSALS)
        .toList();
  }

  private static List<Arrival> newest(List<Arrival> stream) {
    int bytes = 0;
    int from = stream.size();
    while (from > 0 && bytes + stream.get(from - 1).bytes().length <= MOST_BYTES) {
      from--;
      bytes += stream.get(from).bytes().length;
    }
    return stream.subList(from, stream.size());
  }
}
