package org.chordlog.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.chordlog.stats.PieceGap;

/** Pieces that lack a planned position, and readings that do not count, in words. */
public final class GapWords {
  private static final int NAMED = 3;

  private GapWords() {}

  /** Of a few pieces each; of more their count and the first. Empty where none lacks one. */
  public static String of(List<PieceGap> gaps) {
    String first = gaps.stream().limit(NAMED).map(GapWords::of).collect(Collectors.joining(" "));
    return gaps.size() > NAMED
        ? gaps.size() + " pieces lack a reading at a planned position. The first: " + first
        : first;
  }

  /** "Piece 1 was not measured at right." */
  public static String of(PieceGap gap) {
    if (!gap.counts()) {
      return "Piece " + gap.piece() + " has no reading that counts.";
    }
    return "Piece " + gap.piece() + " " + lacks(gap) + ".";
  }

  private static String lacks(PieceGap gap) {
    List<String> parts = new ArrayList<>();
    if (!gap.never().isEmpty()) {
      parts.add("was not measured at " + String.join(", ", gap.never()));
    }
    if (!gap.excluded().isEmpty()) {
      parts.add("has no reading that counts at " + String.join(", ", gap.excluded()));
    }
    return String.join(" and ", parts);
  }

  /** "9 of 24 readings are excluded and count in no figure", without a stop. */
  public static String excluded(long excluded, long all) {
    return "%s of %s %s in no figure"
        .formatted(
            excluded,
            Counted.of(all, "reading"),
            excluded == 1 ? "is excluded and counts" : "are excluded and count");
  }
}
