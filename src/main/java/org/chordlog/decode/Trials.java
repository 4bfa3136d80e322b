package org.chordlog.decode;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;

/** Tries a candidate on the stream. */
final class Trials {
  private static final long FAR_NM = 300_000_000;
  private static final long AFTER = 60_000_000_000L;

  private Trials() {}

  /** {@code refused} is given the frames that it does not read. */
  static Proposal of(Candidate candidate, List<Arrival> stream, Consumer<Decoded.Damaged> refused) {
    Decoder decoder = Decoders.of(candidate.profile());
    Tally tally = new Tally(refused);
    for (Arrival arrival : stream) {
      decoder.feed(
          arrival.bytes(), 0, arrival.bytes().length, arrival.monotonicNanos(), tally::take);
    }
    if (!stream.isEmpty()) {
      decoder.idle(stream.get(stream.size() - 1).monotonicNanos() + AFTER, tally::take);
    }
    return new Proposal(
        name(candidate.profile()),
        candidate.profile(),
        candidate.trust() * tally.share() * tally.steadiness(candidate.profile().kind()),
        candidate.assumptions(),
        tally.read,
        decoder.counts().damaged(),
        tally.moved(),
        new ArrayList<>(tally.values));
  }

  private static String name(FrameProfile profile) {
    return Arrays.stream(BuiltInProfile.values())
        .filter(built -> built.profile().equals(profile))
        .findFirst()
        .map(BuiltInProfile::plainName)
        .orElse(Proposal.OWN);
  }

  /** How much noise a profile would notice; for ranking equals. */
  static int strictness(FrameProfile profile) {
    NumberForm number = profile.number();
    return (profile.checksum().kind().bytes + 1) / 2 * 8
        + profile.checksum().kind().bytes
        + (profile.framing().kind() == Framing.Kind.MARKERS ? 4 : 0)
        + (profile.framing().kind() == Framing.Kind.IDLE_GAP ? 1 : 0)
        + (profile.statuses().isEmpty() ? 0 : 3)
        + (number.decimals() == null ? 0 : 2)
        + (number.integerDigits() == null ? 0 : 1)
        + (number.sign() == NumberForm.Sign.ALWAYS ? 1 : 0);
  }

  /** Bytes that were read, bytes that were not, and the newest values. */
  private static final class Tally {
    private final Deque<Decoded.Value> values = new ArrayDeque<>();
    private final Map<Integer, Movement> movements = new TreeMap<>();
    private final Consumer<Decoded.Damaged> refused;
    private long read;
    private long good;
    private long bad;
    private long far;

    Tally(Consumer<Decoded.Damaged> refused) {
      this.refused = refused;
    }

    void take(Decoded decoded) {
      if (decoded instanceof Decoded.Damaged damaged) {
        bad += damaged.raw().length;
        refused.accept(damaged);
        return;
      }
      read++;
      good += decoded.raw().length;
      if (decoded instanceof Decoded.Value value) {
        far += Math.abs(value.valueNm()) > FAR_NM ? 1 : 0;
        movements.computeIfAbsent(value.channel(), c -> new Movement()).add(value.valueNm());
        values.addLast(value);
        if (values.size() > Proposal.SHOWN) {
          values.removeFirst();
        }
      }
    }

    boolean moved() {
      return movements.values().stream().anyMatch(Movement::moved);
    }

    /** Numbers that are not text may be read in many ways; the right one moves as a hand does. */
    double steadiness(DecoderKind kind) {
      return kind.isText()
          ? 1
          : movements.values().stream().mapToDouble(Movement::steadiness).max().orElse(0);
    }

    /** Few frames and values no indicator shows make it smaller. */
    double share() {
      return read == 0
          ? 0
          : (double) good / (good + bad) * (read / (read + 1.0)) * (1 - 0.7 * far / read);
    }
  }
}
