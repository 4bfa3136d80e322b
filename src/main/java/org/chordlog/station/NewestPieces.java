package org.chordlog.station;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Stale;
import org.chordlog.store.KeptReading;
import org.chordlog.store.Readings;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;

/**
 * The readings of a job from a piece on, in order, that may go to another job: those that count,
 * and those of their earlier passes. Others that are excluded stay where they are.
 */
record NewestPieces(int firstPiece, List<KeptReading> all) {
  private static final int PAGE = 1_000;
  private static final int MOST = PiecesToMove.MOST;

  static NewestPieces of(Readings readings, PiecesToMove asked) {
    List<Reading> newest = newestFirst(readings, asked.jobId());
    requireSeen(newest, asked);
    return from(newest, movable(readings, newest), asked.firstPiece());
  }

  /** From which of the newest pieces on may they go: the newest alone first. */
  static List<NewestPieces> choices(Readings readings, long jobId, int most) {
    List<Reading> newest = newestFirst(readings, jobId);
    List<KeptReading> movable = movable(readings, newest);
    return movable.stream()
        .map(each -> each.reading().piece())
        .distinct()
        .sorted(Comparator.reverseOrder())
        .limit(most)
        .flatMap(piece -> ifAllowed(newest, movable, piece).stream())
        .toList();
  }

  private static Optional<NewestPieces> ifAllowed(
      List<Reading> newestFirst, List<KeptReading> movable, int firstPiece) {
    try {
      return Optional.of(from(newestFirst, movable, firstPiece));
    } catch (BadInput e) {
      return Optional.empty();
    }
  }

  private static List<Reading> newestFirst(Readings readings, long jobId) {
    return readings.latestOfJob(jobId, Long.MAX_VALUE, MOST + 1);
  }

  private static List<KeptReading> movable(Readings readings, List<Reading> newestFirst) {
    List<Reading> inOrder = new ArrayList<>(newestFirst);
    Collections.reverse(inOrder);
    return readings.withExclusions(inOrder).stream().filter(NewestPieces::mayGo).toList();
  }

  private static NewestPieces from(
      List<Reading> newestFirst, List<KeptReading> movable, int firstPiece) {
    requireFew(newestFirst, firstPiece);
    NewestPieces pieces =
        new NewestPieces(
            firstPiece,
            movable.stream().filter(each -> each.reading().piece() >= firstPiece).toList());
    pieces.requireCounting();
    pieces.requireLast(movable);
    pieces.requireByHand();
    return pieces;
  }

  private static boolean mayGo(KeptReading each) {
    @Nullable Exclusion out = each.exclusion();
    return out == null || out.rolledAgain();
  }

  private static void requireSeen(List<Reading> newest, PiecesToMove asked) {
    if (newest.isEmpty() || newest.get(0).id() != asked.lastReadingId()) {
      throw new Stale(
          newest.isEmpty()
              ? "The job has no reading yet."
              : "The last reading is now piece %s, %s. Look again before you move any."
                  .formatted(newest.get(0).piece(), newest.get(0).position()));
    }
  }

  private static void requireFew(List<Reading> newestFirst, int firstPiece) {
    if (newestFirst.size() > MOST && newestFirst.get(MOST).piece() >= firstPiece) {
      throw new BadInput(
          "firstPiece",
          firstPiece,
          "and all after it have too many readings",
          "a piece with up to " + MOST + " readings from it on");
    }
  }

  /** One that is rolled again goes when it is measured again. */
  private void requireCounting() {
    Map<Integer, Boolean> counting = new TreeMap<>();
    all.forEach(e -> counting.merge(e.reading().piece(), !e.excluded(), Boolean::logicalOr));
    if (!counting.containsKey(firstPiece)) {
      throw new BadInput(
          "firstPiece", firstPiece, "has no reading that counts", "a piece that counts");
    }
    counting.forEach(
        (piece, counts) -> {
          if (!counts) {
            throw new BadInput(
                "firstPiece",
                firstPiece,
                "can't go: piece " + piece + " was rolled again and is not measured since",
                "all pieces from it on measured to the end");
          }
        });
  }

