package org.chordlog.study;

import org.chordlog.study.VarianceComponents.Component;

/** Plain words on how far the figures of a study can be trusted. */
final class Cautions {
  private Cautions() {}

  static void of(Findings findings, VarianceComponents components, StudySettings settings) {
    components.components().stream()
        .filter(Component::clipped)
        .forEach(part -> findings.caution(clipped(part)));
    components.where(Source.REPEATABILITY::equals).stream()
        .flatMap(part -> part.combination().terms().stream())
        .forEach(term -> coarse(findings, term.square()));
    if (settings.processSigma() == null) {
      findings.caution(
          "The study variation is that of the pieces in the study; hand-picked pieces say little of"
              + " the process. Give the process's standard deviation where it is known.");
    }
    if (!settings.tolerance().any()) {
      findings.caution("No tolerance was given, so the gauge is not compared with one.");
    }
  }

  /** Repeats that are all alike show the step of the gauge, not its repeatability. */
  static void coarse(Findings findings, MeanSquare... repeats) {
    for (MeanSquare each : repeats) {
      if (each.value() == 0) {
        findings.caution(
            "All repeats are alike ("
                + each.source()
                + "): the step of the gauge is too coarse to show how well it repeats.");
      }
    }
  }

  static void fewOperators(Findings findings, int operators) {
    if (operators - 1 < 4) {
      findings.caution(
          operators
              + " operators say little about operators: the upper ends for operators and gauge are wide.");
    }
  }

  private static String clipped(Component part) {
    return "The estimate of "
        + part.source().words()
        + " is below 0 and told as 0; the sum of mean squares is smaller than the figures shown.";
  }
}
