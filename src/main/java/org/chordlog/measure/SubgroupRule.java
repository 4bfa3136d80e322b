package org.chordlog.measure;

/** How readings become subgroups: that many in a row at a position, a whole piece, or singly. */
public record SubgroupRule(Kind kind, int size) {
  public enum Kind {
    CONSECUTIVE,
    PIECE,
    INDIVIDUAL
  }

  public SubgroupRule {
    Check.within("size", size, kind == Kind.INDIVIDUAL ? 1 : 2, kind == Kind.INDIVIDUAL ? 1 : 25);
  }
}
