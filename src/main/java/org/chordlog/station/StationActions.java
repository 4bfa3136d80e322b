package org.chordlog.station;

import java.util.Map;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Check;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.Stale;
import org.chordlog.measure.Zero;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;

/**
 * What an operator does at a station. Each call waits for the station's thread (two seconds at
 * most), writes to the store on the caller's own thread, and throws {@link BadInput} when refused.
 */
public final class StationActions {
  private final String name;
  private final Station station;
  private final StationRequest asking;
  private final StationContext around;
  private final Exclusions exclusions;
  private final Events events;
  private final ActiveJob job;
  private final PlaceActions places;
  private final ContactActions contacts;
  private final GaugeActions gauge;
  private final StudyActions studies;
  private final MoveActions moves;

  StationActions(Station station, Mailbox mailbox, StationContext around) {
    this.name = station.settings().name();
    this.station = station;
    this.asking = new StationRequest(name, mailbox);
    this.around = around;
    this.exclusions = new Exclusions(name, around);
    this.events = new Events(name, around);
    this.job = new ActiveJob(around.store(), name);
    this.places = new PlaceActions(station, asking, job, exclusions);
    this.contacts = new ContactActions(station, asking, job, exclusions);
    this.gauge = new GaugeActions(station, around, job, events, contacts);
    this.studies = new StudyActions(name, around);
    this.moves = new MoveActions(station, asking, around);
  }

  private Store store() {
    return around.store();
  }

  /**
   * Takes the rest that lasts now, or the next one; waits for it as long as the station's capture
   * time-out says.
   */
  public TriggerAnswer trigger() {
    return contacts.trigger();
  }

  /**
   * Says yes to the question that the status asks: a depth far from the target counts as a piece,
   * or a later rest replaces what was recorded in the same contact.
   */
  public TriggerAnswer confirm(String by) {
    return contacts.confirm(by);
  }

  /**
   * Says to the question that the status asks that it is another piece. A later rest of the contact
   * counts at the next place, and the first stays; a depth far from the target counts as a piece of
   * the job {@code jobId}, which the station works on from then on.
   */
  public TriggerAnswer another(@Nullable Long jobId) {
    return contacts.another(jobId);
  }

  /** Says no to the question that the status asks, if one is open: nothing is recorded. */
  public void decline() {
    contacts.decline();
  }

  /**
   * Finds how much later depths come than the counts of the length's own link, from the next piece,
   * which is run forth and back; the status tells it.
   */
  public void findDelay() {
    var unused = asking.ask(station::findDelay);
  }

  /** Whether the plunger hangs in free air. */
  public boolean inFreeAir() {
    return asking.ask(station::inFreeAir);
  }

  /** Whether the indicator's zero moved after the last zero was taken. */
  boolean zeroMoved() {
    return asking.ask(station::zeroMoved);
  }

  /** Reads anew what is worked on, after a job, bridge, zero or calibration was changed. */
  public void refresh() {
    asking.news(station::refresh);
  }

  /**
   * Takes the zero from the last second; refused while the plunger moves or hangs in free air. A
   * reading that the flat gave in the same contact is taken out of the statistics.
   */
  public Zero takeZero(String by) {
    Zero kept = gauge.takeZero(by);
    refresh();
    return kept;
  }

  /** What is in doubt about zeros, by their numbers. */
  public Map<Long, Sentence> zeroDoubts() {
    return new ZeroLifts(store().checkpoints(), name).doubts();
  }

  /** The plunger at rest on something that is no piece: what it gave as a reading is excluded. */
  AtRest atRest(String on, String by) {
    return contacts.atRest(on, by);
  }

  /** The bridge on the station; {@link BadInput} when there is none. */
  Bridge mounted() {
    return gauge.mounted();
  }

  /** Puts another bridge on the station; its zero is stale until it is taken again. */
  public void changeBridge(long bridgeId, String by) {
    gauge.changeBridge(bridgeId, by);
    refresh();
  }

  /** Selects the job that this station's readings go to. */
  public Job selectJob(long jobId) {
    Job selected = job.select(jobId);
    refresh();
    return selected;
  }

  /** Goes on with the next piece, whatever positions are left on this one. */
  public Place nextPiece() {
    return places.nextPiece();
  }

