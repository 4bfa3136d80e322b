package org.chordlog.capture;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Sample;

/** Shifts of 25 pieces in which a key is pressed after the twelfth: what the watch tells. */
final class WatchTable {
  private static final int PIECES = 25;
  private static final int PRESSED_AFTER = 12;

  /** When the key is pressed. */
  enum When {
    IN_AIR,
    ON_PIECE
  }

  /** What a key does to what is shown. */
  record Fault(String name, When when, DoubleUnaryOperator shown, StreamDoubt.Kind kind) {}

  /** How often the fault was told, rightly named, and after how many pieces at most. */
  record Row(
      Fault fault,
      double rateHz,
      int plays,
      int told,
      int named,
      int latest,
      Map<StreamDoubt.Kind, Integer> otherwise) {
    @Override
    public String toString() {
      return String.format(
          Locale.ROOT,
          "| %s | %s | %.0f | %d of %d | %d | %d | %s |",
          fault.name,
          fault.when.name().toLowerCase(Locale.ROOT).replace('_', ' '),
          rateHz,
          told,
          plays,
          named,
          latest,
          otherwise);
    }
  }

  private WatchTable() {}

  static CaptureSettings settings() {
    return CaptureOptions.of(CaptureMode.SETTLED).settings(new Indicator(0.001, 0.003, 12.7));
  }

  static List<Fault> faults() {
    List<Fault> faults = new ArrayList<>();
    for (When when : When.values()) {
      faults.add(fault("zeroed by -0.120 mm", when, mm -> mm - 0.12, StreamDoubt.Kind.ZERO_MOVED));
      faults.add(fault("zeroed by +0.120 mm", when, mm -> mm + 0.12, StreamDoubt.Kind.ZERO_MOVED));
      faults.add(fault("zeroed by +0.010 mm", when, mm -> mm + 0.01, StreamDoubt.Kind.ZERO_MOVED));
      faults.add(fault("zeroed in full", when, mm -> mm - 5, StreamDoubt.Kind.ZERO_MOVED));
      faults.add(fault("preset +50 mm", when, mm -> mm + 50, StreamDoubt.Kind.ZERO_MOVED));
      faults.add(fault("preset +5 mm", when, mm -> mm + 5, StreamDoubt.Kind.ZERO_MOVED));
      faults.add(fault("direction", when, mm -> -mm, StreamDoubt.Kind.DIRECTION));
      faults.add(fault("unit, not named", when, mm -> mm / 25.4, StreamDoubt.Kind.UNIT));
      faults.add(fault("a decade", when, mm -> mm * 10, StreamDoubt.Kind.UNIT));
    }
    return faults;
  }

  private static Fault fault(
      String name, When when, DoubleUnaryOperator shown, StreamDoubt.Kind kind) {
    return new Fault(name, when, shown, kind);
  }

  static Row row(Fault fault, double rateHz, int plays, long seed) {
    int told = 0;
    int named = 0;
    int latest = 0;
    Map<StreamDoubt.Kind, Integer> otherwise = new TreeMap<>();
    for (int i = 0; i < plays; i++) {
      List<StreamDoubt> doubts = new ArrayList<>();
      List<Integer> pieces = new ArrayList<>();
      play(fault, rateHz, seed + i, doubts, pieces);
      told += doubts.isEmpty() ? 0 : 1;
      if (!doubts.isEmpty() && doubts.get(0).kind() == fault.kind) {
        named++;
      } else if (!doubts.isEmpty()) {
        otherwise.merge(doubts.get(0).kind(), 1, Integer::sum);
      }
      latest = pieces.isEmpty() ? latest : Math.max(latest, pieces.get(0) - PRESSED_AFTER);
    }
    return new Row(fault, rateHz, plays, told, named, latest, otherwise);
  }

