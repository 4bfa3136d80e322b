package org.chordlog.correction;

import java.util.Comparator;
import java.util.List;
import org.chordlog.correction.LotShifts.Shift;
import org.chordlog.correction.StartSetting.Basis;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/**
 * The numbers on the scale at which parts came out right, and how well earlier ones foretold later
 * ones, from all parts together.
 */
final class PartStarts {
  /** Older starts count less: the newest one has at least this weight. */
  private static final double LEAST_WEIGHT = 0.2;

  /** How much the gain may change on the way from one radius to another, relative. */
  private static final double GAIN_BENDS = 0.1;

  /** A start that is less sure than that, in half tolerances, is no better than a guess. */
  private static final double GUESS = 1.5;

  /** In half tolerances, before any start was foretold. */
  private static final double PRIOR_LOT_KNOWN = 1 / 3.0;

  private static final double PRIOR_LOT_UNKNOWN = 0.7;

  /**
   * A part's mean start, and one in terms of the newest lot, into which those of known lots are
   * converted.
   */
  record Start(
      String section,
      double targetMm,
      int count,
      double mean,
      String lot,
      double inLot,
      int countInLot) {
    private void write(Packer to) {
      to.put(section).put(targetMm).put(count).put(mean);
      to.put(lot).put(inLot).put(countInLot);
    }

    private static Start read(Unpacker from) {
      return new Start(
          from.text(),
          from.aDouble(),
          from.anInt(),
          from.aDouble(),
          from.text(),
          from.aDouble(),
          from.anInt());
    }
  }

  /** Where a start is looked for: what is bent, of which lot, with what gain. */
  record Place(Aim aim, String part, String section, String lot, Belief belief) {
    double settingOf(double permil) {
      return permil / belief.gain();
    }
  }

  /** Mean square of what starts were off, in half tolerances squared. */
  record Surprise(double sum, double count, double prior) {
    private static final double PRIOR_WEIGHT = 2;

    double variance() {
      return (sum + PRIOR_WEIGHT * prior * prior) / (count + PRIOR_WEIGHT);
    }

    private Surprise with(double error) {
      return new Surprise(sum + error * error, count + 1, prior);
    }

    private void write(Packer to) {
      to.put(sum).put(count);
    }

    private static Surprise read(Unpacker from, double prior) {
      return new Surprise(from.aDouble(), from.aDouble(), prior);
    }
  }

  private final Recent<Start> table = new Recent<>();
  private Surprise lotKnown = new Surprise(0, 0, PRIOR_LOT_KNOWN);
  private Surprise lotUnknown = new Surprise(0, 0, PRIOR_LOT_UNKNOWN);

  /** Null if nothing is known, or the gain is not known well enough to tell. */
  @Nullable StartSetting find(Place place, LotShifts lots) {
    if (place.belief().blind()) {
      return null;
    }
    Start known = place.part().isEmpty() ? null : table.find(key(place));
    return known == null ? fromOtherRadius(place) : fromSamePart(known, place, lots);
  }

  /** A part drawn anew with another target is another part. */
  private static String key(Place place) {
    return place.part() + '\n' + place.section() + '\n' + place.aim().targetMm();
  }

  private StartSetting fromSamePart(Start known, Place place, LotShifts lots) {
    Shift shift = lots.find(place.section(), known.lot(), place.lot());
    double unit = place.aim().halfTolerance();
    if (shift == null) {
      return new StartSetting(
          known.mean(), unit * Math.sqrt(lotUnknown.variance()), Basis.OTHER_LOT);
    }
    double step = place.aim().permilOfDifference(shift.perMm());
    double variance = square(place.aim().permilOfDifference(1)) * shift.variance();
    return new StartSetting(
        known.inLot() - place.settingOf(step),
        Math.sqrt(unit * unit * lotKnown.variance() + variance),
        known.lot().equals(place.lot()) ? Basis.SAME_LOT : Basis.KNOWN_LOT);
  }

