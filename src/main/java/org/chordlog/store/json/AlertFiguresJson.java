package org.chordlog.store.json;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.SortedMap;
import java.util.TreeMap;
import org.chordlog.measure.alert.AlertFigure;

/** Figures of an alert by their names. */
record AlertFiguresJson(@JsonValue SortedMap<AlertFigure, Double> figures) {
  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  static AlertFiguresJson of(TreeMap<AlertFigure, Double> figures) {
    return new AlertFiguresJson(figures);
  }
}
