package org.chordlog.simulator;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.function.Consumer;
import org.chordlog.simulator.LineScenario.Encoder;
import org.chordlog.simulator.LineScenario.Feed;
import org.chordlog.simulator.LineScenario.Jog;
import org.chordlog.simulator.LineScenario.Stop;

/**
 * A line on which one piece after the other runs through the gauge: how far the plunger is pushed
 * in, and what the encoder counts, at any second; asked in the order of time.
 */
final class VirtualLine {
  private static final double RETURN_MM = 100;
  private static final double TURN_SECONDS = 2;
  private static final double JOG_REST_SECONDS = 1;
  private static final double SWING_HZ = 0.8;

  private final LineScenario scenario;
  private final LineErrors errors;
  private final Random random;
  private final LineVibration vibration;
  private final Consumer<LineTruth> truth;
  private LineStrip strip;
  private LineMotion motion;
  private int nextPiece = 1;
  private double baseMm;
  private boolean dead;
  private boolean reversed;
  private double deadMm;
  private double swingMm;

  VirtualLine(LineScenario scenario, LineErrors errors, long seed, Consumer<LineTruth> truth) {
    this.scenario = scenario;
    this.errors = errors;
    this.truth = truth;
    random = new Random(seed);
    vibration =
        new LineVibration(
            scenario.line().vibration(),
            scenario.indicator().valuesPerSecond(),
            new Random(seed + 1));
    reversed = scenario.line().encoder().reversed();
    strip = nextStrip();
    motion = motion(0);
  }

  private LineStrip nextStrip() {
    LineStrip next = new LineStrip(scenario, nextPiece, random);
    nextPiece += next.pieces().size();
    return next;
  }

  private LineMotion motion(double startSeconds) {
    Feed feed = scenario.line().feed();
    LineMotion way = new LineMotion(startSeconds, -feed.gapMm() / 2);
    List<Double> shares = feed.passShares();
    for (int pass = 0; pass < shares.size(); pass++) {
      double share = shares.get(pass);
      interruptions(way, share);
      if (pass < shares.size() - 1) {
        way.go(strip.lengthMm() - RETURN_MM, feed.mmPerSecond(), share);
        way.rest(TURN_SECONDS, share);
        way.go(RETURN_MM, feed.mmPerSecond(), shares.get(pass + 1));
        way.rest(TURN_SECONDS, shares.get(pass + 1));
      }
    }
    way.go(strip.lengthMm() + feed.gapMm() / 2, speed(), shares.get(shares.size() - 1));
    strip
        .pieces()
        .forEach(
            piece ->
                truth.accept(
                    piece.at(way.firstAt(piece.from), way.firstAt(piece.from + piece.length))));
    return way;
  }

  private record Interruption(double atMm, double seconds, double backMm) {}

  private void interruptions(LineMotion way, double share) {
    Feed feed = scenario.line().feed();
    LineTruth.Builder first = strip.pieces().get(0);
    List<Interruption> all = new ArrayList<>();
    for (Stop stop : feed.stops()) {
      if (stop.piece() == 0 || stop.piece() == first.number) {
        all.add(new Interruption(stop.atMm(), stop.seconds(), 0));
      }
    }
    for (Jog jog : feed.jogs()) {
      if (jog.piece() == 0 || jog.piece() == first.number) {
        all.add(new Interruption(jog.atMm(), JOG_REST_SECONDS, jog.backMm()));
      }
    }
    all.sort(Comparator.comparingDouble(Interruption::atMm));
    for (Interruption event : all) {
      way.go(event.atMm(), speed(), share);
      way.rest(event.seconds(), share);
      if (event.backMm() > 0) {
        way.go(event.atMm() - event.backMm(), feed.mmPerSecond(), share);
        way.rest(JOG_REST_SECONDS, share);
      }
    }
  }

  private double speed() {
    Feed feed = scenario.line().feed();
    double off = Math.max(-0.5, feed.sdPercent() / 100 * random.nextGaussian());
    return feed.mmPerSecond() * (1 + off);
  }

  /** How far it is pushed in from free air, mm; steps the vibration on by one value. */
  double pushedInMm(double seconds) {
    while (seconds >= motion.endSeconds()) {
      baseMm += strip.lengthMm() + scenario.line().feed().gapMm();
      strip = nextStrip();
      motion = motion(motion.endSeconds());
    }
    LineMotion.Leg leg = motion.leg(seconds);
    double pushedIn = strip.pushedInMm(leg.placeMm(seconds), leg.share(), errors);
    double swing = swingMm * Math.sin(2 * Math.PI * SWING_HZ * seconds);
    return pushedIn + vibration.nextMm() + (pushedIn > 0 ? swing : 0);
  }

  /** What the encoder counts as a depth of that second arrives. */
  long counts(double seconds) {
    Encoder encoder = scenario.line().encoder();
    double late = encoder.delayMs() + encoder.jitterMs() * random.nextGaussian();
    double place = motion.placeMm(seconds + late / 1000);
    double run = (baseMm + place) * (1 + encoder.scaleErrorPercent() / 100);
    if (!dead && encoder.dieAtMm() > 0 && run >= encoder.dieAtMm()) {
      dead = true;
      deadMm = encoder.dieAtMm();
    }
    double counted = (dead ? deadMm : run) / encoder.mmPerCount();
    return Math.round(reversed ? -counted : counted);
  }

  /** The line stands still from now on for a while. */
  void stop(double now, double seconds) {
    motion.interrupt(now, 0, scenario.line().feed().mmPerSecond(), seconds);
  }

  /** The piece is run back from now on, and on again. */
  void jog(double now, double backMm) {
    motion.interrupt(now, backMm, scenario.line().feed().mmPerSecond(), JOG_REST_SECONDS);
  }

  /** The encoder no longer counts, or again. */
  void encoderDead(double now, boolean isDead) {
    deadMm = baseMm + motion.placeMm(now);
    dead = isDead;
  }

  void encoderReversed(boolean isReversed) {
    reversed = isReversed;
  }

  /** Both ends of the section swing. */
  void swing(double mm) {
    swingMm = mm;
  }
}
