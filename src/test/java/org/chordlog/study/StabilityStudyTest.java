package org.chordlog.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** One master over days and runs: NIST/SEMATECH e-Handbook (data read, results from memory). */
final class StabilityStudyTest {
  private static double[][] column(List<Map<String, String>> rows, String column) {
    double[][] byRun = new double[2][rows.size() / 2];
    int[] next = {0, 0};
    for (Map<String, String> row : rows) {
      int run = Integer.parseInt(row.get("run")) - 1;
      byRun[run][next[run]++] = Double.parseDouble(row.get(column));
    }
    return byRun;
  }

  private static StudyResult study(List<Map<String, String>> rows) {
    return StabilityStudy.ofAverages(
        column(rows, "average"), column(rows, "stddev"), 6, StudySettings.usual());
  }

  /** 2.4.4.1, MPC441: wafer 140, probe 2362, two runs of six days. */
  @Test
  void checkStandard() {
    List<Map<String, String>> rows = StudyData.rows("handbook-mpc441.csv");
    StudyResult result = study(rows);
    double[][] averages = column(rows, "average");
    assertEquals(96.0357, Means.mean(averages[0]), 5e-5);
    assertEquals(96.0765, Means.mean(averages[1]), 5e-5);
    assertEquals(0.02728, Means.deviation(averages[0]), 5e-6);
    assertEquals(0.02756, Means.deviation(averages[1]), 5e-6);
    assertEquals(0.02742, StudyData.value(result, "level2"), 5e-6);
    assertEquals(0.02885, StudyData.value(result, "level3"), 5e-6);
    assertEquals(0.07871, StudyData.value(result, "level1"), 5e-6, "recomputed");
    assertEquals(10, StudyData.row(result, "day in run").degreesOfFreedom());
    assertEquals(1, StudyData.row(result, "run").degreesOfFreedom());
  }

  /** 2.6.1 and 2.6.3, MPC61: probe 2362 pooled over five wafers. */
  @Test
  void probePooledOverWafers() {
    double[] squares = new double[3];
    for (String wafer : List.of("138", "139", "140", "141", "142")) {
      StudyResult result =
          study(
              StudyData.rows("handbook-mpc61-probe-2362.csv").stream()
                  .filter(row -> wafer.equals(row.get("wafer")))
                  .toList());
      for (int level = 1; level <= 3; level++) {
        squares[level - 1] += Math.pow(StudyData.value(result, "level" + level), 2) / 5;
      }
    }
    assertEquals(0.0729, Math.sqrt(squares[0]), 5.1e-5);
    assertEquals(0.0362, Math.sqrt(squares[1]), 5.1e-5);
    assertEquals(0.0197, Math.sqrt(squares[2]), 6e-5, "printed one unit high");
  }

  /** Single readings give the same as each day's average and deviation. */
  @Test
  void readingsAndAveragesAgree() {
    double[][] averages = {{5.0, 5.2, 4.9}, {5.4, 5.5, 5.3}};
    double[][] deviations = {{0.1, 0.2, 0.1}, {0.1, 0.1, 0.3}};
    List<StudyReading> readings = new ArrayList<>();
    for (int run = 0; run < 2; run++) {
      for (int day = 0; day < 3; day++) {
        double half = deviations[run][day] / Math.sqrt(2);
        String name = "d" + day;
        double mean = averages[run][day];
        readings.add(new StudyReading(name, "", "r" + run, 1, 0, mean - half));
        readings.add(new StudyReading(name, "", "r" + run, 2, 0, mean + half));
      }
    }
    StudyResult single = StabilityStudy.of(readings, null, StudySettings.usual());
    StudyResult summed = StabilityStudy.ofAverages(averages, deviations, 2, StudySettings.usual());
    for (String name : List.of("level1", "level2", "level3", "days", "runs", "drift")) {
      assertEquals(StudyData.value(summed, name), StudyData.value(single, name), 1e-12, name);
    }
  }

