package org.chordlog.correction;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.correction.Advice.Since;
import org.chordlog.correction.RollerMoves.Gap;

/** What a state gives reason to tell or to ask. */
final class Notices {
  private static final double PROBABLY = 0.5;
  private final List<Notice> notices = new ArrayList<>();

  private Notices() {}

  static List<Notice> of(MachineState state) {
    Notices found = new Notices();
    JobState job = state.job();
    if (job != null) {
      found.moves(state);
      found.lostMotion(state);
      found.positions(state, job.aim());
      found.scale(state);
      found.reach(state);
    }
    return List.copyOf(found.notices);
  }

  private void moves(MachineState state) {
    Gap gap = state.moves.gap();
    if (gap != null) {
      notices.add(Notice.unrecorded(gap.expected(), gap.found(), state.scale()));
    }
    if (state.since() == Since.PIECE && state.filter().newest().silent() > PROBABLY) {
      notices.add(Notice.didYouCorrect(state.following.unrecorded(), state.scale()));
    }
  }

  private void reach(MachineState state) {
    if (state.following.advised() == 0) {
      return;
    }
    double all = state.adviser().choice().exact();
    if (state.reach().exceededBy(all)) {
      notices.add(Notice.partOfTheWay(all, state.moves.tried(), state.scale()));
    }
  }

  private void lostMotion(MachineState state) {
    LostMotion.Found lost = state.moves.lostMotion();
    if (lost != null && state.scale().lostMotion() == 0) {
      notices.add(Notice.lostMotion(lost, state.scale()));
    }
  }

  private void positions(MachineState state, Aim aim) {
    Positions.Apart apart = state.positions.apart(aim.halfTolerance());
    if (apart != null) {
      notices.add(
          Notice.positionsDiffer(
              apart.tightest(),
              apart.openest(),
              aim.mm(apart.difference()),
              aim.mm(apart.uncertainty())));
    }
  }

  private void scale(MachineState state) {
    Belief belief = state.belief();
    if (!belief.blind() && state.scale().contradicts(belief.gain())) {
      notices.add(Notice.reversed(state.scale()));
    }
  }
}
