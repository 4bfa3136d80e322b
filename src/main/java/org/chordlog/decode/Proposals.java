package org.chordlog.decode;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * Profiles for a stream of unknown form. Pure: bytes with times in, proposals out.
 *
 * @param best ranked, the best first, at most six, each with another reading; none when nothing
 *     fits, or when the plunger was not seen to move
 * @param standsStill whether something can be read but the plunger was not seen to move: a standing
 *     value does not show its form
 * @param likeness 0 to 1: how much this looks like an indicator at the right rate, moving or not
 */
public record Proposals(List<Proposal> best, boolean standsStill, double likeness) {
  static final int MOST_BYTES = 1 << 16;
  private static final int MOST_PROPOSALS = 6;
  private static final double LEAST = 0.05;
  private static final double READ = 0.3;
  private static final double TEXT = 0.8;

  /** Its frames say by a letter how the value is meant; one such profile is built in. */
  private static final Candidate WITH_STATUS =
      new Candidate(
          BuiltInProfile.STATUS_LINES.profile(),
          1,
          List.of(
              "the letter in front says S steady, M moving, O over, U under, L battery, E error"));

  public Proposals {
    best = List.copyOf(best);
  }

  /** What may be proposed; {@code polling} is the request that was sent meanwhile, or null. */
  public static List<Proposal> of(List<Arrival> stream, @Nullable Polling polling) {
    return seen(stream, polling).best();
  }

  /**
   * Looks at the newest 64 KiB of a stream. {@code polling} is the request that was sent meanwhile,
   * or null.
   */
  public static Proposals seen(List<Arrival> stream, @Nullable Polling polling) {
    List<Arrival> newest = newest(stream);
    List<Proposal> tried =
        candidates(newest, polling).stream()
            .distinct()
            .map(candidate -> PassedOver.tried(candidate, newest))
            .toList();
    double most = tried.stream().mapToDouble(Proposal::confidence).max().orElse(0);
    List<Proposal> best = ranked(tried);
    boolean still = best.isEmpty() && (most >= READ || StreamLooks.repeats(newest));
    return new Proposals(best, still, StreamLooks.isText(newest) ? Math.max(TEXT, most) : most);
  }

  private static List<Candidate> candidates(List<Arrival> newest, @Nullable Polling polling) {
    List<Candidate> candidates = new ArrayList<>();
    for (boolean sevenBit :
        Stream7.worthMasking(newest) ? new boolean[] {false, true} : new boolean[1]) {
      List<Arrival> seen = sevenBit ? Stream7.masked(newest) : newest;
      FramingCandidates.of(seen)
          .forEach(cut -> candidates.addAll(FrameBodies.candidates(cut, sevenBit, polling)));
    }
    candidates.add(WITH_STATUS);
    List<Candidate> registers = ModbusGuess.candidates(newest, polling);
    candidates.addAll(registers.isEmpty() ? BinaryGuess.candidates(newest, polling) : registers);
    return candidates;
  }

  /** Those whose plunger moved, the best first, each with another reading. */
  static List<Proposal> ranked(List<Proposal> tried) {
    return tried.stream()
        .filter(Proposal::moved)
        .filter(proposal -> proposal.confidence() >= LEAST)
        .sorted(
            Comparator.comparingDouble(Proposal::confidence)
                .thenComparing(p -> Trials.strictness(p.profile()))
                .reversed())
        .filter(new OncePerReading())
        .limit(MOST_PROPOSALS)
        .toList();
  }

  /** Of several that read the same, a person need see only the first. */
  private static final class OncePerReading implements Predicate<Proposal> {
    private final Set<Map<Integer, List<Long>>> seen = new HashSet<>();

    @Override
    public boolean test(Proposal proposal) {
      return seen.add(proposal.reading());
    }
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
