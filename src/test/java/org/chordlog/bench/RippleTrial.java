package org.chordlog.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Face;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.chordlog.measure.Roller;
import org.chordlog.profile.EvaluationSettings;
import org.chordlog.profile.PieceOutcome.Measured;
import org.chordlog.profile.RippleScan;
import org.chordlog.profile.RollerDrift;
import org.chordlog.profile.RollerSearch;
import org.chordlog.profile.RollerVerdict;
import org.chordlog.profile.RollerVerdict.Finding;
import org.chordlog.simulator.LineScenario.RunOut;

/** Which roller: groups of five pieces that share a roller and its slip, not the phase. */
final class RippleTrial {
  static final List<Roller> ROLLERS =
      List.of(
          new Roller("inner 150", 150, 0, Face.INNER, true),
          new Roller("entry 180", 180, 0, Face.OUTER, false),
          new Roller("exit 220", 220, 0, Face.OUTER, false));
  private static final int POOLED = 5;
  private static final double SLIP_SD_PERCENT = 0.7;

  int singles;
  int singleNamed;
  int singleRight;
  int groups;
  int groupNamed;
  int groupRight;
  int unsure;
  int groupUnsure;
  int twiceNamed;
  int twiceRight;
  int twiceGroupNamed;
  int twiceGroupRight;
  int driftPoints;
  int driftAlarms;
  double amplitudes;
  double uncertainties;

  void run(LineSetting setting, double amplitudePercent, int count, long seed) {
    run(setting, amplitudePercent, 1, count, seed);
  }

  /** Of rollers that are out of round: an oval one waves as an eccentric one of half its size. */
  void runOval(LineSetting setting, double amplitudePercent, int count, long seed) {
    run(setting, amplitudePercent, 2, count, seed);
  }

  private void run(LineSetting setting, double amplitudePercent, int waves, int count, long seed) {
    Random random = new Random(seed);
    RollerDrift drift = new RollerDrift();
    for (int i = 0; i < count; i++) {
      Roller guilty = ROLLERS.get(random.nextInt(ROLLERS.size()));
      double slip = SLIP_SD_PERCENT * random.nextGaussian();
      RunOut runOut =
          new RunOut(
              guilty.name(),
              guilty.diameterMm() / waves,
              guilty.side(),
              amplitudePercent,
              -1,
              slip);
      group(setting.with(List.of(runOut)), amplitudePercent > 0 ? guilty : null, random, drift);
    }
  }

  private void group(LineSetting setting, Roller guilty, Random random, RollerDrift drift) {
    EvaluationSettings settings =
        setting.evaluation(LengthSource.CHANNEL, KnownLengths.NONE, DecideBy.MEAN, null);
    List<RippleScan> scans = new ArrayList<>();
    List<RippleScan> twice = new ArrayList<>();
    LineTrial trial = new LineTrial(setting);
    for (int i = 0; i < POOLED; i++) {
      LineTrial.Seen seen = trial.run(random);
      if (seen.outcomes().get(0) instanceof Measured measured) {
        RippleScan scan =
            RippleScan.of(seen.runs().get(0).profile(), measured.result(), settings, ROLLERS);
        scans.add(scan);
        single(RollerSearch.verdict(List.of(scan)), guilty);
        twice.add(
            RippleScan.ofTwoWavesATurn(
                seen.runs().get(0).profile(), measured.result(), settings, ROLLERS));
        Finding oval = twice(twice.subList(twice.size() - 1, twice.size()));
        twiceNamed += oval instanceof Finding.NoRipple ? 0 : 1;
        twiceRight += isNamed(oval, guilty) ? 1 : 0;
        drift.add(scan.points());
        driftPoints += drift.trends().size();
        driftAlarms += (int) drift.trends().stream().filter(t -> t.beyond()).count();
      }
    }
    groups++;
    Finding found = RollerSearch.verdict(scans).finding();
    groupUnsure += found instanceof Finding.OneOfTwo ? 1 : 0;
    groupNamed += found instanceof Finding.NoRipple ? 0 : 1;
    groupRight += isNamed(found, guilty) ? 1 : 0;
    Finding oval = twice(twice);
    twiceGroupNamed += oval instanceof Finding.NoRipple ? 0 : 1;
    twiceGroupRight += isNamed(oval, guilty) ? 1 : 0;
  }

  private static Finding twice(List<RippleScan> scans) {
    return RollerSearch.verdict(scans, RollerSearch.PROBABILITY_TWICE).finding();
  }

  private static boolean isNamed(Finding finding, Roller guilty) {
    return finding instanceof Finding.Named named && named.roller().equals(guilty);
  }

  private void single(RollerVerdict verdict, Roller guilty) {
    singles++;
    singleNamed += verdict.finding() instanceof Finding.NoRipple ? 0 : 1;
    unsure += verdict.finding() instanceof Finding.OneOfTwo ? 1 : 0;
    singleRight += isNamed(verdict.finding(), guilty) ? 1 : 0;
    verdict.ripples().stream()
        .filter(ripple -> ripple.roller().equals(guilty))
        .forEach(
            ripple -> {
              amplitudes += ripple.amplitudePercent();
              uncertainties += ripple.uncertaintyPercent();
            });
  }

  void add(RippleTrial other) {
    singles += other.singles;
    singleNamed += other.singleNamed;
    singleRight += other.singleRight;
    groups += other.groups;
    groupNamed += other.groupNamed;
    groupRight += other.groupRight;
    unsure += other.unsure;
    groupUnsure += other.groupUnsure;
    twiceNamed += other.twiceNamed;
    twiceRight += other.twiceRight;
    twiceGroupNamed += other.twiceGroupNamed;
    twiceGroupRight += other.twiceGroupRight;
    driftPoints += other.driftPoints;
    driftAlarms += other.driftAlarms;
  }

  double named() {
    return 100.0 * singleNamed / singles;
  }

  double groupsNamed() {
    return 100.0 * groupNamed / groups;
  }

  /** Another roller named than the one that ran out. */
  int wrong() {
    return singleNamed - singleRight - unsure;
  }

  int groupsWrong() {
    return groupNamed - groupRight - groupUnsure;
  }

  double driftAlarmPercent() {
    return 100.0 * driftAlarms / Math.max(1, driftPoints);
  }

  static String head() {
    return "| case | single pieces | a roller named % | right % | one of two % | fives | named % |"
        + " right % | amplitude found % | pieces beyond the chart's limit % | twice a turn, single"
        + " pieces: named %, right % | fives: named %, right % |\n"
        + "|---|---|---|---|---|---|---|---|---|---|---|---|";
  }

  String row(String name) {
    return String.format(
        Locale.ROOT,
        "| %s | %d | %.1f | %.1f | %.1f | %d | %.1f | %.1f | %.3f ± %.3f | %.2f | %.1f,"
            + " %.1f | %.1f, %.1f |",
        name,
        singles,
        named(),
        100.0 * singleRight / singles,
        100.0 * unsure / singles,
        groups,
        groupsNamed(),
        100.0 * groupRight / groups,
        amplitudes / singles,
        uncertainties / singles,
        driftAlarmPercent(),
        100.0 * twiceNamed / singles,
        100.0 * twiceRight / singles,
        100.0 * twiceGroupNamed / groups,
        100.0 * twiceGroupRight / groups);
  }
}
