package org.chordlog.web;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.Length;
import org.chordlog.measure.Master;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Specification;
import org.chordlog.measure.StudyMeasurement;
import org.chordlog.radius.RadiusModel;
import org.chordlog.store.Store;
import org.chordlog.study.BiasStudy;
import org.chordlog.study.BudgetComparison;
import org.chordlog.study.CrossedStudy;
import org.chordlog.study.FigureUnit;
import org.chordlog.study.LinearityStudy;
import org.chordlog.study.NestedStudy;
import org.chordlog.study.OneOperatorStudy;
import org.chordlog.study.PlacingStudy;
import org.chordlog.study.RangeStudy;
import org.chordlog.study.SplitStudy;
import org.chordlog.study.StabilityStudy;
import org.chordlog.study.StudyDesign.Step;
import org.chordlog.study.StudyReading;
import org.chordlog.study.StudyResult;
import org.chordlog.study.StudySettings;
import org.chordlog.study.Tolerance;
import org.chordlog.study.TypeOneStudy;

/**
 * What a study done at a station found. Pieces and single masters are studied as curvatures and
 * told in mm at the nominal radius; linearity is studied in depth, so that its slope is the error
 * of the span and its intercept that of the zero.
 */
final class StudyEvaluation {
  /** Share of the nominal that is near enough for a slope. */
  private static final double NEAR = 1e-3;

  private static final String BY_RANGES = "by averages and ranges, which do not see an interaction";

  private final Store store;
  private final GaugeStudy study;
  private final List<Taken> taken = new ArrayList<>();

  /** A measurement with the step that it was taken for. */
  record Taken(Step step, StudyMeasurement measurement) {
    StudyReading reading() {
      return step.reading(measurement.result().curvaturePerMm());
    }
  }

  StudyEvaluation(Store store, GaugeStudy study) {
    this.store = store;
    this.study = study;
    List<Step> steps = steps(study);
    for (StudyMeasurement each : store.studies().counted(study.id())) {
      taken.add(new Taken(steps.get(each.step() - 1), each));
    }
  }

  /** All steps in their order. */
  static List<Step> steps(GaugeStudy study) {
    return StudySteps.of(study.design());
  }

  GaugeStudy study() {
    return study;
  }

  List<Taken> taken() {
    return List.copyOf(taken);
  }

  /** {@link BadInput} while measurements are missing, so that no one sees values too early. */
  List<Taken> complete() {
    int steps = study.design().steps();
    if (taken.size() < steps) {
      throw new BadInput(
          "study",
          study.name(),
          "has " + taken.size() + " of " + steps + " measurements",
          "all of them");
    }
    return taken();
  }

  /** {@link BadInput} while measurements are missing. */
  StudyResult result() {
    var unused = complete();
    if (!varies()) {
      String allowed = "some that differ: a step this coarse shows nothing of the gauge";
      throw new BadInput("measurements", "all " + taken.size(), "read the same", allowed);
    }
    return switch (study.design().kind()) {
      case CROSSED ->
          CrossedStudy.of(readings(), settings())
              .beside(BY_RANGES, RangeStudy.of(readings(), settings()).figures());
      case SPLIT -> SplitStudy.of(readings(), SplitStudy.Places.AS_NAMED, settings());
      case NESTED -> NestedStudy.of(readings(), false, settings());
      case LOTS -> NestedStudy.of(readings(), true, settings());
      case PLACING ->
          PlacingStudy.of(placed(GaugeStudy.BY_EYE), placed(GaugeStudy.ON_MARK), settings());
      case STABILITY -> StabilityStudy.of(readings(), reference(), settings());
      case ONE_OPERATOR -> OneOperatorStudy.of(readings(), settings());
      case BIAS -> BiasStudy.of(curvatures(), reference(), settings());
      case LINEARITY -> linearity().result(spanMm());
      case TYPE1 -> typeOne();
    };
  }

  /** Not all measurements read the same. */
  boolean varies() {
    return taken.stream().mapToLong(each -> each.measurement().depthNm()).distinct().count() > 1;
  }