  private @Nullable StartSetting fromOtherRadius(Place place) {
    List<Start> near =
        table.all().stream()
            .filter(start -> !place.section().isEmpty() && start.section().equals(place.section()))
            .sorted(Comparator.comparingDouble(start -> Math.abs(way(start, place))))
            .toList();
    if (near.isEmpty()) {
      return null;
    }
    Start first = near.get(0);
    StartSetting found =
        near.stream()
            .filter(other -> other.targetMm() != first.targetMm())
            .findFirst()
            .map(second -> bySecant(first, second, place))
            .orElseGet(() -> byGain(first, place));
    double guess = GUESS * place.aim().halfTolerance();
    return found.standardUncertaintyPermil() < guess ? found : null;
  }

  private StartSetting byGain(Start start, Place place) {
    double way = way(start, place);
    double relative = square(place.belief().gainUncertainty() / place.belief().gain());
    double variance =
        square(place.aim().halfTolerance()) * lotUnknown.variance()
            + way * way * (relative + GAIN_BENDS * GAIN_BENDS);
    return new StartSetting(
        start.mean() + place.settingOf(way), Math.sqrt(variance), Basis.OTHER_RADIUS);
  }

  /** On the straight line through two radii; what it misses is that the gain changes between. */
  private StartSetting bySecant(Start first, Start second, Place place) {
    double fromFirst = way(first, place);
    double fromSecond = way(second, place);
    double share = fromFirst / (fromFirst - fromSecond);
    double lots =
        square(place.aim().halfTolerance())
            * lotUnknown.variance()
            * (share * share + (1 - share) * (1 - share));
    double bend = GAIN_BENDS / 2 * fromFirst * fromSecond / (fromFirst - fromSecond);
    return new StartSetting(
        first.mean() + share * (second.mean() - first.mean()),
        Math.sqrt(lots + bend * bend),
        Basis.OTHER_RADIUS);
  }

  /** From a known radius to the one wanted, permil of the wanted curvature. */
  private static double way(Start start, Place place) {
    return place.aim().permilOfDifference(1 / place.aim().targetMm() - 1 / start.targetMm());
  }

  /** The part came out right at that number, where that one had been foretold. */
  void learn(double setting, @Nullable StartSetting foretold, Place place, LotShifts lots) {
    if (foretold != null) {
      double error = place.belief().gain() * (setting - foretold.setting());
      noteError(error / place.aim().halfTolerance(), foretold.basis());
    }
    if (!place.part().isEmpty()) {
      Start known = table.find(key(place));
      table.put(
          key(place), known == null ? first(setting, place) : next(known, setting, place, lots));
    }
  }

  private void noteError(double error, Basis basis) {
    if (basis.lotKnown()) {
      lotKnown = lotKnown.with(error);
    } else if (basis == Basis.OTHER_LOT) {
      lotUnknown = lotUnknown.with(error);
    }
  }

  private static Start first(double setting, Place place) {
    return new Start(place.section(), place.aim().targetMm(), 1, setting, place.lot(), setting, 1);
  }

  private static Start next(Start known, double setting, Place place, LotShifts lots) {
    int count = known.count() + 1;
    double mean = known.mean() + weight(count) * (setting - known.mean());
    Shift shift = lots.find(place.section(), known.lot(), place.lot());
    int countInLot = shift == null ? 1 : known.countInLot() + 1;
    double before =
        shift == null
            ? setting
            : known.inLot() - place.settingOf(place.aim().permilOfDifference(shift.perMm()));
    double inLot = before + weight(countInLot) * (setting - before);
    return new Start(
        place.section(), place.aim().targetMm(), count, mean, place.lot(), inLot, countInLot);
  }

  private static double weight(int count) {
    return Math.max(LEAST_WEIGHT, 1.0 / count);
  }

  /** The numbers of another scale mean nothing. */
  void clear() {
    table.clear();
  }

  private static double square(double value) {
    return value * value;
  }

  void write(Packer to) {
    table.write(to, Start::write);
    lotKnown.write(to);
    lotUnknown.write(to);
  }

  void read(Unpacker from) {
    table.read(from, Start::read);
    lotKnown = Surprise.read(from, PRIOR_LOT_KNOWN);
    lotUnknown = Surprise.read(from, PRIOR_LOT_UNKNOWN);
  }
}
