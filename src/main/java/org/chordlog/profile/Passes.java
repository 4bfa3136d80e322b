package org.chordlog.profile;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The passes of a piece: a pass ends where the piece turns and is then run back by more than half
 * of its length; a shorter way back is a jog. What the bins held at the turn is the pass.
 */
final class Passes {
  /** A pass that ended: its way in nm, and the first traverse after it. */
  record Ended(Profile profile, long wayNm, int nextTraverse) {}

  /** Makes a profile of what is in the bins now. */
  interface Copier {
    Profile copy();
  }

  private final Copier copier;
  private final List<Ended> ended = new ArrayList<>();
  private int direction = 1;
  private long fromNm;
  private long farNm;
  private @Nullable Profile atTurn;
  private int traverseAtTurn;

  Passes(Copier copier) {
    this.copier = copier;
  }

  void turned(PieceFeed feed) {
    if (feed.direction() == -direction && feed.turnedNm() == farNm) {
      atTurn = copier.copy();
      traverseAtTurn = feed.traverse();
    }
  }

  void at(long placeNm, long lengthNm) {
    if (direction * (placeNm - farNm) > 0) {
      farNm = placeNm;
    } else if (atTurn != null && 2 * Math.abs(farNm - placeNm) > lengthNm) {
      ended.add(new Ended(atTurn, Math.abs(farNm - fromNm), traverseAtTurn));
      direction = -direction;
      fromNm = farNm;
      farNm = placeNm;
      atTurn = null;
    }
  }

  /** Those whose way was more than half of the piece as it is known at its end. */
  List<Ended> of(long lengthNm) {
    return ended.stream().filter(pass -> 2 * pass.wayNm() > lengthNm).toList();
  }
}
