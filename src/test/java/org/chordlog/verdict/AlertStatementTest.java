package org.chordlog.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.chordlog.measure.Lengths;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertStatus;
import org.chordlog.measure.alert.AlertSubject;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

final class AlertStatementTest {
  private static Alert alert(AlertKind kind, Map<AlertFigure, Double> figures, String detail) {
    String name = kind.about() == AlertSubject.Type.SERVICE ? "" : "M1";
    return Alert.raised(
        new AlertKey(kind, new AlertSubject(kind.about(), name)),
        AlertStatus.raised(5, false),
        AlertEvidence.of(figures).withDetail(detail));
  }

  static Stream<Arguments> said() {
    return Stream.of(
        Arguments.of(
            AlertKind.ROLLER_CREEPS,
            Map.of(
                AlertFigure.SINCE_PIECE, 41.0,
                AlertFigure.CHANGE_PER_PIECE, 2e-5,
                AlertFigure.CHANGE_PER_PIECE_LOWER, 1.2e-5,
                AlertFigure.CHANGE_PER_PIECE_UPPER, 2.8e-5,
                AlertFigure.CORRECTIONS, 2.0,
                AlertFigure.TARGET_MM, 1800.0),
            "Since piece 41 its pieces get 0.20 % tighter (−3.6 mm at 1800 mm) per 100 pieces (95 % sure:"
                + " 0.12 to 0.28 %), although the rollers were corrected twice."),
        Arguments.of(
            AlertKind.ROLLER_CREEPS,
            Map.of(AlertFigure.SINCE_PIECE, 41.0, AlertFigure.CHANGE, 2e-3),
            "Since piece 41 its pieces come out 0.20 % tighter; whether at once or piece by piece"
                + " can't be told yet."),
        Arguments.of(
            AlertKind.ROLLER_JUMPED,
            Map.of(AlertFigure.SINCE_PIECE, 41.0, AlertFigure.CHANGE, -1e-3),
            "Since piece 41 its pieces come out 0.10 % wider."),
        Arguments.of(
            AlertKind.LIMIT_AHEAD,
            Map.of(
                AlertFigure.PIECES_LEFT, 40.2,
                AlertFigure.PIECES_LEFT_AT_LEAST, 28.0,
                AlertFigure.TOLERANCE_MM, 12.0),
            "At this pace its pieces reach the limit of ± 12 mm after about 40 more, after"
                + " 28 at the earliest."),
        Arguments.of(
            AlertKind.LIMIT_AHEAD,
            Map.of(
                AlertFigure.PIECES_LEFT, 0.0,
                AlertFigure.TARGET_MM, 1800.0,
                AlertFigure.TOLERANCE_MM, 12.0),
            "Its pieces are past the limit of 1800 ± 12 mm already."),
        Arguments.of(
            AlertKind.GAUGE_UNFIT,
            Map.of(
                AlertFigure.DEVIATION_MM, 3.14,
                AlertFigure.MASTER_MM, 1000.0,
                AlertFigure.READINGS_IN_DOUBT, 120.0),
            "The last check was off by +3.1 mm on a master of 1000 mm. 120 readings since the last passed one."),
        Arguments.of(
            AlertKind.GAUGE_UNFIT,
            Map.of(AlertFigure.READINGS_IN_DOUBT, 1.0),
            "The last check on a master failed. 1 reading since the last passed one."),
        Arguments.of(
            AlertKind.RECORD_ALTERED, Map.of(AlertFigure.FAULTS, 1.0), "1 fault was found."),
        Arguments.of(
            AlertKind.CALIBRATION_DUE,
            Map.of(AlertFigure.DAYS_LEFT, 3.0),
            "The calibration ends in 3 days."),
        Arguments.of(
            AlertKind.CALIBRATION_DUE,
            Map.of(AlertFigure.DAYS_LEFT, -1.0),
            "The calibration is overdue by 1 day."),
        Arguments.of(
            AlertKind.DISK_LOW, Map.of(AlertFigure.FREE_BYTES, 1.86e9), "1.9 GB are free."));
  }

  @ParameterizedTest
  @MethodSource
  void said(AlertKind kind, Map<AlertFigure, Double> figures, String words) {
    assertEquals(words, new AlertStatement(alert(kind, figures, "")).evidence().toString());
  }

  @Test
  void lengthsAreSaidInTheReadersUnit() {
    Map<AlertFigure, Double> figures = Map.of(AlertFigure.TOLERANCE_MM, 25.4);
    Statement said = new AlertStatement(alert(AlertKind.LIMIT_AHEAD, figures, "")).statement();
    assertEquals(
        "Its pieces are past the limit of ± 1 in already.", said.reason().in(Lengths.INCH));
  }

  @ParameterizedTest
  @EnumSource
  void eachKindIsSaidAlsoWithoutItsFigures(AlertKind kind) {
    Statement said = new AlertStatement(alert(kind, Map.of(), "the link says so")).statement();
    assertFalse(said.word().isBlank());
    assertFalse(said.reason().toString().isBlank());
    assertFalse(said.advice().toString().isBlank());
  }

  @Test
  void whoIsSentToAMachineIsWarned() {
    Set<AlertKind> atTheMachine = EnumSet.noneOf(AlertKind.class);
    for (AlertKind kind : AlertKind.values()) {
      if (AlertWords.whatToDo(kind).contains(AlertWords.CAUTION)) {
        atTheMachine.add(kind);
      }
    }
    List<AlertKind> machines =
        Stream.of(AlertKind.values())
            .filter(kind -> kind.about() == AlertSubject.Type.MACHINE)
            .toList();
    assertTrue(atTheMachine.containsAll(machines), atTheMachine::toString);
    assertTrue(atTheMachine.contains(AlertKind.LINK_LOST));
  }

  @Test
  void anUnsteadyOneSaysSo() {
    Alert steady = alert(AlertKind.DISK_LOW, Map.of(), "");
    Alert unsteady = steady.next(steady.status().withUnsteady(true));
    String said = new AlertStatement(unsteady).statement().reason().toString();
    assertTrue(said.contains("unsteady"), said);
  }
}
