package org.chordlog.study;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.study.BiasStudy.Reference;
import org.chordlog.study.Coverage.Design;
import org.chordlog.study.Simulated.Sigmas;
import org.chordlog.study.Simulated.SplitSigmas;
import org.chordlog.study.StudySettings.Constants;
import org.chordlog.study.StudySettings.Evaluation;

/** Designs whose intervals are put to the test, all invented. */
public final class CoverageDesigns {
  private static final StudySettings USUAL = StudySettings.usual().with(Tolerance.ofWidth(6));
  private static final Sigmas TYPICAL = new Sigmas(1, 0.22, 0.14, 0.2);
  private static final Sigmas COARSE = new Sigmas(1, 0.55, 0.32, 0.45);
  private static final Sigmas NO_INTERACTION = new Sigmas(1, 0.3, 0, 0.3);

  private CoverageDesigns() {}

  public static List<Design> all() {
    return List.of(
        crossed(10, 3, 3, TYPICAL),
        crossed(10, 3, 2, COARSE),
        crossed(5, 4, 3, TYPICAL),
        crossed(20, 2, 2, COARSE),
        pooled(10, 3, 3),
        range(10, 3, 3),
        oneOperator(20, 2),
        nested(4, 5, 3),
        nested(3, 10, 2),
        split(6, 3, 3, 2, false),
        split(8, 3, 4, 2, true),
        bias(15),
        linearity(),
        stability(),
        typeOne(50),
        placing(),
        process());
  }

  private static Map<String, Double> truths(
      Sigmas sigmas, double interaction, double repeatability) {
    Map<String, Double> truths = new LinkedHashMap<>();
    put(truths, "EV", repeatability, sigmas.total());
    put(truths, "AV", sigmas.operator(), sigmas.total());
    if (interaction > 0) {
      put(truths, "IA", interaction, sigmas.total());
    }
    put(truths, "GRR", sigmas.gauge(), sigmas.total());
    put(truths, "PV", sigmas.part(), sigmas.total());
    truths.put("TV", sigmas.total());
    truths.put("ndcUnrounded", 1.41 * sigmas.part() / sigmas.gauge());
    return truths;
  }

  private static void put(Map<String, Double> truths, String name, double sigma, double total) {
    truths.put(name, sigma);
    truths.put("percent" + name, 100 * sigma / total);
  }

  private static StudySettings pooling(double level, long seed) {
    return USUAL.with(new Evaluation(0.95, 6, level, Constants.AS_PUBLISHED)).withSeed(seed);
  }

  static Design crossed(int parts, int operators, int repeats, Sigmas sigmas) {
    String name = "crossed %d × %d × %d, GRR %.0f %%, interaction kept";
    return new Design(
        name.formatted(parts, operators, repeats, 100 * sigmas.gauge() / sigmas.total()),
        seed ->
            CrossedStudy.of(
                new Simulated(seed).crossed(parts, operators, repeats, sigmas), pooling(1, seed)),
        truths(sigmas, sigmas.interaction(), sigmas.repeat()));
  }

  static Design pooled(int parts, int operators, int repeats) {
    return new Design(
        "crossed %d × %d × %d, no interaction, pooled".formatted(parts, operators, repeats),
        seed ->
            CrossedStudy.of(
                new Simulated(seed).crossed(parts, operators, repeats, NO_INTERACTION),
                pooling(0, seed)),
        truths(NO_INTERACTION, 0, NO_INTERACTION.repeat()));
  }

  static Design range(int parts, int operators, int repeats) {
    return new Design(
        "range %d × %d × %d, no interaction".formatted(parts, operators, repeats),
        seed ->
            RangeStudy.of(
                new Simulated(seed).crossed(parts, operators, repeats, NO_INTERACTION),
                USUAL.withSeed(seed)),
        truths(NO_INTERACTION, 0, NO_INTERACTION.repeat()));
  }

  static Design oneOperator(int parts, int repeats) {
    Sigmas sigmas = new Sigmas(1, 0, 0, 0.3);
    Map<String, Double> truths = truths(sigmas, 0, 0.3);
    truths.remove("AV");
    truths.remove("percentAV");
    return new Design(
        "one operator, %d × %d".formatted(parts, repeats),
        seed ->
            OneOperatorStudy.of(
                new Simulated(seed).crossed(parts, 1, repeats, sigmas), USUAL.withSeed(seed)),
        truths);
  }

  static Design nested(int operators, int parts, int repeats) {
    Sigmas sigmas = new Sigmas(0.6, 0.4, 0, 0.3);
    return new Design(
        "nested %d × %d × %d".formatted(operators, parts, repeats),
        seed ->
            NestedStudy.of(
                new Simulated(seed).nested(operators, parts, repeats, sigmas),
                false,
                USUAL.withSeed(seed)),
        truths(sigmas, 0, 0.3));
  }

