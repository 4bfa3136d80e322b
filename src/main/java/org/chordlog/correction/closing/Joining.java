package org.chordlog.correction.closing;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;

/**
 * Which of the measured pieces to join to a ring, and in which order: every choice and order is
 * tried. The best has the least sum of squares of the angle that is left at the last joint, times
 * the radius, and of the distance between the ends there, all other joints being true.
 */
public final class Joining {
  /** So many arrangements are tried within about a second. */
  public static final long MOST_ARRANGEMENTS = 2_000_000;

  /**
   * The pieces in their order, the last joint between last and first; angle that is lacking there
   * (negative: too much) and distance between the ends.
   */
  public record Found(List<BentPiece> order, double kinkDegrees, double openingMm) {}

  /** The end of the pieces so far, the first one starting at the origin along x. */
  private record End(double x, double y, double heading) {
    End after(BentPiece piece) {
      double next = heading + piece.angleRadians();
      double r = piece.radiusMm();
      return new End(
          x + r * (Math.sin(next) - Math.sin(heading)),
          y - r * (Math.cos(next) - Math.cos(heading)),
          next);
    }
  }

  private final List<BentPiece> pieces;
  private final int count;
  private final boolean[] used;
  private final int[] order;
  private int[] best = {};
  private double least = Double.POSITIVE_INFINITY;

  private Joining(List<BentPiece> pieces, int count) {
    this.pieces = List.copyOf(pieces);
    this.count = count;
    used = new boolean[pieces.size()];
    order = new int[count];
  }

  /**
   * The best ring of {@code count} pieces. {@link BadInput} where there are fewer, or more
   * arrangements than {@link #MOST_ARRANGEMENTS}.
   */
  public static Found best(List<BentPiece> pieces, int count) {
    Check.within("join", count, 1, pieces.size());
    double arrangements = arrangements(pieces.size(), count);
    if (arrangements > MOST_ARRANGEMENTS) {
      throw new BadInput(
          "pieces",
          pieces.size() + " for a ring of " + count,
          "have too many arrangements",
          MOST_ARRANGEMENTS + " at most: leave the farthest ones out");
    }
    Joining search = new Joining(pieces, count);
    search.choose(0, new End(0, 0, 0));
    return search.found();
  }

  /** m!/(m − n)!, without regard to mirror images. */
  static double arrangements(int of, int count) {
    double product = 1;
    for (int i = 0; i < count; i++) {
      product *= of - i;
    }
    return product;
  }

  private void choose(int place, End end) {
    if (place == count) {
      judge(end);
      return;
    }
    for (int i = 0; i < used.length; i++) {
      if (!used[i]) {
        used[i] = true;
        order[place] = i;
        choose(place + 1, end.after(pieces.get(i)));
        used[i] = false;
      }
    }
  }

  private void judge(End end) {
    double radius = 0;
    for (int i : order) {
      radius += pieces.get(i).developedMm() / (2 * Math.PI);
    }
    double kink = (2 * Math.PI - end.heading()) * radius;
    double misfit = kink * kink + end.x() * end.x() + end.y() * end.y();
    if (misfit < least) {
      least = misfit;
      best = order.clone();
    }
  }

  private Found found() {
    List<BentPiece> chosen = new ArrayList<>();
    End end = new End(0, 0, 0);
    for (int i : best) {
      chosen.add(pieces.get(i));
      end = end.after(pieces.get(i));
    }
    double kink = Math.toDegrees(2 * Math.PI - end.heading());
    return new Found(List.copyOf(chosen), kink, Math.hypot(end.x(), end.y()));
  }
}
