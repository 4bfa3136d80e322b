package org.chordlog.study;

import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.study.StudyResult.Size;

/**
 * A complete table: value by piece, place on the piece, operator and repeat. {@code named} is true
 * where all pieces have the same place names, as start, middle, end.
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record SplitTable(
    Cells cells,
    List<String> pieces,
    List<String> operators,
    boolean named,
    double[][][][] values) {

  static SplitTable of(List<StudyReading> readings) {
    Cells cells = new Cells(readings);
    List<String> pieces = cells.names(StudyReading::part);
    List<String> operators = cells.names(StudyReading::operator);
    Cells.atLeast("part", pieces, 2, " pieces");
    Cells.atLeast("operator", operators, 2, " operators");
    List<String> first = places(cells, pieces.get(0));
    Cells.atLeast("place", first, 2, " places on each piece, or the crossed study");
    boolean named = true;
    for (String piece : pieces) {
      named &= sameCount(piece, places(cells, piece), first);
    }
    double[][][][] values =
        pieces.stream()
            .map(piece -> piece(cells, piece, named(cells, piece, first), operators))
            .toArray(double[][][][]::new);
    return new SplitTable(cells, pieces, operators, named, values);
  }

  private static boolean sameCount(String piece, List<String> places, List<String> first) {
    if (places.size() != first.size()) {
      throw new BadInput(
          "piece " + piece,
          places.size() + " of " + first.size() + " places",
          "are there",
          "as many places on every piece as on the first: measure the missing ones");
    }
    return places.containsAll(first);
  }

  /** In the order of the first piece where the names are the same. */
  private static List<String> named(Cells cells, String piece, List<String> first) {
    List<String> own = places(cells, piece);
    return own.containsAll(first) ? first : own;
  }

  private static List<String> places(Cells cells, String piece) {
    return cells.readings().stream()
        .filter(reading -> reading.part().equals(piece))
        .map(StudyReading::place)
        .distinct()
        .toList();
  }

  private static double[][][] piece(
      Cells cells, String piece, List<String> places, List<String> operators) {
    return places.stream()
        .map(
            place ->
                operators.stream()
                    .map(operator -> cells.values(piece, place, operator))
                    .toArray(double[][]::new))
        .toArray(double[][][]::new);
  }

  Size size() {
    int places = pieces.size() * values[0].length;
    return new Size(places, operators.size(), cells.repeats(), design());
  }

  private String design() {
    return pieces.size()
        + " pieces × "
        + values[0].length
        + " places × "
        + operators.size()
        + " operators × "
        + cells.repeats()
        + " repeats";
  }
}
