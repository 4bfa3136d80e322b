package org.chordlog.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.chordlog.chart.ChartSource;
import org.chordlog.chart.StudySnapshot;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.GaugeStudy.Kind;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.study.LinearityStudy;
import org.chordlog.study.StudyFigure;
import org.chordlog.study.StudyResult;
import org.chordlog.verdict.StudyWords;
import org.chordlog.web.StudyEvaluation.Taken;
import org.jspecify.annotations.Nullable;

/** What the pictures of a complete study show, lengths in mm. */
record StudyCharts(StudySnapshot snapshot) implements ChartSource {
  private static final List<String> COMPONENTS =
      List.of(
          "EV", "AV", "IA", "IAplace", "GRR", "PVpiece", "PVplace", "PV", "TV", "byEye", "marked",
          "placing", "level1", "days", "level2");

  /** What the axis calls the figures that have no symbol of the trade: a part of their words. */
  private static final Map<String, String> WORDED =
      Map.of(
          "byEye", "by eye",
          "marked", "on marks",
          "placing", "placing by eye",
          "level1", "in a day",
          "days", "days add",
          "level2", "day means");

  private static final int BAND_POINTS = 41;

  /** {@link org.chordlog.measure.BadInput} while measurements are missing. */
  static StudyCharts of(StudyEvaluation evaluation) {
    return of(evaluation, evaluation.result());
  }

  /** The same where the result is at hand. */
  static StudyCharts of(StudyEvaluation evaluation, StudyResult result) {
    boolean masters = evaluation.study().design().kind().onMasterEach();
    return new StudyCharts(
        new StudySnapshot(
            "mm",
            StudyWords.spot(evaluation.study().design().kind()),
            masters ? List.of() : cells(evaluation),
            masters ? List.of() : components(result),
            masters ? bias(evaluation, result) : null,
            overDays(evaluation.study())));
  }

  private static @Nullable Double overDays(GaugeStudy study) {
    return study.design().kind() == Kind.STABILITY
        ? study.subject().masters().get(0).radiusMm()
        : null;
  }

  @Override
  public Optional<ChartSnapshot> chart(ChartKind kind) {
    return Optional.empty();
  }

  @Override
  public Optional<StudySnapshot> study() {
    return Optional.of(snapshot);
  }

  private record Place(String operator, String spot) {}

  /** Operator by operator, pieces and places as they were planned. */
  private static List<StudySnapshot.Cell> cells(StudyEvaluation evaluation) {
    GaugeStudy.Design design = evaluation.study().design();
    List<String> places = design.places().isEmpty() ? List.of("") : design.places();
    Map<Place, List<Double>> cells = new LinkedHashMap<>();
    for (String operator : design.operators()) {
      for (String part : design.parts()) {
        places.forEach(at -> cells.put(new Place(operator, spot(part, at)), new ArrayList<>()));
      }
    }
    measured(evaluation, cells);
    return cells.entrySet().stream()
        .filter(each -> !each.getValue().isEmpty()) // of pieces of another operator's own
        .map(
            each ->
                new StudySnapshot.Cell(
                    each.getKey().operator(), each.getKey().spot(), each.getValue()))
        .toList();
  }

  private static void measured(StudyEvaluation evaluation, Map<Place, List<Double>> cells) {
    for (Taken each : evaluation.taken()) {
      Place place =
          new Place(each.step().operator(), spot(each.step().part(), each.step().place()));
      cells
          .computeIfAbsent(place, key -> new ArrayList<>())
          .add(1 / each.measurement().result().curvaturePerMm());
    }
  }

  private static String spot(String part, String place) {
    return place.isEmpty() ? part : part + ", " + place;
  }

  private static List<StudySnapshot.Component> components(StudyResult result) {
    return COMPONENTS.stream()
        .flatMap(name -> result.figure(name).stream())
        .flatMap(each -> component(each).stream())
        .toList();
  }

  private static Optional<StudySnapshot.Component> component(StudyFigure of) {
    String symbol = WORDED.getOrDefault(of.name(), of.name());
    return Optional.ofNullable(of.value())
        .map(
            value ->
                new StudySnapshot.Component(
                    symbol, of.words().toString(), value, of.lower(), of.upper()));
  }

  private static StudySnapshot.@Nullable Bias bias(StudyEvaluation evaluation, StudyResult result) {
    return evaluation.study().design().kind() == Kind.LINEARITY
        ? overDepth(evaluation)
        : result.figure("bias").map(figure -> overCount(evaluation, figure)).orElse(null);
  }

  private static StudySnapshot.Bias overDepth(StudyEvaluation evaluation) {
    List<StudySnapshot.Point> points = new ArrayList<>();
    for (Taken each : evaluation.taken()) {
      double along = evaluation.masterDepthMm(each);
      points.add(
          new StudySnapshot.Point(
              along, each.step().part(), StudyEvaluation.depthMm(each) - along));
    }
    List<LinearityStudy.BandPoint> band = evaluation.linearity().band(BAND_POINTS);
    return new StudySnapshot.Bias(
        true,
        points,
        band.stream()
            .map(
                each ->
                    new StudySnapshot.Fit(
                        each.reference(), each.bias(), each.lower(), each.upper()))
            .toList());
  }

  /** In mm of radius at the nominal, as the figure of the bias is told. */
  private static StudySnapshot.Bias overCount(StudyEvaluation evaluation, StudyFigure bias) {
    double nominal = evaluation.study().subject().specification().targetMm();
    double reference = evaluation.reference().value();
    List<StudySnapshot.Point> points = new ArrayList<>();
    for (Taken each : evaluation.taken()) {
      double off = each.measurement().result().curvaturePerMm() - reference;
      points.add(
          new StudySnapshot.Point(
              points.size() + 1.0, each.step().part(), -nominal * nominal * off));
    }
    return new StudySnapshot.Bias(
        false, points, List.of(fit(0.5, bias), fit(points.size() + 0.5, bias)));
  }

  private static StudySnapshot.Fit fit(double along, StudyFigure bias) {
    double value = known(bias.value());
    Double lower = bias.lower();
    Double upper = bias.upper();
    return new StudySnapshot.Fit(
        along, value, lower == null ? value : lower, upper == null ? value : upper);
  }

  private static double known(@Nullable Double value) {
    if (value == null) {
      throw new IllegalStateException("a bias without a value");
    }
    return value;
  }
}
