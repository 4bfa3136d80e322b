package org.chordlog.correction;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/**
 * What the positions of a job's pieces differ by, so that a piece has one value whichever of them
 * were measured. Offsets are deviations from the piece's mean and are learned from pieces that were
 * measured at every position of the job; they are pulled towards 0 as far as chance may explain
 * them. A position that is new begins the learning again.
 */
final class Positions {
  static final int MOST = 25;
  static final int ENOUGH = 5;
  private static final double SURE = 3;

  /**
   * Prior, in half tolerances, for the spread of the offsets and for that within a position; counts
   * as one position and one piece.
   */
  private static final double PRIOR = 1 / 6.0;

  private final Map<String, Spread> offsets = new LinkedHashMap<>();

  /** Values of one piece by position, permil, in the order measured. */
  record Values(Map<String, Double> byPosition, double readingVariance) {
    /** Readings of the last pass, the mean at each position. */
    static Values of(List<PieceReading> readings, Aim aim) {
      int pass = readings.stream().mapToInt(PieceReading::pass).max().orElse(1);
      List<PieceReading> counted = readings.stream().filter(r -> r.pass() == pass).toList();
      Map<String, Spread> means = new LinkedHashMap<>();
      double variance = 0;
      for (PieceReading each : counted) {
        Spread before = means.getOrDefault(each.position(), Spread.none());
        means.put(each.position(), before.with(aim.permil(each.perMm())));
        variance += square(aim.permilOfDifference(each.standardUncertaintyPerMm()));
      }
      Map<String, Double> byPosition = new LinkedHashMap<>();
      means.forEach((position, mean) -> byPosition.put(position, mean.mean()));
      return new Values(byPosition, variance / square(counted.size()));
    }
  }

  /** Positions that differ by more than chance; {@code aim}: level that puts their middle right. */
  record Apart(
      String tightest, String openest, double difference, double uncertainty, double aim) {}

  /** One value for the piece; {@code extraVariance} is what unmeasured positions leave open. */
  record PieceValue(double permil, double readingVariance, double extraVariance) {}

  /** Does not learn. */
  PieceValue value(Values piece, double halfTolerance) {
    double sum = 0;
    double open = 0;
    for (Map.Entry<String, Double> each : piece.byPosition().entrySet()) {
      sum += each.getValue() - offset(each.getKey(), halfTolerance);
      open += variance(each.getKey(), halfTolerance);
    }
    int count = piece.byPosition().size();
    boolean whole = isWhole(piece.byPosition().keySet());
    double within = offsets.size() < 2 ? 0 : within(halfTolerance);
    double extra = whole ? 0 : open / count / count + within * (1.0 / count - 1.0 / all());
    return new PieceValue(sum / count, piece.readingVariance(), Math.max(0, extra));
  }

  private boolean isWhole(Set<String> measured) {
    return measured.containsAll(offsets.keySet());
  }

  private int all() {
    return Math.max(1, offsets.size());
  }

  void check(Set<String> measured) {
    long all = offsets.keySet().stream().filter(each -> !measured.contains(each)).count();
    if (all + measured.size() > MOST) {
      throw new BadInput("position", measured, "are too many for one job", "up to " + MOST);
    }
  }

  /** Null unless the outermost positions differ by more than three standard uncertainties. */
  @Nullable Apart apart(double halfTolerance) {
    if (offsets.size() < 2 || pieces() < ENOUGH) {
      return null;
    }
    Comparator<String> byOffset = Comparator.comparingDouble(p -> offset(p, halfTolerance));
    String most = offsets.keySet().stream().max(byOffset).orElseThrow();
    String least = offsets.keySet().stream().min(byOffset).orElseThrow();
    double high = offset(most, halfTolerance);
    double low = offset(least, halfTolerance);
    double u = Math.sqrt(2 * within(halfTolerance) / pieces());
    return high - low > SURE * u ? new Apart(most, least, high - low, u, -(high + low) / 2) : null;
  }

  /** Call once for each piece, after its value was taken. */
  void learn(Values piece) {
    Set<String> measured = piece.byPosition().keySet();
    if (!offsets.keySet().containsAll(measured)) {
      measured.forEach(position -> offsets.putIfAbsent(position, Spread.none()));
      offsets.replaceAll((position, before) -> Spread.none());
    }
    if (measured.size() > 1 && isWhole(measured)) {
      double mean =
          piece.byPosition().values().stream().mapToDouble(Double::doubleValue).average().orElse(0);
      piece
          .byPosition()
          .forEach(
              (position, y) -> offsets.merge(position, Spread.none(), (a, b) -> a.with(y - mean)));
    }
  }

  /** Pieces measured at every position. */
  long pieces() {
    return offsets.values().stream().mapToLong(Spread::count).min().orElse(0);
  }

  List<String> names() {
    return List.copyOf(offsets.keySet());
  }

  /** Mean square of a position's values about its offset, permil squared. */
  double within(double halfTolerance) {
    double others = Math.max(1, offsets.size() - 1);
    double squares = offsets.values().stream().mapToDouble(Spread::squares).sum();
    double pieces = Math.max(1, pieces());
    return (squares + others * square(PRIOR * halfTolerance)) / (others * pieces);
  }

  private double spreadOfOffsets(double halfTolerance) {
    double squares = offsets.values().stream().mapToDouble(s -> s.mean() * s.mean()).sum();
    return (squares + square(PRIOR * halfTolerance)) / offsets.size();
  }

  /** Shrunk mean deviation of a position from the piece's mean. */
  double offset(String position, double halfTolerance) {
    Spread own = offsets.getOrDefault(position, Spread.none());
    if (own.count() == 0) {
      return 0;
    }
    double spread = spreadOfOffsets(halfTolerance);
    return own.mean() * spread / (spread + within(halfTolerance) / own.count());
  }

  /** Variance of that; 0 where pieces are measured at one position only. */
  private double variance(String position, double halfTolerance) {
    if (offsets.size() < 2) {
      return 0;
    }
    double spread = spreadOfOffsets(halfTolerance);
    long count = offsets.getOrDefault(position, Spread.none()).count();
    double chance = within(halfTolerance) / Math.max(1, count);
    return count == 0 ? spread : spread * chance / (spread + chance);
  }

  private static double square(double value) {
    return value * value;
  }

  void clear() {
    offsets.clear();
  }

  /** After a change of target. */
  void rescale(double ratio) {
    offsets.replaceAll(
        (position, s) -> new Spread(s.count(), s.mean() * ratio, s.squares() * ratio * ratio));
  }

  void write(Packer to) {
    Packing.putAll(
        to,
        offsets.entrySet(),
        (each, out) -> {
          out.put(each.getKey());
          each.getValue().write(out);
        });
  }

  void read(Unpacker from) {
    offsets.clear();
    int count = from.anInt();
    for (int i = 0; i < count; i++) {
      offsets.put(from.text(), Spread.read(from));
    }
  }
}
