package org.chordlog.measure;

/**
 * A piece of known radius: a convex (outer) or concave (inner) face, with expanded uncertainty k=2.
 */
public record Master(
    long id, String name, Face face, double radiusMm, double expandedUncertaintyMm) {
  public Master {
    Check.text("name", name);
    Check.positive("radiusMm", radiusMm);
    Check.notNegative("expandedUncertaintyMm", expandedUncertaintyMm);
  }
}
