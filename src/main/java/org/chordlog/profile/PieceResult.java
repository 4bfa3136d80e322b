package org.chordlog.profile;

import java.util.List;

/** What a profile says of a piece. */
public record PieceResult(
    Zone zone,
    MeanBend mean,
    Uniformity uniformity,
    double windowMm,
    List<LocalRadius> places,
    LengthInside inside,
    List<PieceMark> marks) {
  public PieceResult {
    places = List.copyOf(places);
    marks = List.copyOf(marks);
  }
}
