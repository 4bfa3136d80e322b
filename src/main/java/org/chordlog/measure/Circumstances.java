package org.chordlog.measure;

import org.jspecify.annotations.Nullable;

/**
 * What else was known when a reading was taken. {@code pass} counts the times the piece was rolled,
 * from 1; {@code revision} is that of the job's specification which the decision was made by. Null
 * where it was not recorded.
 */
public record Circumstances(
    ReadingKind kind,
    int pass,
    @Nullable Integer revision,
    @Nullable String measuredBy,
    @Nullable String materialLot) {
  /** A product in its first pass, of which nothing else was recorded. */
  public static final Circumstances UNRECORDED =
      new Circumstances(ReadingKind.PRODUCT, 1, null, null, null);

  public Circumstances {
    Check.within("pass", pass, 1, Integer.MAX_VALUE);
    if (revision != null) {
      Check.within("revision", revision, 1, Integer.MAX_VALUE);
    }
    if (measuredBy != null) {
      Check.text("measuredBy", measuredBy);
    }
    if (materialLot != null) {
      Check.text("materialLot", materialLot);
    }
  }

  /** The same with another kind of reading. */
  public Circumstances withKind(ReadingKind changed) {
    return new Circumstances(changed, pass, revision, measuredBy, materialLot);
  }

  /** The same with another count of passes, from 1. */
  public Circumstances withPass(int changed) {
    return new Circumstances(kind, changed, revision, measuredBy, materialLot);
  }

  /** The same with another revision of the limits, null where it is not known. */
  public Circumstances withRevision(@Nullable Integer changed) {
    return new Circumstances(kind, pass, changed, measuredBy, materialLot);
  }

  /** The same with another person, null where nobody said who. */
  public Circumstances withMeasuredBy(@Nullable String changed) {
    return new Circumstances(kind, pass, revision, changed, materialLot);
  }

  /** The same with another lot, null where it is not known. */
  public Circumstances withMaterialLot(@Nullable String changed) {
    return new Circumstances(kind, pass, revision, measuredBy, changed);
  }
}
