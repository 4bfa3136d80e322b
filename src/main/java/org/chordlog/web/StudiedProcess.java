package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.GaugeStudy.Kind;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.SetUp;
import org.chordlog.store.Store;
import org.chordlog.study.BudgetComparison;
import org.chordlog.study.Contribution;
import org.chordlog.study.CrossedStudy;
import org.chordlog.study.MeasuringProcess;
import org.chordlog.study.ProcessCapability;
import org.chordlog.study.SplitStudy;
import org.chordlog.study.StudyFigure;
import org.chordlog.study.StudyResult;
import org.chordlog.study.StudyVerdict;
import org.chordlog.study.VarianceComponents;
import org.chordlog.verdict.StudyWords;
import org.jspecify.annotations.Nullable;

/**
 * Capability of the measuring process (ISO 22514-7) from the studies of one gauge: one with pieces
 * and operators, the newest one on a single master, and the newest one on several masters where
 * there is one. All in curvature at the pieces' nominal; what masters show is carried over as
 * depth, so that the same movement of the plunger counts the same on both.
 */
final class StudiedProcess {
  private static final int NEWEST = 200;
  private static final Set<Kind> WITH_OPERATORS = Set.of(Kind.CROSSED, Kind.SPLIT);
  private static final Set<Kind> ON_ONE_MASTER = Set.of(Kind.TYPE1, Kind.BIAS);

  private final Store store;
  private final StudyEvaluation pieces;

  private StudiedProcess(Store store, StudyEvaluation pieces) {
    this.store = store;
    this.pieces = pieces;
  }

  /** What the studies together say of the measuring process. */
  record ProcessView(
      @JsonPropertyDescription("the studies it is put together from, by name and kind")
          List<String> from,
      @JsonPropertyDescription("what is in it and what is not") String holds,
      StudyVerdict verdict,
      Sentence says,
      List<StudyFigure> figures,
      @JsonPropertyDescription("against what the readings' own budget states")
          @Nullable BudgetComparison budget,
      List<String> cautions) {}

  /** Empty without both limits, and where no study on a master of this gauge is done. */
  static Optional<ProcessView> of(Store store, StudyEvaluation pieces) {
    return WITH_OPERATORS.contains(pieces.study().design().kind())
            && pieces.settings().tolerance().width() != null
        ? new StudiedProcess(store, pieces).view()
        : Optional.empty();
  }

  private Optional<ProcessView> view() {
    return newest(ON_ONE_MASTER).map(master -> view(master, newest(Set.of(Kind.LINEARITY))));
  }

  private ProcessView view(StudyEvaluation master, Optional<StudyEvaluation> masters) {
    StudyResult result =
        ProcessCapability.of(
            process(master, masters),
            Objects.requireNonNull(pieces.settings().tolerance().width()),
            pieces.settings());
    List<String> from = new ArrayList<>(List.of(name(pieces), name(master)));
    masters.ifPresent(each -> from.add(name(each)));
    return new ProcessView(
        from,
        holds(masters.isPresent()),
        result.conclusion().verdict(),
        result.conclusion().says(),
        result.figures(),
        budget(result),
        result.cautions());
  }

  private static String name(StudyEvaluation of) {
    String kind = StudyWords.of(of.study().design().kind()).toLowerCase(Locale.ROOT);
    return of.study().name() + " (" + kind + ")";
  }

  private static String holds(boolean linearity) {
    return "In it: the indicator's step, the master's calibration, bias and repeatability on it, "
        + (linearity ? "the largest bias over several masters, " : "")
        + "operators and repeatability on pieces. Not in it: days, temperature, finding the place"
        + (linearity ? "." : ", other radii than the master's.");
  }

  /** The newest one of this gauge that is done and shows something. */
  private Optional<StudyEvaluation> newest(Set<Kind> kinds) {
    long bridge = bridge(pieces).orElse(0L);
    return store.studies().list(Long.MAX_VALUE, NEWEST).stream()
        .filter(study -> study.state() == GaugeStudy.State.DONE)
        .filter(study -> study.station().equals(pieces.study().station()))
        .filter(study -> kinds.contains(study.design().kind()))
        .map(study -> new StudyEvaluation(store, study))
        .filter(each -> bridge(each).filter(id -> id == bridge).isPresent())
        .filter(StudyEvaluation::varies)
        .findFirst();
  }

  private static Optional<Long> bridge(StudyEvaluation of) {
    return of.setUp().map(SetUp::bridge).map(bridge -> bridge.id());
  }

  private MeasuringProcess process(StudyEvaluation master, Optional<StudyEvaluation> masters) {
    double perDepth = Math.abs(pieces.curvaturePerDepth());
    double ofMaster = perDepth / Math.abs(master.curvaturePerDepth());
    double stepMm = pieces.setUp().orElseThrow().indicator().resolutionMm();
    MeasuringProcess known =
        MeasuringProcess.empty()
            .withResolution(perDepth * stepMm)
            .withCalibration(ofMaster * master.reference().expandedUncertainty())
            .withBias(ofMaster * onMaster(master, "bias"))
            .with(
                Contribution.EVR,
                ofMaster * onMaster(master, "standardDeviation"),
                master.taken().size() - 1.0)
            .with(components());
    return masters
        .map(each -> known.withLinearity(perDepth * each.linearity().largestBias()))
        .orElse(known);
  }

  /** A figure told in mm at the master's radius, as curvature. */
  private static double onMaster(StudyEvaluation master, String figure) {
    double radius = master.study().subject().specification().targetMm();
    Double mm = master.result().figure(figure).map(StudyFigure::value).orElse(null);
    return (mm == null ? 0 : mm) / (radius * radius);
  }

  private VarianceComponents components() {
    return pieces.study().design().kind() == Kind.CROSSED
        ? CrossedStudy.components(pieces.readings(), pieces.settings())
        : SplitStudy.components(pieces.readings(), SplitStudy.Places.AS_NAMED);
  }

  private @Nullable BudgetComparison budget(StudyResult result) {
    double budget = pieces.budgetMm();
    return budget > 0
        ? result.figure("u_MP").map(each -> BudgetComparison.of(each, budget)).orElse(null)
        : null;
  }
}