  List<StudyReading> readings() {
    return taken.stream().map(Taken::reading).toList();
  }

  private List<StudyReading> placed(String how) {
    return taken.stream()
        .filter(each -> each.step().place().equals(how))
        .map(Taken::reading)
        .map(StudyReading::withoutPlace)
        .toList();
  }

  private double[] curvatures() {
    return readings().stream().mapToDouble(StudyReading::value).toArray();
  }

  StudySettings settings() {
    Specification asked = study.subject().specification();
    return StudySettings.usual()
        .with(FigureUnit.atNominal(asked.targetMm()))
        .with(Tolerance.ofRadius(asked.lowerLimitMm(), asked.upperLimitMm()));
  }

  /** The master's signed curvature with its expanded uncertainty. */
  BiasStudy.Reference reference() {
    Master master = study.subject().masters().get(0);
    double radius = master.radiusMm();
    return new BiasStudy.Reference(1 / radius, master.expandedUncertaintyMm() / (radius * radius));
  }

  private StudyResult typeOne() {
    double width = TypeOneStudy.width(settings().tolerance());
    TypeOneStudy.Inputs inputs = TypeOneStudy.Inputs.usual(width, reference().value());
    double step = setUp().orElseThrow().indicator().resolutionMm() * curvaturePerDepth();
    return TypeOneStudy.of(curvatures(), inputs.withResolution(Math.abs(step)), settings());
  }

  /** In depth, mm. */
  LinearityStudy linearity() {
    double[] references = taken.stream().mapToDouble(this::masterDepthMm).toArray();
    double[] depths = taken.stream().mapToDouble(StudyEvaluation::depthMm).toArray();
    return LinearityStudy.of(references, depths, settings().with(FigureUnit.as("mm")));
  }

  private double spanMm() {
    return model(taken.get(0).measurement()).spanMm();
  }

  /** What the bridge would have to read on the step's master. */
  double masterDepthMm(Taken each) {
    return model(each.measurement()).depthForMm(master(each.step().part()).radiusMm());
  }

  private Master master(String name) {
    return study.subject().masters().stream()
        .filter(each -> each.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  static double depthMm(Taken each) {
    return Length.mm(each.measurement().depthNm());
  }

  private final Map<Long, RadiusModel> models = new HashMap<>();

  private RadiusModel model(StudyMeasurement measurement) {
    return models.computeIfAbsent(
        measurement.result().setUpId(),
        id -> RadiusModel.of(store.readings().setUp(id).orElseThrow()));
  }

  /** The bridge that it was done with. */
  Optional<SetUp> setUp() {
    return taken.isEmpty()
        ? Optional.empty()
        : store.readings().setUp(taken.get(0).measurement().result().setUpId());
  }

  /** Curvature by depth at the nominal, 1/mm². */
  double curvaturePerDepth() {
    RadiusModel model = model(taken.get(0).measurement());
    double nominal = study.subject().specification().targetMm();
    double tight = nominal * (1 - NEAR);
    double flat = nominal * (1 + NEAR);
    return (1 / tight - 1 / flat) / (model.depthForMm(tight) - model.depthForMm(flat));
  }

  /**
   * GRR, or repeatability where one person measured, by eye where that was studied, over days on a
   * master, against what the readings' budgets state.
   */
  Optional<BudgetComparison> budget(StudyResult result) {
    double budget = budgetMm();
    return BudgetComparison.figure(result)
        .filter(each -> each.value() != null && budget > 0)
        .map(
            each ->
                study.design().kind() == GaugeStudy.Kind.LOTS
                    ? BudgetComparison.ofMost(each, budget)
                    : BudgetComparison.of(each, budget));
  }

  /** Mean standard uncertainty that the readings' budgets state, mm at the nominal. */
  double budgetMm() {
    double nominal = study.subject().specification().targetMm();
    double square =
        taken.stream()
            .mapToDouble(each -> each.measurement().result().standardUncertaintyPerMm())
            .map(u -> u * u)
            .average()
            .orElse(Double.NaN);
    return Math.sqrt(square) * nominal * nominal;
  }
}
