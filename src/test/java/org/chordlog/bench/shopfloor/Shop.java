package org.chordlog.bench.shopfloor;

import org.chordlog.simulator.DemoBend;

/**
 * What may go wrong in a shop; standard deviations unless a name says otherwise, lengths in mm.
 * Invented around the demo's scenario.
 */
public record Shop(
    String name, Levels levels, Lots lots, Pieces pieces, Scale scale, Records records) {
  public static final int PIECES = 200;

  /** Set-up error; creep and its spread, of either sign or not; wander a piece. */
  public record Levels(
      double setUp, double creep, double creepSd, boolean eitherSign, double wander) {}

  /** When lots change. */
  public enum Change {
    NEVER,
    /** Once, between pieces 101 and 140. */
    ONCE,
    /** With probability 1/40 a piece. */
    OFTEN,
    /** Two lots that take turns each 40 pieces. */
    TAKING_TURNS,
    /** Three lots in turn, each 40 pieces. */
    THREE_IN_TURN
  }

  /** Yield strengths, MPa. */
  public record Lots(double yieldSd, Change change) {}

  /**
   * What differs from piece to piece: setting, yield strength (MPa), along the piece (relative).
   */
  public record Pieces(double setting, double yield, double along, double reading) {}

  /** Error of a move, lost motion at a reversal, mm of roller travel for one unit. */
  public record Scale(double move, double lostMotion, double unitMm) {}

  /**
   * Whether lots are told; shares of corrections recorded, of readings that are strays, and of
   * advice that nobody follows.
   */
  public record Records(boolean lots, double corrections, double strays, double ignored) {}

  public static Shop demo() {
    return new Shop(
        "demo",
        new Levels(0.2, -0.1, 0.03, false, 0),
        new Lots(8, Change.ONCE),
        new Pieces(0.025, 2.5, 0.0008, 0.6),
        new Scale(0.01, 0, 1),
        new Records(true, 1, 0, 0));
  }

  public static Shop steady() {
    return demo()
        .named("steady")
        .with(new Levels(0, 0, 0, false, 0))
        .with(new Lots(0, Change.NEVER));
  }

  public static Shop busy() {
    return demo()
        .named("busy")
        .with(new Levels(0.2, -0.1, 0.03, true, 0.003))
        .with(new Lots(8, Change.OFTEN));
  }

  public static Shop untold() {
    return demo().named("lots not told").with(new Records(false, 1, 0, 0));
  }

  public static Shop coarse() {
    return demo().named("coarse gauge").with(new Pieces(0.025, 2.5, 0.0008, 3));
  }

  public static Shop backlash() {
    return demo().named("lost motion 0.05 mm").with(new Scale(0.01, 0.05, 1));
  }

  public static Shop forgotten() {
    return demo().named("half of the corrections not recorded").with(new Records(true, 0.5, 0, 0));
  }

  public static Shop strays() {
    return demo().named("1 % of readings off by 20 mm").with(new Records(true, 1, 0.01, 0));
  }

  public static Shop ignoring() {
    return demo().named("half of the advice ignored").with(new Records(true, 1, 0, 0.5));
  }

  /** One unit is 0.37 mm the other way round. */
  public static Shop reversed() {
    return demo().named("unit and sign unknown").with(new Scale(0.01, 0, -0.37));
  }

  public static Shop returning() {
    return demo().named("two lots take turns").with(new Lots(8, Change.TAKING_TURNS));
  }

  public Shop named(String other) {
    return new Shop(other, levels, lots, pieces, scale, records);
  }

  public Shop with(Levels other) {
    return new Shop(name, other, lots, pieces, scale, records);
  }

  public Shop with(Lots other) {
    return new Shop(name, levels, other, pieces, scale, records);
  }

  public Shop with(Pieces other) {
    return new Shop(name, levels, lots, other, scale, records);
  }

  public Shop with(Scale other) {
    return new Shop(name, levels, lots, pieces, other, records);
  }

  public Shop with(Records other) {
    return new Shop(name, levels, lots, pieces, scale, other);
  }

  static final double SETTING = DemoBend.settingMm(DemoBend.TARGET_MM);

  /** Permil of curvature for one mm of roller travel. */
  public static final double GAIN =
      1000
          * (DemoBend.unloadedPerMm(SETTING + 1e-4, DemoBend.YIELD_MPA)
              - DemoBend.unloadedPerMm(SETTING - 1e-4, DemoBend.YIELD_MPA))
          / 2e-4
          * DemoBend.TARGET_MM;

  /** Permil of curvature for one MPa of yield strength. */
  public static final double PER_MPA =
      1000
          * (DemoBend.unloadedPerMm(SETTING, DemoBend.YIELD_MPA + 0.01)
              - DemoBend.unloadedPerMm(SETTING, DemoBend.YIELD_MPA - 0.01))
          / 0.02
          * DemoBend.TARGET_MM;

  /** Tolerance, permil. */
  public static final double TOLERANCE = 1000 * DemoBend.TOLERANCE_MM / DemoBend.TARGET_MM;

  /** Standard deviation of the pieces about their level in the demo's shop, permil. */
  public static final double SCATTER = Draws.scatterMm() * 1000 / DemoBend.TARGET_MM;

  /** Standard uncertainty of a reading, permil. */
  double readingPermil() {
    return 1000 * pieces.reading() / DemoBend.TARGET_MM;
  }
}
