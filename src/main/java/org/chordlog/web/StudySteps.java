package org.chordlog.web;

import java.util.List;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.study.StudyDesign;
import org.chordlog.study.StudyDesign.Step;

/** The order in which a study is measured, by its kind. */
final class StudySteps {
  private StudySteps() {}

  /** {@link org.chordlog.measure.BadInput} where names or counts don't make such a study. */
  static List<Step> of(GaugeStudy.Design of) {
    StudyDesign design = new StudyDesign(of.parts(), of.places(), of.operators(), of.repeats());
    return switch (of.kind()) {
      case CROSSED, SPLIT, ONE_OPERATOR, PLACING, BIAS, LINEARITY, TYPE1 -> design.steps(of.seed());
      case NESTED, LOTS -> design.stepsOfOwnParts(of.seed());
      case STABILITY -> design.stepsInTurn();
    };
  }
}
