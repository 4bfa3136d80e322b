package org.chordlog.station;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Capital;
import org.chordlog.measure.Change;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.SetUp;
import org.chordlog.radius.RadiusModel;
import org.chordlog.store.KeptReading;
import org.chordlog.store.PieceMove;
import org.chordlog.store.PieceMove.Moved;
import org.chordlog.store.PieceMove.MovedEvent;
import org.chordlog.store.RequestKey;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;

/**
 * What the readings of some pieces are in the job that they go to: as if they had been taken there.
 * Radius and decision are made anew from its section, faces and limits.
 */
final class MoveDraft {
  private final Store store;
  private final Job from;
  private final Job to;
  private final NewestPieces pieces;
  private final Recorded recorded;
  private final int shift;
  private final Map<Long, Known> models = new HashMap<>();

  private record Known(long setUpId, RadiusModel model) {}

  /** {@code firstThere}: the number of the first piece in the job that they go to. */
  MoveDraft(Store store, Job from, Job to, NewestPieces pieces, int firstThere, Recorded recorded) {
    this.store = store;
    this.from = from;
    this.to = to;
    this.pieces = pieces;
    this.recorded = recorded;
    this.shift = firstThere - pieces.firstPiece();
  }

  PieceMove made() {
    List<MovedEvent> events = events();
    return new PieceMove(readings(events), events, notes(), change());
  }

  private List<Moved> readings(List<MovedEvent> events) {
    List<Moved> moved = new ArrayList<>();
    String lot = store.jobs().materialLot(to.id()).orElse("");
    for (KeptReading each : pieces.all()) {
      moved.add(moved(each, lot));
      lot = lotAfter(moved.size() - 1, events, lot);
    }
    return moved;
  }

  private static String lotAfter(int index, List<MovedEvent> events, String lot) {
    String now = lot;
    for (MovedEvent each : events) {
      String named = each.there().materialLot();
      now = each.afterIndex() == index && !named.isBlank() ? named : now;
    }
    return now;
  }

  private Moved moved(KeptReading each, String lot) {
    Reading reading = each.reading();
    int piece = reading.piece() + shift;
    Exclusion here =
        new Exclusion(
            0,
            reading.id(),
            true,
            Exclusion.belongsTo(to.name(), piece),
            recorded.atMicros(),
            recorded.by());
    return new Moved(reading, there(reading, piece, lot), here, each.excludedReason());
  }

  private Reading there(Reading reading, int piece, String lot) {
    Known known = models.computeIfAbsent(reading.setUpId(), this::known);
    RadiusEstimate radius = radius(reading, known);
    return new Reading(
        0,
        reading.source(),
        new Reading.Place(to.id(), piece, reading.position()),
        new Reading.Measured(reading.captured(), reading.depthNm(), known.setUpId()),
        new Reading.Result(
            radius, known.model().decide(radius, to.specification()), reading.marks()),
        reading
            .circumstances()
            .withRevision(to.revision())
            .withMaterialLot(lot.isEmpty() ? null : lot));
  }

  private RadiusEstimate radius(Reading reading, Known known) {
    if (known.setUpId() == reading.setUpId()) {
      return reading.radius();
    }
    try {
      RadiusEstimate radius =
          known
              .model()
              .estimate(
                  reading.depthNm(),
                  reading.captured().scatterNm(),
                  reading.captured().sampleCount());
      if (!radius.flat()) {
        return radius;
      }
    } catch (BadInput e) {
      throw unfit(reading, e.getMessage());
    }
    throw unfit(reading, "no bend can be told from a flat");
  }

  private BadInput unfit(Reading reading, @Nullable String why) {
    return new BadInput(
        "toJobId",
        to.id(),
        "can't take piece %s, %s: %s".formatted(reading.piece(), reading.position(), why),
        "a job with a section and faces that the depths fit");
  }

  /** The same gauge, with section and faces of the job that they go to. */
  private Known known(long setUpId) {
    SetUp was = store.readings().setUp(setUpId).orElseThrow(() -> UnknownId.of("setUpId", setUpId));
    SetUp now =
        new SetUp(
            was.bridge(),
            was.indicator(),
            was.zero(),
            was.calibration(),
            to.section(),
            to.measuredFace(),
            to.specification().face());
    long id = now.equals(was) ? setUpId : kept(now);
    return new Known(id, RadiusModel.of(now));
  }

  /** It does not yet carry the key of the request: only what moves does. */
  private long kept(SetUp setUp) {
    return RequestKey.during(null, () -> store.readings().keep(setUp));
  }

  /** What happened between and after them starts a phase in the other job, not in this one. */
  private List<MovedEvent> events() {
    Stream<MovedEvent> between =
        store.jobs().countingOfJob(from.id()).stream()
            .filter(each -> each.startsPhase() && each.afterReadingId() >= pieces.firstId())
            .map(
                each ->
                    event(
                        each,
                        pieces.indexUpTo(each.afterReadingId()),
                        "Belongs to job " + to.name()));
    return Stream.concat(between, toldThereSince())
        .sorted(Comparator.comparingLong(each -> each.here().eventId()))
        .toList();
  }

  /** The rollers were moved in the other job when they were measured: that comes after them. */
  private Stream<MovedEvent> toldThereSince() {
    long last = lastId(to);
    return store.jobs().countingOfJob(to.id()).stream()
        .filter(each -> each.movesRollers() && each.afterReadingId() >= last)
        .filter(each -> each.atMicros() >= pieces.firstMicros())
        .map(
            each -> event(each, pieces.indexAt(each.atMicros()), "Stands after pieces moved here"));
  }

  private MovedEvent event(JobEvent event, int afterIndex, String why) {
    JobEvent there =
        new JobEvent(0, to.id(), to.machine(), event.kind(), 0, event.content(), event.recorded());
    EventWithdrawal here =
        new EventWithdrawal(0, event.id(), why, recorded.atMicros(), recorded.by());
    return new MovedEvent(there, afterIndex, here);
  }

  private long lastId(Job job) {
    return store.readings().newestOfJob(job.id()).map(Reading::id).orElse(0L);
  }

  private List<JobEvent> notes() {
    String were = words(0);
    String are = words(shift);
    return List.of(
        note(from, "%s moved to job %s: there %s".formatted(capital(were), to.name(), are)),
        note(to, "%s moved here from job %s: there %s".formatted(capital(are), from.name(), were)));
  }

  private JobEvent note(Job of, String text) {
    return new JobEvent(
        0,
        of.id(),
        of.machine(),
        JobEvent.Kind.NOTE,
        lastId(of),
        new JobEvent.Content(null, null, "", text),
        recorded);
  }

  private Change change() {
    return new Change(
        0,
        recorded.atMicros(),
        recorded.by(),
        "pieces of job " + from.id(),
        words(0) + " of job " + from.name(),
        words(shift) + " of job " + to.name(),
        "Moved %s of job %s to job %s".formatted(words(0), from.name(), to.name()));
  }

  /** "piece 21", "pieces 21 to 23". */
  private String words(int by) {
    int first = pieces.firstPiece() + by;
    int last = pieces.lastPiece() + by;
    return first == last ? "piece " + first : "pieces " + first + " to " + last;
  }

  private static String capital(String words) {
    return Capital.of(words);
  }
}
