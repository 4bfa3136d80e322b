package org.chordlog.measure.alert;

import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.chordlog.measure.Check;
import org.jspecify.annotations.Nullable;

/**
 * What an alert rests on: figures, words that something else said of it (a link, the store; may be
 * empty), and the first and last reading that it was found in (0: none).
 */
public record AlertEvidence(
    SortedMap<AlertFigure, Double> figures,
    String detail,
    long firstReadingId,
    long lastReadingId) {
  public static final AlertEvidence NONE = new AlertEvidence(new TreeMap<>(), "", 0, 0);

  public AlertEvidence {
    figures.forEach((figure, value) -> Check.finite(figure.name(), value));
    figures = Collections.unmodifiableSortedMap(new TreeMap<>(figures));
  }

  public static AlertEvidence of(Map<AlertFigure, Double> figures) {
    return new AlertEvidence(new TreeMap<>(figures), "", 0, 0);
  }

  public AlertEvidence withDetail(String words) {
    return new AlertEvidence(figures, words, firstReadingId, lastReadingId);
  }

  public AlertEvidence withReadings(long first, long last) {
    return new AlertEvidence(figures, detail, first, last);
  }

  /** Null where it is not known. */
  public @Nullable Double figure(AlertFigure figure) {
    return figures.get(figure);
  }
}
