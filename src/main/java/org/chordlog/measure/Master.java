package org.chordlog.measure;

import org.jspecify.annotations.Nullable;

/**
 * A piece of known radius: a convex (outer) or concave (inner) face, with expanded uncertainty k=2,
 * and by how much an interim check on it may differ, mm; null where that was not stated.
 */
public record Master(
    long id,
    String name,
    Face face,
    double radiusMm,
    double expandedUncertaintyMm,
    @Nullable Double checkLimitMm) {
  public Master {
    Check.text("name", name);
    Check.positive("radiusMm", radiusMm);
    Check.notNegative("expandedUncertaintyMm", expandedUncertaintyMm);
    if (checkLimitMm != null) {
      Check.positive("checkLimitMm", checkLimitMm);
    }
  }

  /** Without a limit of its own for checks. */
  public Master(long id, String name, Face face, double radiusMm, double expandedUncertaintyMm) {
    this(id, name, face, radiusMm, expandedUncertaintyMm, null);
  }

  /** The same master under another id. */
  public Master withId(long other) {
    return new Master(other, name, face, radiusMm, expandedUncertaintyMm, checkLimitMm);
  }
}