  /** Between them nothing may stay behind. */
  private void requireLast(List<KeptReading> movable) {
    movable.stream()
        .map(KeptReading::reading)
        .filter(each -> each.id() > firstId() && each.piece() < firstPiece)
        .findFirst()
        .ifPresent(
            each -> {
              throw new BadInput(
                  "firstPiece",
                  firstPiece,
                  measuredBefore(each.piece()),
                  "a piece with only later pieces after it, as " + each.piece());
            });
  }

  private String measuredBefore(int staying) {
    int earliest = all.get(0).reading().piece();
    String before = "was measured before piece " + staying;
    return earliest == firstPiece
        ? before + " of this job"
        : "can't go: piece " + earliest + " would go too, but " + before + ", which stays";
  }

  private void requireByHand() {
    if (all.stream().anyMatch(e -> e.reading().captured().mode() == CaptureMode.PASSING)) {
      throw new BadInput(
          "firstPiece",
          firstPiece,
          "ran through a gauge in the line, and so can't be moved",
          "pieces that the bridge was set on");
    }
  }

  /** Nothing else may have been measured on the machine since, or the order would be wrong. */
  void requireNewestOnMachine(Store store, Job from, Job to) {
    laterElsewhere(store.readings(), from)
        .ifPresent(
            each -> {
              throw each.jobId() == to.id() ? measuredOn(each, from, to) : followed(each, store);
            });
  }

  /** By way of the job that they are in, all of them go in the order of measuring. */
  private BadInput measuredOn(Reading later, Job from, Job to) {
    return new BadInput(
        "toJobId",
        to.id(),
        "was measured since, after piece " + firstPiece,
        ("a job that was not measured since then; or two steps: of job %s move its pieces from %s"
                + " on to job %s, then all from piece %s on from there to job %s")
            .formatted(to.name(), later.piece(), from.name(), firstPiece, to.name()));
  }

  private BadInput followed(Reading later, Store store) {
    String job = store.jobs().find(later.jobId()).map(Job::name).orElse("");
    return new BadInput(
        "firstPiece",
        firstPiece,
        "was followed by piece %s of job %s on the machine".formatted(later.piece(), job),
        "pieces after which no other job was measured there; exclude others here, and measure them"
            + " again under their own job");
  }

  private Optional<Reading> laterElsewhere(Readings readings, Job from) {
    long after = firstId();
    List<Reading> page;
    do {
      page = readings.ofMachine(from.machine(), after, PAGE);
      Optional<Reading> found =
          readings
              .withExclusions(page.stream().filter(each -> each.jobId() != from.id()).toList())
              .stream()
              .filter(each -> !each.excluded())
              .map(KeptReading::reading)
              .findFirst();
      if (found.isPresent()) {
        return found;
      }
      after = page.isEmpty() ? after : page.get(page.size() - 1).id();
    } while (page.size() == PAGE);
    return Optional.empty();
  }

  /** Where their job goes on without them: another piece will have the number of the first. */
  Place place(Plan plan) {
    return new Place(firstPiece, Place.first(plan).position());
  }

  long firstId() {
    return all.get(0).reading().id();
  }

  int lastPiece() {
    return all.stream().mapToInt(each -> each.reading().piece()).max().orElseThrow();
  }

  long firstMicros() {
    return all.get(0).reading().wallMicros();
  }

  /** Index of the last of them that was taken by that time. */
  int indexAt(long micros) {
    int index = 0;
    while (index + 1 < all.size() && all.get(index + 1).reading().wallMicros() <= micros) {
      index++;
    }
    return index;
  }

  /** Index of the last of them up to that reading. */
  int indexUpTo(long readingId) {
    int index = 0;
    while (index + 1 < all.size() && all.get(index + 1).reading().id() <= readingId) {
      index++;
    }
    return index;
  }
}
