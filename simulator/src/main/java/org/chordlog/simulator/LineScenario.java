package org.chordlog.simulator;

import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Face;

/**
 * A line on which pieces run through a gauge behind the bending rollers, as written in a file;
 * lengths in mm unless a name says.
 */
public record LineScenario(
    String name,
    long seed,
    Scenario.Order job,
    Scenario.Foot bridge,
    Scenario.Gauge indicator,
    Line line,
    List<PlannedFault> faults) {
  public LineScenario {
    Check.text("name", name);
    faults = List.copyOf(faults);
    if (bridge.spanMm() / 2 != Math.rint(bridge.spanMm() / 2)) {
      throw new BadInput(
          "bridge.spanMm", bridge.spanMm(), "is not a whole even number", "200, 500");
    }
  }

  /** A fault, as a line of {@link LineFault}, at a second of the scenario. */
  public record PlannedFault(double atSeconds, String fault) {
    public PlannedFault {
      Check.notNegative("atSeconds", atSeconds);
      LineFault.parse(fault);
    }
  }

  /** What runs, how, and what measures its length. */
  public record Line(
      Feed feed,
      Stock piece,
      Texture texture,
      Vibration vibration,
      List<RunOut> rollers,
      Encoder encoder) {
    public Line {
      rollers = List.copyOf(rollers);
    }
  }

  /**
   * The feed varies from stop to stop; pieces follow in groups nose to tail, with a gap between the
   * groups. Each pass bends to its share of the final curvature, and the last to all of it.
   */
  public record Feed(
      double mmPerSecond,
      double sdPercent,
      double gapMm,
      int noseToTail,
      List<Stop> stops,
      List<Jog> jogs,
      List<Double> passShares) {
    public Feed {
      Check.within("mmPerSecond", mmPerSecond, 1, 1000);
      Check.within("sdPercent", sdPercent, 0, 20);
      Check.within("gapMm", gapMm, 50, 100_000);
      Check.within("noseToTail", noseToTail, 1, 20);
      stops = List.copyOf(stops);
      jogs = List.copyOf(jogs);
      passShares = List.copyOf(passShares);
      Check.within("passShares", passShares.size(), 1, 10);
      passShares.forEach(share -> Check.within("passShares", share, 0, 2));
    }
  }

  /** The line stops at a place of a piece; piece 0 means every piece. */
  public record Stop(int piece, double atMm, double seconds) {
    public Stop {
      Check.within("piece", piece, 0, Integer.MAX_VALUE);
      Check.notNegative("atMm", atMm);
      Check.within("seconds", seconds, 0, 3600);
    }
  }

  /** The piece is run back from a place, and on again; piece 0 means every piece. */
  public record Jog(int piece, double atMm, double backMm) {
    public Jog {
      Check.within("piece", piece, 0, Integer.MAX_VALUE);
      Check.notNegative("atMm", atMm);
      Check.within("backMm", backMm, 0, atMm);
    }
  }

  /** Drawn evenly between the two. */
  public record Range(double from, double to) {
    public Range {
      Check.notNegative("from", from);
      Check.within("to", to, from, 1e5);
    }
  }

  /**
   * A piece: its length, the straight ends up to the middle of the rise, the rise, and how much its
   * level varies from piece to piece.
   */
  public record Stock(double lengthMm, Range leadMm, Range riseMm, double levelSdPercent) {
    public Stock {
      Check.within("lengthMm", lengthMm, 100, 50_000);
      Check.within("levelSdPercent", levelSdPercent, 0, 20);
      if (2 * leadMm.to() + riseMm.to() > lengthMm) {
        throw new BadInput("leadMm.to", leadMm.to(), "leaves no bend", "below " + lengthMm / 2);
      }
    }
  }

  /**
   * What makes the curvature wander, with its correlation length, and the face rough: standard
   * deviations, percent of curvature and micrometres.
   */
  public record Texture(
      double wanderPercent,
      double wanderMm,
      double roughnessUm,
      double roughnessMm,
      List<Seam> seams) {
    public Texture {
      Check.within("wanderPercent", wanderPercent, 0, 20);
      Check.within("wanderMm", wanderMm, 5, 2000);
      Check.within("roughnessUm", roughnessUm, 0, 1000);
      Check.within("roughnessMm", roughnessMm, 1, 100);
      seams = List.copyOf(seams);
    }
  }

  /** A seam across the face of each piece. */
  public record Seam(double atMm, double heightMm, double widthMm) {
    public Seam {
      Check.notNegative("atMm", atMm);
      Check.within("heightMm", heightMm, -5, 5);
      Check.within("widthMm", widthMm, 1, 100);
    }
  }

  /** A resonance of the line, seen in the depth: frequency, damping, standard deviation. */
  public record Vibration(double hz, double damping, double um) {
    public Vibration {
      Check.within("hz", hz, 0.1, 200);
      Check.within("damping", damping, 0.001, 0.9);
      Check.within("um", um, 0, 1000);
    }
  }

  /**
   * A roller that runs out and so makes a ripple, as percent of curvature, once around. With a
   * phase of -1 each piece has one by chance.
   */
  public record RunOut(
      String name,
      double diameterMm,
      Face side,
      double amplitudePercent,
      double phaseDegrees,
      double slipPercent) {
    public RunOut {
      Check.text("name", name);
      Check.within("diameterMm", diameterMm, 10, 2000);
      Check.within("amplitudePercent", amplitudePercent, 0, 50);
      Check.within("phaseDegrees", phaseDegrees, -1, 360);
      Check.within("slipPercent", slipPercent, -10, 10);
    }
  }

  /**
   * Measures the length that has run through. Depths come later than their lengths by the delay,
   * give or take the jitter. It dies at a length; 0: never.
   */
  public record Encoder(
      double mmPerCount,
      double scaleErrorPercent,
      double delayMs,
      double jitterMs,
      double dieAtMm,
      boolean reversed,
      boolean ownLink) {
    public Encoder {
      Check.within("mmPerCount", mmPerCount, 0.001, 100);
      Check.within("scaleErrorPercent", scaleErrorPercent, -20, 20);
      Check.within("delayMs", delayMs, 0, 1000);
      Check.within("jitterMs", jitterMs, 0, 500);
      Check.notNegative("dieAtMm", dieAtMm);
    }
  }
}
