package org.chordlog.profile;

import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * One piece from where its touch began. O(1) a value; a turn of the feed costs a copy of the bins.
 */
final class RunningPiece {
  private static final long LOST_NM = 20_000_000;
  private static final long LOST_NANOS = 300_000_000L;
  private static final long DIRECTION_NM = 3_000_000;
  private static final long HOLE_NM = 50_000_000;
  private static final long HOLE_NANOS = 500_000_000L;
  private static final int LEVEL_STEPS = 20;

  private final TrackSettings settings;
  private final FineBins bins;
  private final long startNm;
  private final PieceFeed feed;
  private final Passes passes;
  private final PieceFaults faults;
  private final Joints joints;
  private int sign;
  private long touchedNm;
  private long touchedNanos;
  private long touchedSequence;
  private boolean lost;
  private long lostNm;
  private long lostNanos;
  private double partFromMm;
  private long partSequence;
  private long partNanos;
  private int stretch;
  private Joints.@Nullable Joint stretchEnd;

  RunningPiece(TrackSettings settings, FineBins bins, long startNm, long sequence, long nanos) {
    this.settings = settings;
    this.bins = bins;
    this.startNm = startNm;
    partSequence = sequence;
    partNanos = nanos;
    joints = new Joints(settings.spanMm(), leastLevelMm());
    touchedNanos = nanos;
    sign = settings.bothWays() ? 0 : 1;
    feed = new PieceFeed(nanos);
    passes = new Passes(() -> profile(0, 0, touchNm() / 1e6));
    faults = new PieceFaults(settings, bins);
    bins.clear();
  }

  /** A value while the plunger touches, or not; true once the piece has left. */
  boolean offer(
      long sequence,
      long nanos,
      long lengthNm,
      long depthNm,
      boolean touches,
      boolean atEndOfTravel,
      Consumer<PieceRun> sink) {
    long placeNm = placeNm(lengthNm);
    if (!touches) {
      return left(placeNm, nanos);
    }
    lost = false;
    hole(placeNm, nanos);
    int farthest = FineBins.index(feed.farthestNm());
    if (feed.move(placeNm, nanos)) {
      passes.turned(feed);
    }
    passes.at(placeNm, Math.max(feed.farthestNm(), statedNm()));
    boolean progressed = FineBins.index(feed.farthestNm()) > farthest;
    faults.at(placeNm, nanos, depthNm, feed);
    bins.add(placeNm, depthNm, feed.traverse(), atEndOfTravel ? Profile.AT_END_OF_TRAVEL : 0);
    touchedNm = placeNm;
    touchedNanos = nanos;
    touchedSequence = sequence;
    if (progressed && faults.none()) {
      divide(depthNm, sink);
    }
    return false;
  }

  private long placeNm(long lengthNm) {
    long way = lengthNm - startNm;
    if (sign == 0 && Math.abs(way) >= DIRECTION_NM) {
      sign = way > 0 ? 1 : -1;
    }
    return sign * way;
  }

  private boolean left(long placeNm, long nanos) {
    if (!lost) {
      lost = true;
      lostNm = placeNm;
      lostNanos = nanos;
    }
    return Math.abs(placeNm - lostNm) >= LOST_NM || nanos - lostNanos >= LOST_NANOS;
  }

  private void hole(long placeNm, long nanos) {
    long wayNm = Math.abs(placeNm - touchedNm);
    if (wayNm > HOLE_NM && nanos - touchedNanos > HOLE_NANOS) {
      long from = Math.min(placeNm, touchedNm);
      feed.note(new ProfileEvent(ProfileEvent.Kind.NO_VALUES, from, wayNm));
      faults.interrupted();
    }
  }

  private long statedNm() {
    Double piece = settings.lengths().pieceMm();
    return piece == null ? 0 : Math.round(piece * 1e6);
  }

  /** Told each 5 mm of new length. */
  private void divide(long depthNm, Consumer<PieceRun> sink) {
    double placeMm = feed.farthestNm() / 1e6;
    Double stretchMm = settings.lengths().stretchMm();
    if (stretchMm != null) {
      stretch(placeMm, stretchMm, sink);
      return;
    }
    long bend = settings.concave() ? -depthNm : depthNm;
    joints.at(placeMm, bend / 1e6, touchedSequence, touchedNanos);
    if (joints.dueAt(placeMm)) {
      cut(placeMm - settings.spanMm(), sink);
    }
  }

