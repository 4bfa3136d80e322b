package org.chordlog.capture;

import org.jspecify.annotations.Nullable;

/**
 * What is shown in free air, and how well it comes back from lift to lift. A level is believed when
 * so many lifts in a row have ended there: a hand that lifts half way, or a lever, does not come
 * back to the same micrometres.
 */
final class AirLevel {
  private static final int AGREEING_LIFTS = 4;
  private static final int STEPS = 4;
  private static final double SCATTERS = 5;
  private static final double MEMORY = 0.2;
  private static final double FOLLOWS = 0.6;

  /** How many times the scatter known so far one rest may count with. */
  private static final double MOST_GROWTH = 2;

  /** A rest in free air is a mean of so many samples or more. */
  static final int LEAST_SAMPLES = 3;

  private final CaptureSettings settings;
  private @Nullable Long levelNm;

  /** How far from a level that this stream has not shown yet is still it; 0 once it has. */
  private long rememberedToNm;

  private long candidateNm;
  private long lowestNm = Long.MAX_VALUE;
  private int agreeing;
  private long probableNm;
  private long probableNanos;
  private int mostAgreeing;
  private boolean lastThere;
  private boolean oneOfTwoThere;
  private double meanSquare;
  private double noiseSquare;
  private long seenNanos;

  AirLevel(CaptureSettings settings) {
    this.settings = settings;
  }

  @Nullable Long levelNm() {
    return levelNm;
  }

  /** What was shown in free air before this stream began; a lift that ends near it is it. */
  void remember(long nm, long toNm) {
    levelNm = nm;
    rememberedToNm = Math.min(toNm, settings.contactNm());
    seenNanos = Long.MIN_VALUE;
    oneOfTwoThere = true;
  }

  /** It says nothing any more; true where no lift of this stream has ended there. */
  boolean forgetRemembered() {
    boolean remembered = rememberedToNm > 0;
    if (remembered) {
      rememberedToNm = 0;
      levelNm = null;
    }
    return remembered;
  }

  /** The level, or where two lifts in a row have ended while none is believed; null before them. */
  @Nullable Long probableNm() {
    return levelNm == null && mostAgreeing > 1 ? (Long) probableNm : levelNm;
  }

  boolean isProbably(long valueNm) {
    Long probable = probableNm();
    return probable != null && Math.abs(valueNm - probable) <= toleranceNm();
  }

  /** Whether one of the last two lifts has ended there: a lever may hold the plunger otherwise. */
  boolean oneOfTwoThere() {
    return oneOfTwoThere;
  }

  /** Something is shown there. */
  void probablySeen(long nanos) {
    probableNanos = nanos;
  }

  /** What else is shown speaks for it. */
  void believeProbable() {
    if (levelNm == null) {
      movedTo(probableNm, probableNanos);
    }
  }

  long levelOr(long otherwiseNm) {
    return levelNm == null ? otherwiseNm : levelNm;
  }

  /** When the level was last seen. */
  long seenNanos() {
    return seenNanos;
  }

  /**
   * How far from the level is still the level: four steps, the permissible error, or what its
   * scatter from lift to lift makes of it.
   */
  long toleranceNm() {
    double ofShortestMean = Math.sqrt(noiseSquare / LEAST_SAMPLES);
    long byScatter = Math.round(SCATTERS * (Math.sqrt(meanSquare) + ofShortestMean));
    long least = Math.max(STEPS * settings.resolutionNm(), settings.plunger().permissibleErrorNm());
    long usual = Math.max(least, Math.min(byScatter, settings.contactNm() / 2));
    return Math.max(usual, rememberedToNm);
  }

  boolean isAt(long valueNm) {
    return levelNm != null && Math.abs(valueNm - levelNm) <= toleranceNm();
  }

  /**
   * Rests at the level, with that scatter of single samples. One rest that scatters much more than
   * those before widens nothing at once: it may hold the value before and after a key was pressed.
   */
  void seen(long nanos, double scatterNm) {
    seenNanos = nanos;
    boolean first = noiseSquare == 0;
    double most = Math.max(MOST_GROWTH * noiseNm(), (double) settings.resolutionNm());
    double scatter = first ? scatterNm : Math.min(scatterNm, most);
    noiseSquare += (first ? 1 : MEMORY) * (scatter * scatter - noiseSquare);
  }

  /** Scatter of a single sample in free air. */
  double noiseNm() {
    return Math.sqrt(noiseSquare);
  }

  /**
   * A lift has ended that had rested there; true when a level is believed that is not the known.
   */
  boolean lifted(long bottomNm, long nanos) {
    lowestNm = Math.min(lowestNm, bottomNm);
    boolean there = isProbably(bottomNm);
    oneOfTwoThere = there || lastThere;
    lastThere = there;
    if (isAt(bottomNm)) {
      comesBack(bottomNm, nanos);
      return false;
    }
    boolean agrees = agreeing > 0 && Math.abs(bottomNm - candidateNm) <= toleranceNm();
    agreeing = agrees ? agreeing + 1 : 1;
    candidateNm = bottomNm;
    if (agreeing > mostAgreeing) {
      mostAgreeing = agreeing;
      probableNm = bottomNm;
      probableNanos = nanos;
    }
    if (agreeing < AGREEING_LIFTS) {
      return false;
    }
    if (levelNm == null && bottomNm <= lowestNm + toleranceNm()) {
      movedTo(bottomNm, nanos);
    }
    return true;
  }

  private void comesBack(long bottomNm, long nanos) {
    if (rememberedToNm > 0) {
      movedTo(bottomNm, nanos);
    } else {
      follow(bottomNm, nanos);
    }
  }

  /** A slow drift, by heat, is followed; one lift that is a little off widens nothing at once. */
  private void follow(long bottomNm, long nanos) {
    agreeing = 0;
    seenNanos = nanos;
    double off = bottomNm - levelOr(bottomNm);
    double usual = Math.min(Math.abs(off), toleranceNm() / 4.0);
    meanSquare += MEMORY * (usual * usual - meanSquare);
    double most = toleranceNm() / 2.0;
    levelNm = levelOr(bottomNm) + Math.round(FOLLOWS * Math.max(-most, Math.min(off, most)));
  }

  /** Whether two lifts in a row or more have ended where the last one did. */
  boolean repeats() {
    return agreeing > 1;
  }

  void movedTo(long newNm, long nanos) {
    levelNm = newNm;
    rememberedToNm = 0;
    agreeing = 0;
    seenNanos = nanos;
  }
}
