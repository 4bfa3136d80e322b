package org.chordlog.simulator;

import java.util.List;
import org.chordlog.decode.BuiltInProfile;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Check;
import org.chordlog.measure.Face;
import org.chordlog.measure.FootKind;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Section.RoundTube;
import org.jspecify.annotations.Nullable;

/** What happens at a virtual machine, as written in a file; lengths in mm unless a name says. */
public record Scenario(
    String name,
    long seed,
    Order job,
    Foot bridge,
    Gauge indicator,
    Roller machine,
    List<Lot> lots,
    List<Correction> corrections,
    Hand operator,
    List<PlannedFault> faults) {

  public Scenario {
    faults = List.copyOf(faults);
    Check.text("name", name);
    lots = List.copyOf(lots);
    corrections = List.copyOf(corrections);
    if (lots.isEmpty() || lots.get(0).fromPiece() != 1) {
      throw new BadInput("lots", lots.size(), "leave the first piece without one", "fromPiece: 1");
    }
  }

  /** The same with another indicator. */
  public Scenario with(Gauge other) {
    return new Scenario(
        name, seed, job, bridge, other, machine, lots, corrections, operator, faults);
  }

  /** The same with an operator who makes none of the corrections written in it. */
  public Scenario withoutCorrections() {
    return new Scenario(
        name, seed, job, bridge, indicator, machine, lots, List.of(), operator, faults);
  }

  /** A fault, as a line of {@link FaultCommand}, at a second of the scenario. */
  public record PlannedFault(double atSeconds, String fault) {
    public PlannedFault {
      Check.notNegative("atSeconds", atSeconds);
      FaultCommand.parse(fault);
    }
  }

  /** What was ordered. */
  public record Order(
      String name,
      String part,
      String machine,
      RoundTube tube,
      Face measuredFace,
      Face specifiedFace,
      double targetMm,
      double toleranceMm,
      List<String> positions) {
    public Order {
      positions = List.copyOf(positions);
      Check.positive("targetMm", targetMm);
      Check.positive("toleranceMm", toleranceMm);
      Check.within("positions", positions.size(), 1, 25);
    }
  }

  /** The bridge that the indicator sits on. */
  public record Foot(
      String name,
      double spanMm,
      double spanUncertaintyMm,
      double footRadiusMm,
      double footRadiusUncertaintyMm,
      double skewLimitDegrees,
      @Nullable FootKind footKind) {
    public Foot {
      new Bridge(
          0,
          name,
          new Bridge.Span(spanMm, spanUncertaintyMm),
          new Bridge.Feet(footRadiusMm, footRadiusUncertaintyMm, footKind),
          skewLimitDegrees);
    }

    public Bridge bridge() {
      return new Bridge(
          0,
          name,
          new Bridge.Span(spanMm, spanUncertaintyMm),
          new Bridge.Feet(footRadiusMm, footRadiusUncertaintyMm, footKind),
          skewLimitDegrees);
    }
  }

  /**
   * The indicator: in free air its plunger stands out of the feet's plane by {@code protrusionMm};
   * on a flat it shows {@code showsOnFlatMm}. A {@code baudRate} of 0 fits any.
   */
  public record Gauge(
      double resolutionMm,
      double permissibleErrorMm,
      double travelMm,
      double protrusionMm,
      double showsOnFlatMm,
      double noiseSteps,
      double valuesPerSecond,
      int baudRate,
      String profile) {
    public Gauge {
      new Indicator(resolutionMm, permissibleErrorMm, travelMm);
      Check.within("protrusionMm", protrusionMm, 0, travelMm);
      Check.finite("showsOnFlatMm", showsOnFlatMm);
      Check.within("noiseSteps", noiseSteps, 0, 100);
      Check.within("valuesPerSecond", valuesPerSecond, 0.1, 1000);
      Check.within("baudRate", baudRate, 0, 4_000_000);
      BuiltInProfile.named(profile);
    }

    /** The same indicator, speaking another built-in profile. */
    public Gauge speaking(String otherProfile) {
      return new Gauge(
          resolutionMm,
          permissibleErrorMm,
          travelMm,
          protrusionMm,
          showsOnFlatMm,
          noiseSteps,
          valuesPerSecond,
          baudRate,
          otherProfile);
    }

    public Indicator indicator() {
      return new Indicator(resolutionMm, permissibleErrorMm, travelMm);
    }
  }

  /**
   * The rolling machine. From a piece on its setting creeps by {@code creepMm} in all, two thirds
   * of it within {@code creepPieces}; it repeats with a standard deviation.
   */
  public record Roller(
      double halfDistanceMm,
      double rollRadiusMm,
      double youngMpa,
      double settingMm,
      double settingSdMm,
      double creepMm,
      int creepFromPiece,
      double creepPieces,
      double alongPieceSdPercent) {
    public Roller {
      new Rollers(halfDistanceMm, rollRadiusMm);
      Check.positive("youngMpa", youngMpa);
      Check.positive("settingMm", settingMm);
      Check.notNegative("settingSdMm", settingSdMm);
      Check.finite("creepMm", creepMm);
      Check.positive("creepPieces", creepPieces);
      Check.notNegative("alongPieceSdPercent", alongPieceSdPercent);
    }
  }

  /** A material lot and its yield strength. */
  public record Lot(int fromPiece, String name, double yieldMpa, double yieldSdMpa) {
    public Lot {
      Check.within("fromPiece", fromPiece, 1, Integer.MAX_VALUE);
      Check.text("name", name);
      Check.positive("yieldMpa", yieldMpa);
      Check.notNegative("yieldSdMpa", yieldSdMpa);
    }
  }

  /** The operator moves the middle roller before a piece. */
  public record Correction(int beforePiece, double byMm) {
    public Correction {
      Check.within("beforePiece", beforePiece, 1, Integer.MAX_VALUE);
      Check.finite("byMm", byMm);
    }
  }

  /**
   * The operator's hand: how long each part of a measurement takes, and how far it is off. The
   * plunger rings by {@code ringMm} as it lands; the bridge creeps by {@code settleMm} as it comes
   * to rest.
   */
  public record Hand(
      double flatSeconds,
      double airSeconds,
      double approachSeconds,
      double rockSeconds,
      double swingSeconds,
      double rockMm,
      double ringMm,
      double restSeconds,
      double settleMm,
      double timeSdPercent,
      double seatSdMm,
      double skewSdDegrees) {
    public Hand {
      Check.notNegative("flatSeconds", flatSeconds);
      Check.positive("airSeconds", airSeconds);
      Check.positive("approachSeconds", approachSeconds);
      Check.notNegative("rockSeconds", rockSeconds);
      Check.positive("swingSeconds", swingSeconds);
      Check.notNegative("rockMm", rockMm);
      Check.notNegative("ringMm", ringMm);
      Check.notNegative("settleMm", settleMm);
      Check.notNegative("restSeconds", restSeconds);
      Check.within("timeSdPercent", timeSdPercent, 0, 50);
      Check.notNegative("seatSdMm", seatSdMm);
      Check.within("skewSdDegrees", skewSdDegrees, 0, 10);
    }
  }
}