  /**
   * A stretch of endless stock ends once it is so far behind that the longest jog does not run back
   * into it.
   */
  private void stretch(double placeMm, double stretchMm, Consumer<PieceRun> sink) {
    double endMm = partFromMm + stretchMm + (stretch == 0 ? firstStretchMm() : 0);
    if (placeMm >= endMm && stretchEnd == null) {
      stretchEnd = new Joints.Joint(endMm, touchedSequence, touchedNanos);
    }
    if (stretchEnd != null && placeMm > endMm + settings.spanMm()) {
      sink.accept(run(new Part(partFromMm, endMm, stretch > 0, true, stretch + 1), stretchEnd));
      next(endMm, stretchEnd);
      stretch++;
      stretchEnd = null;
    }
  }

  /** Before the first stretch there are the straight end and what the bridge needs to stand on. */
  private double firstStretchMm() {
    Double lead = settings.lengths().leadInMm();
    return settings.spanMm() + (lead == null ? 0 : lead);
  }

  /** Pieces that came nose to tail, as far as their joints lie before that place. */
  private void cut(double beforeMm, Consumer<PieceRun> sink) {
    double half = settings.spanMm() / 2;
    Profile profile = profile(0, partFromMm, touchNm() / 1e6);
    for (double cutMm : cuts(profile, partFromMm + half, touchNm() / 1e6 - half)) {
      if (cutMm < beforeMm && joints.behind(cutMm)) {
        Joints.Joint joint = joints.take(cutMm);
        sink.accept(run(new Part(partFromMm, cutMm, false, false, 0), joint));
        next(cutMm, joint);
      }
    }
    joints.dropBefore(beforeMm);
  }

  private List<Double> cuts(Profile profile, double fromMm, double toMm) {
    double[] places = new double[profile.bins()];
    double[] depths = new double[profile.bins()];
    int n = 0;
    for (int i = 0; i < profile.bins(); i++) {
      double place = profile.placeMm(i);
      if (profile.count(i) > 0 && place > fromMm && place < toMm) {
        places[n] = place;
        depths[n++] = (settings.concave() ? -1 : 1) * profile.depthNm(i) / 1e6;
      }
    }
    return new NoseToTail(
            Arrays.copyOf(places, n), Arrays.copyOf(depths, n), settings.spanMm(), leastLevelMm())
        .cuts();
  }

  /** A depth that no noise reaches for long. */
  private double leastLevelMm() {
    return LEVEL_STEPS * settings.stepNm() / 1e6;
  }

  private void next(double fromMm, Joints.Joint first) {
    partFromMm = fromMm;
    partSequence = first.sequence();
    partNanos = first.nanos();
    bins.dropBefore(FineBins.index(Math.round(fromMm * 1e6)));
  }

  private Profile profile(int passTraverse, double fromMm, double toMm) {
    return new ProfileBuilder(bins, feed, passTraverse, fromMm, toMm).build(feed, touchNm());
  }

  private long touchNm() {
    return Math.max(0, Math.max(touchedNm, feed.farthestNm()));
  }

  /** The samples of a part end before the first of the next. */
  private PieceRun run(Part part, Joints.Joint next) {
    List<Passes.Ended> ended = partFromMm > 0 ? List.of() : passes.of(touchNm());
    int last = ended.isEmpty() ? 0 : ended.get(ended.size() - 1).nextTraverse();
    return new PieceRun(
        part,
        profile(last, part.fromMm(), part.toMm()),
        ended.stream().map(Passes.Ended::profile).toList(),
        new PieceRun.Seen(partSequence, next.sequence() - 1, partNanos, next.nanos()),
        faults.first());
  }

  /** Gives what is known of the piece when it has left, or the stream broke off. */
  void end(Consumer<PieceRun> sink) {
    double touchMm = touchNm() / 1e6;
    boolean stretches = settings.lengths().stretchMm() != null;
    if (!stretches && faults.none()) {
      cut(touchMm, sink);
    }
    Joints.Joint end = new Joints.Joint(touchMm, touchedSequence + 1, touchedNanos);
    sink.accept(
        run(new Part(partFromMm, touchMm, stretch > 0, false, stretches ? stretch + 1 : 0), end));
  }

  void refuse(Refused why) {
    faults.refuse(why);
  }

  /** Where the piece is now. */
  LivePiece live(long nanos) {
    Profile live = profile(0, partFromMm, touchNm() / 1e6);
    return new LivePiece(
        touchedNm / 1e6, feed.stopped(nanos), feed.direction() < 0, live, partNanos);
  }
}
