package org.chordlog.study;

import org.chordlog.measure.Sentence;
import org.chordlog.stats.math.Interval;
import org.jspecify.annotations.Nullable;

/** Makes the figures of a study, told in its unit and at its level. */
final class FigureMaker {
  private final double confidence;
  private final FigureUnit telling;

  FigureMaker(StudySettings settings) {
    confidence = settings.evaluation().confidence();
    telling = settings.telling();
  }

  /** What a figure is and how it is made. */
  record About(String name, Sentence words, String method, String source) {
    About(String name, String words, String method, String source) {
      this(name, Sentence.plain(words), method, source);
    }
  }

  /** The root of a variance that is given with its interval in the study's unit squared. */
  StudyFigure deviation(About about, Interval variance) {
    return figure(about, roots(variance, telling.deviation(1)), telling.unit());
  }

  /** A signed difference in the study's unit. */
  StudyFigure difference(About about, Interval difference) {
    double a = telling.difference(difference.lower());
    double b = telling.difference(difference.upper());
    Interval told =
        new Interval(telling.difference(difference.value()), Math.min(a, b), Math.max(a, b));
    return figure(about, told, telling.unit());
  }

  /** A value in the study's unit, as a mean; a curvature is told as its radius. */
  StudyFigure value(About about, Interval value) {
    double a = telling.value(value.lower());
    double b = telling.value(value.upper());
    Interval told = new Interval(telling.value(value.value()), Math.min(a, b), Math.max(a, b));
    return figure(about, told, telling.unit());
  }

  /** In a unit of its own. */
  StudyFigure figure(About about, Interval told, String unit) {
    return new StudyFigure(
        about.name(),
        about.words(),
        known(told.value()),
        known(told.lower()),
        known(told.upper()),
        confidence,
        unit,
        about.method(),
        about.source(),
        null);
  }

  /** A share from 0 to 1 as percent of a standard deviation. */
  StudyFigure percentOfDeviation(About about, Interval share) {
    return figure(about, roots(share, 100), "%");
  }

  StudyFigure percent(About about, Interval share) {
    Interval told = new Interval(100 * share.value(), 100 * share.lower(), 100 * share.upper());
    return figure(about, told, "%");
  }

  static Interval roots(Interval squares, double times) {
    return new Interval(
        times * Math.sqrt(squares.value()),
        times * Math.sqrt(squares.lower()),
        times * Math.sqrt(squares.upper()));
  }

  private static @Nullable Double known(double value) {
    return Double.isFinite(value) ? value : null;
  }
}
