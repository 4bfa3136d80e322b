package org.chordlog.correction;

/**
 * The number on the scale at which a part is expected to come out right. The standard uncertainty
 * is that of the level a set-up to it gives, permil.
 */
public record StartSetting(double setting, double standardUncertaintyPermil, Basis basis) {
  /** What it rests on, the best first. */
  public enum Basis {
    SAME_LOT("this part was right there in this lot"),
    KNOWN_LOT("this part was right there, less the known difference between the lots"),
    OTHER_LOT("mean of this part's earlier starts, in other lots"),
    OTHER_RADIUS("from the nearest radius of this section, by the gain of the scale");

    private final String words;

    Basis(String words) {
      this.words = words;
    }

    /** What it rests on. */
    public String words() {
      return words;
    }

    boolean lotKnown() {
      return this == SAME_LOT || this == KNOWN_LOT;
    }
  }
}
