package org.chordlog.bench;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.chordlog.bench.AlertShop.Way;
import org.chordlog.measure.alert.AlertKind;

/**
 * How often maintenance is told of a machine that is steady, and how soon of one that creeps:
 * simulated, seeded, with the statistics, judgements and rule of the service. Arguments: machine
 * years of each steady shop, machines that creep.
 */
public final class AlertFigures {
  private static final int PIECES_A_WEEK = 400;
  private static final int WEEKS = 52;
  private static final int LONGEST = 2_000;
  private static final int TABLE = 400;
  private static final int TWO_JUDGEMENTS = 30;

  private AlertFigures() {}

  public static void main(String[] arguments) {
    int years = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 200;
    int machines = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 300;
    say("Steady, %d pieces a week, %d machine-years: alerts a machine-year", PIECES_A_WEEK, years);
    Map<String, Way> steady = steady();
    long seed = arguments.length > 2 ? Long.parseLong(arguments[2]) : 1;
    String only = arguments.length > 3 ? arguments[3] : "";
    steady.forEach(
        (name, way) -> {
          if (name.contains(only)) {
            say("  %s: %s", name, falseAlarms(way, years, seed));
          }
        });
    if (machines > 0) {
      creeping(machines);
    }
  }

  private static void creeping(int machines) {
    say("Creep from piece 21 on; pieces since then until the verdict first says that it moved");
    say("(looked at each 5 pieces), and until the alert");
    for (double creep : new double[] {1, 2, 4}) {
      for (double off : new double[] {0, 2}) {
        Way way = Way.jobs(0).corrected(off).creeping(creep, 20);
        String how = off == 0 ? "never" : "when five are off by 2";
        say("  %.0f, corrected %s: %s", creep, how, told(way, machines));
      }
    }
  }

  private static Map<String, Way> steady() {
    Map<String, Way> all = new LinkedHashMap<>();
    all.put("one long job, never corrected", Way.jobs(0));
    all.put("jobs of 100", Way.jobs(100));
    all.put("jobs of 40", Way.jobs(40));
    all.put("jobs of 100, corrected when five are off by 0.8", Way.jobs(100).corrected(0.8));
    all.put("jobs of 100, Cp 2", Way.jobs(100).withCp(2));
    all.put("jobs of 100, Cp 1", Way.jobs(100).withCp(1));
    return all;
  }

  /** Alerts a machine-year of a way, with its standard error. */
  record Alarms(int years, Map<AlertKind, Integer> kinds, List<Double> ofYear, double moved) {
    double mean() {
      return ofYear.stream().mapToDouble(each -> each).average().orElse(0);
    }

    double error() {
      double mean = mean();
      double squares = ofYear.stream().mapToDouble(each -> (each - mean) * (each - mean)).sum();
      return Math.sqrt(squares / (years - 1.0) / years);
    }

    @Override
    public String toString() {
      return String.format(
          Locale.ROOT,
          "%.2f ± %.2f (%.0f in %d), %s; verdicts that say moved: %.2f %%",
          mean(),
          error(),
          ofYear.stream().mapToDouble(each -> each).sum(),
          years,
          kinds,
          100 * moved);
    }
  }

  static Alarms falseAlarms(Way way, int years, long seed) {
    Map<AlertKind, Integer> kinds = new EnumMap<>(AlertKind.class);
    double[] ofYear = new double[years];
    long judgements = 0;
    long moved = 0;
    for (int year = 0; year < years; year++) {
      AlertShop shop = new AlertShop(way, seed + year);
      for (int piece = 0; piece < PIECES_A_WEEK * WEEKS; piece++) {
        for (AlertKind kind : shop.bend()) {
          ofYear[year]++;
          kinds.merge(kind, 1, Integer::sum);
        }
      }
      judgements += shop.judgements();
      moved += shop.moved();
    }
    return new Alarms(
        years, kinds, Arrays.stream(ofYear).boxed().toList(), (double) moved / judgements);
  }

  /**
   * When a creep was told, over machines, in pieces since it began. {@code asPromised}: within the
   * 400 pieces of the table of machines in src/docs/error-rates.md and two judgements; {@code
   * soon}: within the pieces in which the verdict itself finds 95 % and two judgements.
   */
  record Told(Rate asPromised, Rate soon, double verdict95, double alert50, double alert95) {
    @Override
    public String toString() {
      return String.format(
          Locale.ROOT,
          "verdict 95 %% by %.0f, alert 50 %% by %.0f, 95 %% by %.0f; as promised %s, soon %s",
          verdict95,
          alert50,
          alert95,
          asPromised,
          soon);
    }
  }

  static Told told(Way way, int machines) {
    double[] verdict = new double[machines];
    double[] alert = new double[machines];
    for (int i = 0; i < machines; i++) {
      AlertShop shop = new AlertShop(way, 77 + i);
      verdict[i] = LONGEST;
      alert[i] = LONGEST;
      while (alert[i] == LONGEST && shop.piece() < LONGEST) {
        boolean told = !shop.bend().isEmpty();
        double since = (double) shop.piece() - way.creepFrom();
        if (since > 0 && verdict[i] == LONGEST && shop.piece() % 5 == 0 && shop.verdictMoved()) {
          verdict[i] = since;
        }
        alert[i] = told && since > 0 ? since : alert[i];
      }
    }
    double by = at(verdict, 0.95) + TWO_JUDGEMENTS;
    Rate asPromised = new Rate();
    Rate soon = new Rate();
    for (double each : alert) {
      asPromised.add(each <= TABLE - way.creepFrom() + TWO_JUDGEMENTS);
      soon.add(each <= by);
    }
    return new Told(asPromised, soon, at(verdict, 0.95), at(alert, 0.5), at(alert, 0.95));
  }

  private static double at(double[] values, double part) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[Math.min(sorted.length - 1, (int) Math.ceil(part * sorted.length) - 1)];
  }

  private static void say(String format, Object... values) {
    System.out.printf(Locale.ROOT, format + "%n", values);
  }
}
