package org.chordlog.web;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Face;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.GaugeStudy.Kind;
import org.chordlog.measure.Job;
import org.chordlog.measure.Length;
import org.chordlog.measure.Master;
import org.chordlog.measure.Specification;
import org.chordlog.measure.StudyMeasurement;
import org.chordlog.radius.RadiusModel;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.study.StudyDesign.Step;

/** Invented studies that are done, put straight into a store. */
final class DoneStudies {
  /** What every depth reads too much on masters. */
  static final double BIAS_MM = 0.004;

  private static final double SCATTER_MM = 0.001;
  private final Store store;
  private final long setUp;
  private final RadiusModel model;
  private final SplittableRandom random = new SplittableRandom(5);

  DoneStudies(Store store) {
    this.store = store;
    Bridge bridge =
        store.gauges().bridges().stream()
            .findFirst()
            .orElseGet(() -> store.gauges().add(Some.bridge("200"), "me"));
    setUp = store.readings().keep(Some.setUp(bridge));
    model = RadiusModel.of(store.readings().setUp(setUp).orElseThrow());
  }

  /** On so many pieces, at these places (none: one place a piece). */
  GaugeStudy onPieces(Kind kind, int pieces, List<String> places, List<String> operators) {
    Job job = Some.job("J", "M");
    List<String> names = new ArrayList<>();
    for (int i = 1; i <= pieces; i++) {
      names.add(String.valueOf(i));
    }
    return done(
        new GaugeStudy.Design(kind, names, places, operators, 3, 7),
        new GaugeStudy.Subject(job.section(), job.measuredFace(), job.specification(), List.of()));
  }

  /** On masters from 1800 mm in steps of 400 mm. */
  GaugeStudy onMasters(Kind kind, int count, int repeats) {
    List<Master> masters = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double radius = 1800 + 400.0 * i;
      masters.add(new Master(i + 1, "R " + (int) radius, Face.OUTER, radius, 0.2, null));
    }
    Job job = Some.job("J", "M");
    return done(
        new GaugeStudy.Design(
            kind,
            masters.stream().map(Master::name).toList(),
            List.of(),
            List.of("Ann"),
            repeats,
            7),
        new GaugeStudy.Subject(
            job.section(),
            Face.OUTER,
            new Specification(Face.OUTER, 1800, 1788.0, 1812.0),
            masters));
  }

  /** One master of 1800 mm over so many days. */
  GaugeStudy overDays(int days, int repeats) {
    List<String> names = new ArrayList<>();
    for (int i = 1; i <= days; i++) {
      names.add("day " + i);
    }
    return done(
        new GaugeStudy.Design(Kind.STABILITY, names, List.of(), List.of("Ann"), repeats, 7),
        new GaugeStudy.Subject(
            Some.job("J", "M").section(),
            Face.OUTER,
            new Specification(Face.OUTER, 1800, null, null),
            List.of(new Master(1, "R 1800", Face.OUTER, 1800, 0.2, null))));
  }

  private GaugeStudy done(GaugeStudy.Design design, GaugeStudy.Subject subject) {
    GaugeStudy study =
        store
            .studies()
            .add(
                new GaugeStudy(
                    0,
                    "A",
                    "hoops in spring",
                    design,
                    subject,
                    GaugeStudy.State.RUNNING,
                    new GaugeStudy.Made(Some.T0, "tester")));
    for (Step step : StudyEvaluation.steps(study)) {
      double depth = depthMm(study, step) + SCATTER_MM * (2 * random.nextDouble() - 1);
      var unused = store.studies().add(measurement(study.id(), step, depth));
    }
    return store.studies().become(study.id(), GaugeStudy.State.DONE, "tester", "");
  }

  /** Pieces are 4 mm apart; an operator reads less the later in the list. */
  private double depthMm(GaugeStudy study, Step step) {
    return study.subject().masters().stream()
        .filter(each -> each.name().equals(step.part()) || study.design().kind() == Kind.STABILITY)
        .mapToDouble(each -> model.depthForMm(each.radiusMm()) + BIAS_MM)
        .findFirst()
        .orElseGet(() -> ofPiece(study.design(), step));
  }

  private double ofPiece(GaugeStudy.Design design, Step step) {
    double radius =
        1790
            + 4 * design.parts().indexOf(step.part()) % 20
            + Math.max(0, design.places().indexOf(step.place()));
    return model.depthForMm(radius) - 0.001 * design.operators().indexOf(step.operator());
  }

  private StudyMeasurement measurement(long study, Step step, double depthMm) {
    int at = (int) step.order();
    long depthNm = Math.round(depthMm * 1e6);
    double radius = radiusMm(Length.mm(depthNm));
    return new StudyMeasurement(
        0,
        study,
        at,
        new CapturedDepth(
            CaptureMode.SETTLED,
            depthNm,
            500,
            12,
            new CapturedDepth.SampleRange(at * 20L, at * 20L + 11),
            new CapturedDepth.Moment(at * 1_000_000_000L, Some.T0 + at)),
        depthNm,
        new StudyMeasurement.Result(setUp, 1 / radius, 3e-7));
  }

  /** The radius that asks for that depth, by halving: depths fall as radii grow. */
  private double radiusMm(double depthMm) {
    double low = 500;
    double high = 50_000;
    for (int i = 0; i < 80; i++) {
      double middle = (low + high) / 2;
      if (model.depthForMm(middle) > depthMm) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }
}