  static Design split(int pieces, int places, int operators, int repeats, boolean named) {
    SplitSigmas all = new SplitSigmas(new Sigmas(0.7, 0.3, 0.15, 0.25), 0.6, 0.2);
    double gauge = Math.sqrt(0.09 + 0.0225 + 0.0625 + 0.04);
    double product = Math.sqrt(0.49 + 0.36);
    double total = Math.hypot(gauge, product);
    Map<String, Double> truths = new LinkedHashMap<>();
    put(truths, "EV", 0.25, total);
    put(truths, "AV", 0.3, total);
    put(truths, "IA", 0.15, total);
    put(truths, "IAplace", 0.2, total);
    put(truths, "GRR", gauge, total);
    put(truths, "PVpiece", 0.7, total);
    put(truths, "PVplace", 0.6, total);
    put(truths, "PV", product, total);
    truths.put("TV", total);
    String name = "split %d × %d × %d × %d, places %s";
    return new Design(
        name.formatted(pieces, places, operators, repeats, named ? "named" : "marked"),
        seed ->
            SplitStudy.of(
                new Simulated(seed).split(pieces, places, operators, repeats, all, named),
                SplitStudy.Places.AS_NAMED,
                USUAL.withSeed(seed)),
        truths);
  }

  static Design bias(int readings) {
    return new Design(
        "bias, " + readings + " readings",
        seed -> {
          Simulated simulated = new Simulated(seed);
          double master = 6 + simulated.normal(1, 0.05)[0];
          double[] values = simulated.normal(readings, 6.1, 0.2);
          return BiasStudy.of(values, new Reference(master, 0.1), USUAL);
        },
        Map.of("mean", 6.1, "standardDeviation", 0.2, "biasWithMaster", 0.1));
  }

  static Design linearity() {
    double[] masters = {2, 4, 6, 8, 10};
    double squares = 12 * 40;
    double share = 0.0004 * squares / (0.0004 * squares + 0.04 * 60);
    return new Design(
        "linearity, 5 × 12",
        seed -> {
          double[] references = new double[60];
          double[] values = new Simulated(seed).normal(60, 0.2);
          for (int i = 0; i < 60; i++) {
            references[i] = masters[i / 12];
            values[i] += references[i] + 0.1 - 0.02 * references[i];
          }
          return LinearityStudy.of(references, values, USUAL).result(null);
        },
        Map.of(
            "slope", -0.02,
            "intercept", 0.1,
            "residualDeviation", 0.2,
            "R2", share,
            "biasAt 4", 0.02,
            "bandAt 2", 0.06,
            "bandAt 10", -0.1));
  }

  static Design stability() {
    return new Design(
        "stability, 6 runs × 6 days × 4",
        seed ->
            StabilityStudy.of(
                new Simulated(seed).nested(6, 6, 4, new Sigmas(0.5, 0.4, 0, 1)), null, USUAL),
        Map.of(
            "level1", 1.0,
            "level2", Math.sqrt(0.25 + 0.25),
            "level3", Math.sqrt(0.16 + 0.5 / 6),
            "days", 0.5,
            "runs", 0.4,
            "oneReading", Math.sqrt(1 + 0.25 + 0.16),
            "drift", 0.0));
  }

  static Design typeOne(int readings) {
    return new Design(
        "type 1, " + readings + " readings",
        seed ->
            TypeOneStudy.of(
                new Simulated(seed).normal(readings, 0.01, 0.05),
                TypeOneStudy.Inputs.usual(2, 0),
                USUAL),
        Map.of(
            "standardDeviation",
            0.05,
            "bias",
            0.01,
            "Cg",
            0.4 / 0.3,
            "Cgk",
            0.19 / 0.15,
            "percentRepeatability",
            15.0,
            "percentRepeatabilityAndBias",
            20 * 0.15 / 0.19));
  }

  static Design placing() {
    return new Design(
        "placing, 2 × 10 × 3",
        seed -> {
          Simulated simulated = new Simulated(seed);
          return PlacingStudy.of(
              simulated.crossed(10, 1, 3, new Sigmas(1, 0, 0, Math.sqrt(0.13))),
              simulated.crossed(10, 1, 3, new Sigmas(1, 0, 0, 0.2)),
              USUAL);
        },
        Map.of("byEye", Math.sqrt(0.13), "marked", 0.2, "placing", 0.3));
  }

  static Design process() {
    double system = Math.sqrt(0.01 * 0.01 + 0.05 * 0.05);
    double process = Math.sqrt(0.01 * 0.01 + TYPICAL.gauge() * TYPICAL.gauge());
    return new Design(
        "capability of the process, 25 on a master, 10 × 3 × 3 on pieces",
        seed -> {
          Simulated simulated = new Simulated(seed);
          double s = Means.deviation(simulated.normal(25, 0.05));
          VarianceComponents study =
              CrossedStudy.components(simulated.crossed(10, 3, 3, TYPICAL), pooling(1, seed));
          return ProcessCapability.of(
              MeasuringProcess.empty()
                  .withCalibration(0.02)
                  .with(Contribution.EVR, s, 24)
                  .with(study),
              3,
              USUAL);
        },
        Map.of(
            "u_EVR", 0.05,
            "u_AV", TYPICAL.operator(),
            "u_MS", system,
            "u_MP", process,
            "Q_MS", 400 * system / 3,
            "Q_MP", 400 * process / 3,
            "C_MS", 0.3 * 3 / 6 / system,
            "C_MP", 0.3 * 3 / 3 / process,
            "Tmin_MP", 4 * process / 0.3));
  }
}
