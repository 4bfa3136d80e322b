package org.chordlog.decode;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.LongFunction;

/** What is proposed for each of {@link Formats}, as a table. */
public final class FormatsTable {
  private static final int FRAMES = 80;
  private static final int PUSHES = 3;

  /** Half of the coarsest step that is sent here. */
  private static final long ROUNDED_NM = 5_100;

  /** What became of a format. */
  enum Result {
    /** The first proposal reads what was sent. */
    RIGHT,
    /** Another of those shown does; the person picks the one that shows what the indicator does. */
    OFFERED,
    /** None does, and the first asks for what it assumed. */
    ASKED,
    NONE,
    /** The first reads something else and asks nothing. */
    SILENTLY_WRONG
  }

  private FormatsTable() {}

  static List<Arrival> stream(LongFunction<String> format, long[] microns) {
    List<Arrival> stream = new ArrayList<>();
    byte[] tail = Bytes.of(format.apply(7777));
    stream.add(new Arrival(0, Bytes.copy(tail, tail.length / 2, tail.length)));
    for (int i = 0; i < microns.length; i++) {
      stream.add(new Arrival((i + 1) * 50_000_000L, Bytes.of(format.apply(microns[i]))));
    }
    return stream;
  }

  /** A plunger pushed in and out by hand, from -3 mm to 9 mm. */
  static long[] pushed(long seed) {
    Random random = new Random(seed);
    long[] microns = new long[FRAMES];
    for (int i = 0; i < FRAMES; i++) {
      double turn = 2 * Math.PI * i / FRAMES * PUSHES + random.nextDouble() * 0.1;
      microns[i] = Math.round(3_000 - 6_000 * Math.cos(turn) + random.nextGaussian());
    }
    return microns;
  }

  static Result result(String name) {
    List<Proposal> proposals = proposals(name);
    if (proposals.isEmpty()) {
      return Result.NONE;
    }
    int right = right(name, proposals);
    if (right >= 0) {
      return right == 0 ? Result.RIGHT : Result.OFFERED;
    }
    return proposals.get(0).assumptions().isEmpty() ? Result.SILENTLY_WRONG : Result.ASKED;
  }

  /** Every profile that is proposed for any of the formats. */
  public static List<FrameProfile> proposedProfiles() {
    return Formats.ALL.keySet().stream()
        .flatMap(name -> proposals(name).stream())
        .map(Proposal::profile)
        .distinct()
        .toList();
  }

  static List<Proposal> proposals(String name) {
    return Proposals.of(stream(Objects.requireNonNull(Formats.ALL.get(name)), pushed(5)), null);
  }

  /** Place of the first that reads another stream of that format right, or -1. */
  static int right(String name, List<Proposal> proposals) {
    for (int i = 0; i < proposals.size(); i++) {
      if (channelRead(name, proposals.get(i).profile()) >= 0) {
        return i;
      }
    }
    return -1;
  }

  /**
   * The channel on which that profile reads each depth of a new stream, within what was rounded; -1
   * for none. The first frame may be refused, since it may have lost its beginning.
   */
  static int channelRead(String name, FrameProfile profile) {
    long[] microns = pushed(9);
    Map<Integer, List<Long>> read = new TreeMap<>();
    Decoder decoder = Decoders.of(profile);
    for (Arrival a : stream(Objects.requireNonNull(Formats.ALL.get(name)), microns)) {
      decoder.feed(a.bytes(), 0, a.bytes().length, a.monotonicNanos(), d -> take(d, read));
    }
    decoder.idle(Long.MAX_VALUE / 2, d -> take(d, read));
    return read.entrySet().stream()
        .filter(channel -> agrees(channel.getValue(), microns))
        .map(Map.Entry::getKey)
        .findFirst()
        .orElse(-1);
  }

  private static void take(Decoded decoded, Map<Integer, List<Long>> read) {
    if (decoded instanceof Decoded.Value value) {
      read.computeIfAbsent(value.channel(), c -> new ArrayList<>()).add(value.valueNm());
    }
  }

  private static boolean agrees(List<Long> read, long[] microns) {
    boolean all = read.size() >= FRAMES - 2 && read.size() <= FRAMES;
    for (int i = 1; all && i <= read.size(); i++) {
      long off = read.get(read.size() - i) - microns[FRAMES - i] * 1_000;
      all = Math.abs(off) <= ROUNDED_NM;
    }
    return all;
  }

  /** Prints the table. */
  public static void main(String[] arguments) {
    System.out.println("| format | sent for 5.123 mm | result | proposed |\n|---|---|---|---|");
    Map<Result, Integer> counts = new EnumMap<>(Result.class);
    Formats.ALL.forEach(
        (name, format) -> {
          List<Proposal> proposals = proposals(name);
          Result result = result(name);
          counts.merge(result, 1, Integer::sum);
          System.out.printf(
              Locale.ROOT,
              "| %s | `%s` | %s | %s |%n",
              name,
              format.apply(5123).replaceAll("[^ -~]", "."),
              result,
              proposals.isEmpty() ? "" : shown(proposals.get(Math.max(0, right(name, proposals)))));
        });
    System.out.println(Formats.ALL.size() + " formats: " + counts);
  }

  private static String shown(Proposal p) {
    return p.name()
        + " "
        + p.profile().pattern()
        + " "
        + p.profile().unit()
        + " "
        + p.assumptions()
        + String.format(Locale.ROOT, " %.2f refused %d", p.confidence(), p.refused());
  }
}
