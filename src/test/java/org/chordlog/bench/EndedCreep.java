package org.chordlog.bench;

import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.math3.random.Well19937c;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Recorded;
import org.chordlog.stats.drift.MachineStatistics;
import org.chordlog.stats.drift.MachineVerdict.State;

/**
 * What is said of a machine that crept for a while, was corrected and goes on steadily: the course
 * of the demo (creep over pieces 41 to 70, corrected at 86, a recorded lot at 121, corrected for it
 * at 146), with other random pieces. Argument: how many machines (200: seconds).
 */
public final class EndedCreep {
  private static final double SIGMA = 1.4e-3;
  private static final double CREPT = 5.4e-3;
  private static final double CORRECTED = 4.9e-3;
  private static final double LOT = 6e-3;
  private static final int PIECES = 300;
  private static final int[] LOOKS = {
    50, 60, 70, 82, 90, 100, 110, 120, 125, 145, 150, 175, 200, 250, 300
  };

  private final MachineStatistics machine = new MachineStatistics();
  private final Well19937c random;
  private long events;

  private EndedCreep(long seed) {
    random = new Well19937c(seed);
  }

  public static void main(String[] arguments) {
    int machines = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 200;
    Map<Integer, Map<State, Integer>> said = new TreeMap<>();
    for (int seed = 1; seed <= machines; seed++) {
      new EndedCreep(seed).look(said);
    }
    said.forEach((piece, states) -> System.out.printf(Locale.ROOT, "%d %s%n", piece, states));
  }

  private void look(Map<Integer, Map<State, Integer>> said) {
    int next = 0;
    for (int piece = 1; piece <= PIECES; piece++) {
      bend(piece);
      if (piece == LOOKS[next]) {
        State state = machine.verdict(null).state();
        said.computeIfAbsent(piece, any -> new EnumMap<>(State.class))
            .merge(state, 1, Integer::sum);
        next++;
      }
    }
  }

  private void bend(int piece) {
    switch (piece) {
      case 86, 146 -> happened(JobEvent.Kind.CORRECTION, piece);
      case 121 -> happened(JobEvent.Kind.MATERIAL_LOT, piece);
      default -> {}
    }
    machine.add(1, piece, piece, level(piece) + SIGMA * random.nextGaussian());
    machine.endPiece();
  }

  private static double level(int piece) {
    double crept = -CREPT * Math.max(0, Math.min(30, piece - 40)) / 30;
    double corrected = piece < 86 ? 0 : CORRECTED;
    double lot = piece >= 121 && piece < 146 ? -LOT : 0;
    return crept + corrected + lot;
  }

  private void happened(JobEvent.Kind kind, int piece) {
    String lot = kind == JobEvent.Kind.MATERIAL_LOT ? "B" : "";
    JobEvent.Content content = new JobEvent.Content(null, null, lot, "");
    Recorded recorded = new Recorded(piece, "me");
    machine.happened(new JobEvent(++events, 1, "m", kind, piece - 1, content, recorded));
  }
}
