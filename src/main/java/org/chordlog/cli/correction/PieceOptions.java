package org.chordlog.cli.correction;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.cli.common.CsvColumns;
import org.chordlog.cli.common.CsvOptions;
import org.chordlog.cli.common.LengthOptions;
import org.chordlog.correction.closing.BentPiece;
import org.chordlog.correction.closing.Joining;
import org.chordlog.correction.closing.RingOfPieces;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Pieces of a ring as options. */
final class PieceOptions {
  @Option(names = "--left", paramLabel = "L", description = "Developed length left to bend.")
  private @Nullable String left;

  @Option(names = "--join", paramLabel = "N", description = "Choose so many of the pieces.")
  private @Nullable Integer join;

  @Option(
      names = "--common-uncertainty",
      paramLabel = "L",
      description = "Standard uncertainty that all radii have in common (0).")
  private @Nullable String common;

  @Option(
      names = "--length-uncertainty",
      paramLabel = "L",
      description = "Standard uncertainty of each developed length (0).")
  private @Nullable String lengthUncertainty;

  @Mixin private CsvOptions csv = new CsvOptions();

  double commonMm(LengthOptions lengths) {
    return lengths.mm("--common-uncertainty", common, 0);
  }

  PiecesAnswer answer(Path file, LengthOptions lengths) {
    List<BentPiece> pieces = read(file, lengths);
    if (join != null && left != null) {
      throw new BadInput("--join", join, "is given beside --left", "one of them");
    }
    Joining.Found found = join == null ? null : Joining.best(pieces, join);
    RingOfPieces ring =
        new RingOfPieces(
            found == null ? pieces : found.order(),
            commonMm(lengths),
            lengths.mm("--length-uncertainty", lengthUncertainty, 0));
    return PiecesAnswer.of(ring, found, left == null ? null : (Double) lengths.mm("--left", left));
  }

  private List<BentPiece> read(Path file, LengthOptions lengths) {
    CsvColumns columns = CsvColumns.read("--bent", file, csv);
    int length = columns.find("length", "length");
    int radius = columns.find("radius", "radius");
    int name = columns.index("name");
    int uncertainty = columns.index("uncertainty");
    List<BentPiece> pieces = new ArrayList<>();
    for (int row = 0; row < columns.rows(); row++) {
      pieces.add(
          new BentPiece(
              name < 0 ? String.valueOf(row + 1) : columns.cell(row, name).strip(),
              cell(columns, row, length, lengths),
              cell(columns, row, radius, lengths),
              uncertainty < 0 ? 0 : cell(columns, row, uncertainty, lengths)));
    }
    return pieces;
  }

  private static double cell(CsvColumns columns, int row, int column, LengthOptions lengths) {
    String place = columns.name(column) + " in row " + columns.line(row);
    return lengths.cellMm(place, columns.numeral(row, column));
  }
}
