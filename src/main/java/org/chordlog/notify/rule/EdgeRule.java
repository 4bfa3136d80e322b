package org.chordlog.notify.rule;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.chordlog.measure.Capital;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;

/** What of a workshop computer its plant must know. Bounds are judgement, no source. */
public final class EdgeRule {
  public static final Set<AlertKind> KINDS =
      Set.of(
          AlertKind.EDGE_SILENT,
          AlertKind.EDGE_BEGAN_ANEW,
          AlertKind.EDGE_VERSION_DIFFERS,
          AlertKind.EDGE_CLOCK_WRONG);

  /** Well above what a slow line lets a right clock look wrong by. */
  static final long CLOCK_SECONDS = 60;

  private static final double MINUTE_MICROS = 60e6;

  private EdgeRule() {}

  /** {@code silentMicros}: without a word for that long it is silent. */
  public static List<Found> found(EdgeFacts of, long silentMicros, long atMicros) {
    List<Found> found = new ArrayList<>();
    if (atMicros - of.heard().atMicros() >= silentMicros) {
      found.add(silent(of, atMicros));
    }
    if (of.began().histories() > 1 && !of.began().told()) {
      found.add(
          new Found(
              AlertKey.edge(AlertKind.EDGE_BEGAN_ANEW, of.name()),
              AlertEvidence.of(Map.of(AlertFigure.HISTORIES, (double) of.began().histories()))
                  .withDetail(Capital.of(of.began().why()))));
    }
    if (of.layoutsAhead() != 0) {
      found.add(
          found(of, AlertKind.EDGE_VERSION_DIFFERS, AlertFigure.LAYOUTS_AHEAD, of.layoutsAhead())
              .withDetail(of.program()));
    }
    if (Math.abs(of.secondsAhead()) >= CLOCK_SECONDS) {
      found.add(
          found(of, AlertKind.EDGE_CLOCK_WRONG, AlertFigure.SECONDS_AHEAD, of.secondsAhead()));
    }
    return found;
  }

  private static Found silent(EdgeFacts of, long atMicros) {
    Map<AlertFigure, Double> figures = new EnumMap<>(AlertFigure.class);
    figures.put(AlertFigure.HEARD_MICROS, (double) of.heard().atMicros());
    figures.put(AlertFigure.MINUTES, (atMicros - of.heard().atMicros()) / MINUTE_MICROS);
    figures.put(AlertFigure.RECORDS, (double) of.heard().records());
    return new Found(
        AlertKey.edge(AlertKind.EDGE_SILENT, of.name()),
        AlertEvidence.of(figures).withDetail(of.site()));
  }

  private static Found found(EdgeFacts of, AlertKind kind, AlertFigure figure, long value) {
    return new Found(
        AlertKey.edge(kind, of.name()), AlertEvidence.of(Map.of(figure, (double) value)));
  }
}
