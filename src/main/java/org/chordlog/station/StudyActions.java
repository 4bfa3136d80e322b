package org.chordlog.station;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.Stale;
import org.chordlog.store.Store;

/** What is done with the studies of one station, as {@link StationActions} says. */
final class StudyActions {
  private final String name;
  private final Store store;
  private final StationClock clock;

  StudyActions(String name, StationContext around) {
    this.name = name;
    store = around.store();
    clock = around.clock();
  }

  GaugeStudy become(long studyId, GaugeStudy.State state, String by, String why) {
    GaugeStudy study = ofHere(studyId);
    if (state == GaugeStudy.State.DONE) {
      refuseIncomplete(study);
    }
    return store.studies().become(studyId, state, by, why);
  }

  private GaugeStudy ofHere(long studyId) {
    return store
        .studies()
        .find(studyId)
        .filter(each -> each.station().equals(name))
        .orElseThrow(() -> UnknownId.of("studyId", studyId));
  }

  private void refuseIncomplete(GaugeStudy study) {
    int taken = store.studies().counted(study.id()).size();
    int steps = study.design().steps();
    if (taken < steps) {
      throw new BadInput(
          "study", study.name(), "has " + taken + " of " + steps + " measurements", "all of them");
    }
  }

  void measureAgain(long studyId, long measurementId, String reason, String by) {
    GaugeStudy study = ofHere(studyId);
    if (study.state().ended()) {
      throw new Stale("Study " + study.name() + " has ended; its measurements stay.");
    }
    if (store.studies().counted(studyId).stream().noneMatch(m -> m.id() == measurementId)) {
      throw UnknownId.of("measurementId", measurementId);
    }
    store.studies().drop(measurementId, reason, clock.wallMicros(), by);
  }
}
