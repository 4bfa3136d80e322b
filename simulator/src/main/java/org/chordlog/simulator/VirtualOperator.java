package org.chordlog.simulator;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.chordlog.radius.Chord;

/** Puts the bridge on pieces, as people do: never twice the same way. */
final class VirtualOperator {
  private final Scenario scenario;
  private final Scenario.Hand hand;
  private final Random random;

  /** Of its own, so that a study finds the same whenever it is begun. */
  private final Random study;

  /** How often each place of the study was measured. */
  private final Map<String, Integer> measured = new HashMap<>();

  VirtualOperator(Scenario scenario, long seed) {
    this.scenario = scenario;
    hand = scenario.operator();
    random = new Random(seed);
    study = new Random(~seed);
  }

  /** One time that the bridge stands on something, until it is in free air again. */
  record Handling(List<Move> moves, Contact contact) {}

  /** How far the plunger is pushed in while the bridge is on the flat. */
  double flatMm() {
    return scenario.indicator().protrusionMm();
  }

  /** Begins with the bridge on the flat already. */
  Handling onFlat() {
    double seat = scenario.indicator().protrusionMm();
    Move rest = Move.hold(seat, hand.flatSeconds());
    Move leave = Move.glide(seat, 0, about(hand.approachSeconds()));
    double left = rest.seconds() + leave.seconds();
    Contact contact =
        new Contact(0, "flat", "", Double.POSITIVE_INFINITY, 0, 0, 0, 0, rest.seconds(), left);
    return new Handling(List.of(rest, leave), contact);
  }

  Handling measure(Workpiece piece, double startSeconds) {
    double depth = depthMm(piece, 0);
    double seated =
        depthMm(piece, hand.skewSdDegrees() * random.nextGaussian())
            + hand.seatSdMm() * random.nextGaussian();
    return handle(piece, depth, seated, hand.restSeconds(), startSeconds);
  }

  /** As a study asks: the person's own bias and scatter in place of this hand's skew and seat. */
  Handling measure(StudyTask task, StudyCrew crew, double startSeconds) {
    int before = measured.merge(task.part() + task.spot(), 1, Integer::sum) - 1;
    double nominal = scenario.job().targetMm();
    Double master = task.masterMm();
    double radius =
        master == null ? crew.radiusMm(nominal, task.part(), task.spot()) : (double) master;
    Workpiece piece = new Workpiece(0, task.person() + ": " + task.part(), task.place(), radius);
    double depth =
        master == null
            ? depthMm(piece, 0) - before * crew.parts().springMm()
            : Chord.depthMm(
                1 / master, scenario.bridge().spanMm(), scenario.bridge().footRadiusMm());
    double seated = depth + crew.biasMm(task.person()) + scatterMm(task, crew);
    return handle(piece, depth, seated, hand.restSeconds(), startSeconds);
  }

  private double scatterMm(StudyTask task, StudyCrew crew) {
    double eye = task.byEye() ? crew.scatter().byEyeMm() * study.nextGaussian() : 0;
    return crew.scatter().repeatMm() * study.nextGaussian() + eye;
  }

  private double depthMm(Workpiece piece, double skewDegrees) {
    var job = scenario.job();
    var bridge = scenario.bridge();
    return new SkewedBridge(bridge.spanMm() / 2, bridge.footRadiusMm(), bridge.footKind())
        .depthMm(
            piece.centrelineRadiusMm(),
            job.tube().outsideDiameterMm() / 2,
            job.measuredFace(),
            skewDegrees);
  }

  private Handling handle(
      Workpiece piece, double depth, double seated, double restSeconds, double start) {
    double seat = scenario.indicator().protrusionMm() + seated;
    Move air = Move.hold(0, about(hand.airSeconds()));
    Move approach = Move.glide(0, seat, about(hand.approachSeconds()));
    Move rock =
        Move.rock(
            seat, hand.rockMm(), hand.swingSeconds(), hand.ringMm(), about(hand.rockSeconds()));
    Move rest = Move.rest(seat, hand.settleMm(), about(restSeconds));
    Move leave = Move.glide(seat, 0, about(hand.approachSeconds()));
    double touched = start + air.seconds();
    double restFrom = touched + approach.seconds() + rock.seconds();
    double restTo = restFrom + rest.seconds();
    Contact contact =
        new Contact(
            piece.piece(),
            piece.position(),
            piece.lot(),
            piece.centrelineRadiusMm(),
            depth,
            seated,
            touched,
            restFrom,
            restTo,
            restTo + leave.seconds());
    return new Handling(List.of(air, approach, rock, rest, leave), contact);
  }

  private double about(double seconds) {
    double sd = hand.timeSdPercent() / 100;
    return seconds * Math.exp(sd * random.nextGaussian());
  }
}
