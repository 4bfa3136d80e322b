package org.chordlog.correction;

import org.jspecify.annotations.Nullable;

/** From a reading near the start of a piece to the rest of that piece. */
record StartAdvice(MachineState state, JobState job) {
  @Nullable RestOfPiece of(PieceReading start) {
    Positions positions = state.positions;
    int places = positions.names().size();
    boolean known = positions.names().contains(start.position());
    if (!known || places < 2 || positions.pieces() < Positions.ENOUGH || start.flat()) {
      return null;
    }
    double unit = job.aim().halfTolerance();
    double offset = positions.offset(start.position(), unit);
    double reading = job.aim().permilOfDifference(start.standardUncertaintyPerMm());
    double within = positions.within(unit);
    StartOfBend bend = bend(within, places, reading);
    double level = state.filter().belief().level();
    double surprise = job.aim().permil(start.perMm()) - level - offset;
    return rest(bend, level + bend.share() * surprise - offset / (places - 1));
  }

  /** Spread of whole pieces and within pieces, as far as this job has shown them. */
  private StartOfBend bend(double within, int places, double reading) {
    double common = Math.max(0, state.filter().scatterVariance() - within / places);
    double along = Math.max(0, within - reading * reading);
    return new StartOfBend(
        Math.sqrt(common), Math.sqrt(along), reading, state.filter().belief().levelUncertainty());
  }

  private @Nullable RestOfPiece rest(StartOfBend bend, double expected) {
    Belief belief = state.filter().belief();
    if (belief.blind()) {
      return null;
    }
    Aim aim = job.aim();
    double off = expected - state.aimedAt();
    Belief ofPiece = belief.withLevel(off, bend.restVariance(0));
    Choice choice = Choice.of(ofPiece, state.moveError(), state.reach());
    Belief after = ofPiece.moved(choice.amount(), state.moveError().variance(belief));
    boolean worth = choice.saving() > state.tuning().stakes().correction();
    return new RestOfPiece(
        aim.radiusMm(expected),
        aim.mm(Math.sqrt(bend.restVariance(0))),
        worth ? (Double) choice.amount() : null,
        out(ofPiece),
        out(worth ? after : ofPiece),
        state.scale());
  }

  private double out(Belief ofPiece) {
    double level = ofPiece.level() + state.aimedAt();
    return Outside.share(job.aim(), level, ofPiece.levelUncertainty());
  }
}