  private static void play(
      Fault fault, double rateHz, long seed, List<StreamDoubt> doubts, List<Integer> pieces) {
    Play play = new Play(rateHz, 0.001, seed);
    StreamWatch watch = new StreamWatch(settings());
    play.hold(1.5);
    int fed = 0;
    for (int piece = 1; piece <= PIECES; piece++) {
      int now = piece;
      double mm = 5 + 0.05 * (2 * play.random().nextDouble() - 1);
      boolean pressed = piece == PRESSED_AFTER + 1;
      if (pressed && fault.when == When.IN_AIR) {
        play.shown = fault.shown;
        play.hold(0.6);
      }
      if (pressed && fault.when == When.ON_PIECE) {
        play.move(mm, 0.4).land(t -> mm, 1);
        play.shown = fault.shown;
        play.hold(0.6).leave(0.3);
      } else {
        play.touch(mm, 1.2);
      }
      List<Sample> samples = play.samples();
      for (; fed < samples.size(); fed++) {
        watch.offer(
            samples.get(fed),
            doubt -> {
              doubts.add(doubt);
              pieces.add(now);
            });
      }
    }
  }

  /** Shifts in which nobody presses a key; how many doubts were told, by kind. */
  static Map<StreamDoubt.Kind, Integer> quiet(double pieceMm, int plays, long seed) {
    Map<StreamDoubt.Kind, Integer> told = new TreeMap<>();
    double[] rates = {4, 10, 20, 50, 100};
    double[] steps = {0.001, 0.01, 0.0005};
    for (int i = 0; i < plays; i++) {
      double step = steps[i % steps.length];
      Play play = new Play(rates[i % rates.length], step, seed + i);
      play.spikes(i % 7 == 0 ? 0.005 : 0).vibration(i % 5 == 0 ? 0.002 : 0).hold(1.5);
      double drift = i % 3 == 0 ? 0.02 / 60 : 0;
      play.shown = mm -> mm + drift * play.seconds();
      for (int piece = 0; piece < PIECES; piece++) {
        quietPiece(play, pieceMm, i);
      }
      StreamWatch watch =
          new StreamWatch(
              CaptureOptions.of(CaptureMode.SETTLED).settings(new Indicator(step, 0.003, 12.7)));
      play.samples().forEach(s -> watch.offer(s, d -> told.merge(d.kind(), 1, Integer::sum)));
    }
    return told;
  }

  /** Touched, pressed, lifted half way, laid on the bench, lifted by a lever, bumped. */
  private static void quietPiece(Play play, double pieceMm, int i) {
    double mm = pieceMm + 0.05 * (2 * play.random().nextDouble() - 1);
    double lift = play.random().nextDouble() < 0.2 ? 0.05 : 0.3;
    switch (i % 6) {
      case 1 -> play.move(mm, 0.4).land(t -> t < 0.8 ? mm : mm - 0.08, 2).leave(lift);
      case 2 -> {
        double half = 1 + 2 * play.random().nextDouble();
        play.move(mm, 0.4).land(t -> mm, 1).move(half, 0.3).hold(0.5).move(mm, 0.3);
        play.land(t -> mm, 1).leave(lift);
      }
      case 3 -> {
        play.touch(mm, 1.2);
        play.move(0.03 + 0.01 * play.random().nextDouble(), 0.4).hold(1).leave(lift);
      }
      case 4 -> {
        double lever = Play.AIR_MM + 2.5 * play.random().nextDouble();
        play.move(mm, 0.4).land(t -> mm, 1).move(lever, 0.3).hold(0.6);
      }
      case 5 -> play.move(mm, 0.4).land(t -> t > 0.7 && t < 0.9 ? mm + 1 : mm, 2).leave(lift);
      default -> play.touch(mm, 1.2);
    }
  }

  /** Prints the table; the argument is the count of quiet plays. */
  public static void main(String[] arguments) {
    int quiet = arguments.length == 0 ? 500 : Integer.parseInt(arguments[0]);
    System.out.println(
        "| key | pressed | values/s | told | rightly named | pieces until told | else |");
    System.out.println("|---|---|---|---|---|---|---|");
    for (double rate : new double[] {4, 10, 20, 100}) {
      faults().forEach(fault -> System.out.println(row(fault, rate, 25, 20261125)));
    }
    System.out.println(quiet + " quiet plays: " + quiet(5, quiet, 20261125));
  }
}