  /**
   * A piece went through the rollers once more and is to be measured again: its readings so far
   * stay in the record with their pass, and no longer count.
   */
  public Place rolledAgain(int piece, String by) {
    return places.rolledAgain(piece, by);
  }

  /** As {@link #nextPiece}; {@link Stale} while the present piece has no reading. */
  public Place nextPieceAfterReading() {
    return places.nextPieceAfterReading();
  }

  /** Who measures from now on. */
  public void measuredBy(String person) {
    new PersonAtStation(store().checkpoints(), name).put(Check.text("person", person));
    refresh();
  }

  /** Readings name nobody from now on. */
  public void measuredByNobody() {
    new PersonAtStation(store().checkpoints(), name).put("");
    refresh();
  }

  /** Suspends the job while masters are measured, or goes back to it. */
  public void onMasters(boolean so) {
    asking.tell(() -> station.onMasters(so));
  }

  /**
   * Starts, pauses, ends or gives up a study of this station; while it is running what is captured
   * belongs to it and to no job.
   */
  public GaugeStudy study(long studyId, GaugeStudy.State state, String by, String why) {
    GaugeStudy kept = studies.become(studyId, state, by, why);
    refresh();
    return kept;
  }

  /** Takes a measurement of a study out, so that its step is measured again. */
  public void measureAgain(long studyId, long measurementId, String reason, String by) {
    studies.measureAgain(studyId, measurementId, reason, by);
    refresh();
  }

  /** Goes to a piece and position, to measure it again or to leave some out. */
  public Place goTo(int piece, String position) {
    return places.goTo(piece, position);
  }

  /**
   * Takes the last reading of the job out of the statistics, and goes back to its place. {@code
   * readingId} is the one that is meant; {@link Stale} when another one has become the last
   * meanwhile.
   */
  public Exclusion undoLast(long readingId, String reason, String by) {
    Reading last = exclusions.lastCounted(job.open());
    if (readingId != last.id()) {
      throw new Stale(
          "The last reading is now piece %s, %s. Look again before you undo."
              .formatted(last.piece(), last.position()));
    }
    Exclusion kept = exclusions.undo(last, Exclusions.typed(reason), by);
    asking.news(() -> station.returnTo(last));
    return kept;
  }

  /** Takes any reading out of the statistics, or puts it back. */
  public Exclusion exclude(long readingId, boolean excluded, String reason, String by) {
    Reading reading =
        store().readings().find(readingId).orElseThrow(() -> UnknownId.of("readingId", readingId));
    job.refuseIfClosed(reading.jobId());
    exclusions.refuseIfMoved(reading);
    return exclusions.add(reading, excluded, Exclusions.typed(reason), by);
  }

  /**
   * The newest pieces of a job belong to another one of this machine and station: their readings
   * are excluded here, with where they went, and count there as if they had been taken there.
   */
  public PiecesMoved move(PiecesToMove pieces, String by) {
    return moves.move(pieces, by);
  }

  /** Which of the newest pieces of a job may be moved. */
  public PiecesOnOffer movable(long jobId) {
    return moves.onOffer(jobId);
  }

  /** Records what happened in the active job, after its last reading. */
  public JobEvent record(Happening happening, String by) {
    return record(job.open(), happening, by);
  }

  /** The same for a job of this station that need not be the active one. */
  public JobEvent record(Job of, Happening happening, String by) {
    JobEvent kept = events.add(ActiveJob.open(of), happening, by);
    refresh();
    return kept;
  }

  /**
   * Takes back an event of a job of this station that was recorded by mistake. A zero or a bridge
   * can't be: the station measures with it, whatever becomes of the event.
   */
  public EventWithdrawal takeBack(JobEvent event, String reason, String by) {
    refuseIfLasting(event);
    job.refuseIfClosed(event.jobId());
    EventWithdrawal kept = events.takeBack(event, reason, by);
    refresh();
    return kept;
  }

  private static void refuseIfLasting(JobEvent event) {
    if (event.canBeTakenBack()) {
      return;
    }
    boolean zero = event.kind() == JobEvent.Kind.ZERO;
    throw new BadInput(
        "event",
        "",
        "can't be taken back: the station goes on measuring "
            + (zero ? "from this zero" : "with this bridge"),
        zero
            ? "a new zero, set with the bridge on the flat"
            : "another bridge, chosen at the station");
  }
}
