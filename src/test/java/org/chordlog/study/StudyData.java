package org.chordlog.study;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Published data under src/test/resources/study, and short ways to figures. */
final class StudyData {
  private StudyData() {}

  /** Rows of a file with a heading, by column. */
  static List<Map<String, String>> rows(String name) {
    List<String> lines = lines(name);
    String[] heading = lines.get(0).split(",", -1);
    return lines.stream().skip(1).map(line -> row(heading, line.split(",", -1))).toList();
  }

  private static Map<String, String> row(String[] heading, String[] cells) {
    Map<String, String> row = new LinkedHashMap<>();
    for (int i = 0; i < heading.length; i++) {
      row.put(heading[i], cells[i]);
    }
    return row;
  }

  private static List<String> lines(String name) {
    try (InputStream in =
        Objects.requireNonNull(StudyData.class.getResourceAsStream("/study/" + name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static List<StudyReading> readings(String name) {
    return rows(name).stream().map(StudyData::reading).toList();
  }

  private static StudyReading reading(Map<String, String> row) {
    return new StudyReading(
        Objects.requireNonNull(row.get("part")),
        row.getOrDefault("place", ""),
        row.getOrDefault("operator", ""),
        Integer.parseInt(Objects.requireNonNull(row.get("repeat"))),
        0,
        Double.parseDouble(Objects.requireNonNull(row.get("value"))));
  }

  static double[] column(String name, String column) {
    return rows(name).stream().mapToDouble(row -> Double.parseDouble(row.get(column))).toArray();
  }

  static StudyFigure figure(List<StudyFigure> figures, String name) {
    return figures.stream()
        .filter(figure -> figure.name().equals(name))
        .findFirst()
        .orElseThrow(() -> new AssertionError(name));
  }

  static double value(StudyResult result, String name) {
    return value(result.figures(), name);
  }

  static double value(List<StudyFigure> figures, String name) {
    return Objects.requireNonNull(figure(figures, name).value(), name);
  }

  static double lower(StudyResult result, String name) {
    return Objects.requireNonNull(figure(result.figures(), name).lower(), name);
  }

  static double upper(StudyResult result, String name) {
    return Objects.requireNonNull(figure(result.figures(), name).upper(), name);
  }

  static AnovaRow row(StudyResult result, String source) {
    return result.anova().stream()
        .filter(row -> row.source().equals(source))
        .findFirst()
        .orElseThrow(() -> new AssertionError(source + " " + result.anova()));
  }

  static StudyTest test(StudyResult result, String name) {
    return result.tests().stream()
        .filter(test -> test.name().equals(name))
        .findFirst()
        .orElseThrow(() -> new AssertionError(name));
  }

  /** Readings of a table by part, operator and repeat. */
  static List<StudyReading> crossed(double[][][] values) {
    List<StudyReading> readings = new java.util.ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      for (int j = 0; j < values[i].length; j++) {
        for (int k = 0; k < values[i][j].length; k++) {
          readings.add(
              new StudyReading("P" + (i + 1), "", "O" + (j + 1), k + 1, 0, values[i][j][k]));
        }
      }
    }
    return readings;
  }

  static double[] numbers(String text) {
    return Arrays.stream(text.trim().split("\\s+")).mapToDouble(Double::parseDouble).toArray();
  }
}