  /** Variances of the three sources add up to that of one reading: the handbook's 2.3.3.3. */
  @Test
  void oneReadingOnAnyDayIsComparedWithTheBudget() {
    StudyResult result = study(StudyData.rows("handbook-mpc441.csv"));
    double sum = 0;
    for (String name : List.of("level1", "days", "runs")) {
      sum += Math.pow(StudyData.value(result, name), 2);
    }
    assertEquals(Math.sqrt(sum), StudyData.value(result, "oneReading"), 1e-12);
    StudyFigure figure = BudgetComparison.figure(result).orElseThrow();
    assertEquals("oneReading", figure.name());
    assertTrue(BudgetComparison.of(figure, 0.03).says().contains("from day to day"));
    assertTrue(BudgetComparison.of(figure, 0.3).says().contains("A master is easier"));
  }

  /** Days at 5.0, 5.2, 4.8 and 5.0: mean 5.0, s 0.1633, t(0.975; 3) = 3.182 of any table. */
  @Test
  void aMeanBesideTheMasterIsToldAndNotJudged() {
    List<StudyReading> readings = new ArrayList<>();
    double[] days = {5.0, 5.2, 4.8, 5.0};
    for (int day = 0; day < days.length; day++) {
      readings.add(new StudyReading("d" + day, "", "", 1, 0, days[day] - 0.05));
      readings.add(new StudyReading("d" + day, "", "", 2, 0, days[day] + 0.05));
    }
    StudyResult off =
        StabilityStudy.of(readings, new BiasStudy.Reference(4.0, 0), StudySettings.usual());
    StudyFigure bias = off.figure("bias").orElseThrow();
    assertEquals(1, StudyData.value(off, "bias"), 1e-12);
    assertEquals(1 + 3.182 * 0.16330 / 2, StudyData.upper(off, "bias"), 1e-4);
    assertNull(bias.judged());
    assertTrue(off.cautions().get(0).contains("beside the master"), off.cautions().toString());
    StudyResult on =
        StabilityStudy.of(readings, new BiasStudy.Reference(5.1, 0), StudySettings.usual());
    assertTrue(on.cautions().isEmpty(), on.cautions().toString());
  }

  @Test
  void aDriftIsSeen() {
    List<StudyReading> readings = new ArrayList<>();
    double[] noise = {0.01, -0.02, 0.015, -0.005, 0.0, 0.02, -0.01, 0.005};
    for (int day = 0; day < 8; day++) {
      readings.add(new StudyReading("d" + day, "", "", 1, 0, day * 0.1 + noise[day]));
      readings.add(new StudyReading("d" + day, "", "", 2, 0, day * 0.1 - noise[day]));
    }
    StudyResult result = StabilityStudy.of(readings, null, StudySettings.usual());
    assertEquals(0.1, StudyData.value(result, "drift"), 1e-3);
    assertEquals(StudyVerdict.FAILS, result.conclusion().verdict());
    assertTrue(result.figure("level3").isEmpty(), "one run");
  }

  /** Averages of days that are all alike: an estimate of what days add far below 0. */
  @Test
  void oneReadingVariesNoLessThanWithinADay() {
    List<StudyReading> readings = new ArrayList<>();
    for (int day = 0; day < 40; day++) {
      double off = 0.1 * (1 + day % 5);
      readings.add(new StudyReading("d" + day, "", "", 1, 0, 100 - off));
      readings.add(new StudyReading("d" + day, "", "", 2, 0, 100 + off));
    }
    StudyResult result = StabilityStudy.of(readings, null, StudySettings.usual());
    String one = "oneReading";
    assertEquals(StudyData.value(result, "level1"), StudyData.value(result, one), 1e-12);
    assertTrue(StudyData.lower(result, one) >= StudyData.lower(result, "level1"), one);
    assertTrue(StudyData.upper(result, one) >= StudyData.upper(result, "level1"), one);
  }
}
