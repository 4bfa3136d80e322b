package org.chordlog.profile;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.LengthSource;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.chordlog.profile.PieceMark.Kind;

/** Collects what must be said of a piece beside its figures. */
final class PieceMarks {
  private static final double SPARSE = 0.1;
  private static final double DOUBTFUL = 0.02;
  private static final double EDGES_APART_MM = 50;
  private static final double FEED_TOLERANCE_PERCENT = 3;

  private final Profile profile;
  private final Part part;
  private final EvaluationSettings settings;
  private final List<PieceMark> marks = new ArrayList<>();

  PieceMarks(Profile profile, Part part, EvaluationSettings settings) {
    this.profile = profile;
    this.part = part;
    this.settings = settings;
  }

  List<PieceMark> of(Zone zone, Curve curve, Spots spots, Windows windows, MeanBend mean) {
    feed();
    length();
    edges(zone);
    bins(zone, curve);
    spots(spots);
    unevenEnds(zone, windows, mean);
    return List.copyOf(marks);
  }

  private void add(Kind kind, double placeMm, double amount) {
    marks.add(new PieceMark(kind, placeMm, amount));
  }

  private void feed() {
    for (ProfileEvent event : profile.facts().events()) {
      double place = event.placeNm() / 1e6;
      if (place >= part.fromMm() && place <= part.toMm()) {
        double amount = event.amount();
        switch (event.kind()) {
          case STOPPED -> add(Kind.STOPPED, place, amount / 1e3);
          case JOGGED -> add(Kind.JOGGED, place, amount / 1e6);
          case UNCHANGED -> add(Kind.UNCHANGED, place, amount / 1e6);
          case NO_VALUES -> add(Kind.NO_VALUES, place, amount / 1e6);
        }
      }
    }
    if (settings.source() == LengthSource.SPEED) {
      add(Kind.STATED_FEED, part.fromMm(), FEED_TOLERANCE_PERCENT);
    }
  }

  private void length() {
    Double piece = settings.lengths().pieceMm();
    if (piece != null && part.stretch() == 0) {
      double off = part.lengthMm() / piece - 1;
      if (Math.abs(off) > DOUBTFUL) {
        add(Kind.LENGTH_DOUBTFUL, part.toMm(), 100 * off);
      }
    }
    if (profile.facts().pitchMm() > settings.halfSpanMm() / 4) {
      add(Kind.COARSE, part.fromMm(), profile.facts().pitchMm());
    }
  }

  private void edges(Zone zone) {
    Double in = settings.lengths().leadInMm();
    Double out = settings.lengths().leadOutMm();
    if (in != null && zone.start() != null) {
      apart(zone.start(), part.fromMm() + in);
    }
    if (out != null && zone.end() != null) {
      apart(zone.end(), part.toMm() - out);
    }
  }

  private void apart(Edge edge, double statedMm) {
    if (Math.abs(edge.placeMm() - statedMm) > EDGES_APART_MM) {
      add(Kind.EDGES_DISAGREE, edge.placeMm(), edge.placeMm() - statedMm);
    }
  }

  private void bins(Zone zone, Curve curve) {
    double expected = Math.max(1, Math.floor(zone.lengthMm() / profile.facts().widthMm()));
    double empty = 1 - curve.size() / expected;
    if (empty > SPARSE) {
      add(Kind.SPARSE, zone.fromMm(), 100 * empty);
    }
    int earlier = 0;
    for (int bin : curve.bin) {
      earlier += (profile.flags(bin) & Profile.EARLIER_PASS) != 0 ? 1 : 0;
    }
    if (earlier > 0) {
      add(Kind.EARLIER_PASS, zone.fromMm(), 100.0 * earlier / curve.size());
    }
  }

  private void spots(Spots spots) {
    for (Spots.Spot bump : spots.bumps()) {
      add(bump.sizeMm() > 0 ? Kind.BUMP : Kind.DENT, bump.placeMm(), Math.abs(bump.sizeMm()));
    }
    for (Spots.Spot spot : spots.others()) {
      add(Kind.SPOT, spot.placeMm(), spot.sizeMm());
    }
  }

  /** A change from the first window to the next beyond three standard deviations of it. */
  private void unevenEnds(Zone zone, Windows windows, MeanBend mean) {
    int n = windows.size();
    if (n < 4) {
      return;
    }
    double limit = 3 * Math.sqrt(2) * windows.scatterPerMm();
    double start = windows.bendPerMm[1] - windows.bendPerMm[0];
    double end = windows.bendPerMm[n - 1] - windows.bendPerMm[n - 2];
    if (zone.start() != null && Math.abs(start) > limit) {
      add(Kind.START_UNEVEN, zone.fromMm(), 100 * start / mean.bendPerMm());
    }
    if (zone.end() != null && Math.abs(end) > limit) {
      add(Kind.END_UNEVEN, zone.toMm(), 100 * end / mean.bendPerMm());
    }
  }

  /** Two passes that agree within twice what sampling makes uncertain; what they share cancels. */
  static void addNoChange(List<PieceMark> marks, PieceResult before, PieceResult now) {
    double change = now.mean().bendPerMm() - before.mean().bendPerMm();
    double u = Math.hypot(now.mean().samplePerMm(), before.mean().samplePerMm());
    if (Math.abs(change) <= 2 * u) {
      double percent = 100 * change / before.mean().bendPerMm();
      marks.add(new PieceMark(Kind.NO_CHANGE, now.zone().fromMm(), percent));
    }
  }

  /** What may be said without any length: the mean depth of the middle half of the time. */
  static Sentence byTime(Profile profile) {
    double sum = 0;
    int n = 0;
    for (int i = profile.bins() / 4; i < 3 * profile.bins() / 4; i++) {
      if (profile.count(i) > 0) {
        sum += profile.depthNm(i) / 1e6;
        n++;
      }
    }
    return n == 0
        ? Sentence.plain("No values were seen.")
        : Sentence.of(
            "Mean depth over the middle half of the time: %s.", Quantity.fixed(sum / n, 4));
  }
}
