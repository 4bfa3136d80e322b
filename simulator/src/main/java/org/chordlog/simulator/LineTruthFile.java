package org.chordlog.simulator;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/**
 * Writes what was true of each piece as it comes: a CSV line a piece, and beside it the curvature,
 * and what a perfect bridge would show, each 5 mm.
 */
final class LineTruthFile implements Consumer<LineTruth>, AutoCloseable {
  static final String HEADER =
      "piece,began_s,left_s,length_mm,lead_in_mm,rise_in_mm,lead_out_mm,rise_out_mm,"
          + "ideal_from_mm,ideal_to_mm,mean_curvature_per_mm,mean_shown_per_mm,"
          + "least_shown_per_mm,most_shown_per_mm,rollers\n";
  static final String PROFILE_HEADER = "piece,place_mm,curvature_per_mm,shown_per_mm\n";
  private static final int STEP_MM = 5;

  private final Writer pieces;
  private final Writer profiles;

  private LineTruthFile(Writer pieces, Writer profiles) {
    this.pieces = pieces;
    this.profiles = profiles;
  }

  /** The profiles go into a file of the same name with {@code .profile.csv} behind it. */
  static LineTruthFile create(Path path) throws IOException {
    Writer pieces = Files.newBufferedWriter(path);
    pieces.write(HEADER);
    pieces.flush();
    Writer profiles = Files.newBufferedWriter(Path.of(path + ".profile.csv"));
    profiles.write(PROFILE_HEADER);
    profiles.flush();
    return new LineTruthFile(pieces, profiles);
  }

  @Override
  public void accept(LineTruth truth) {
    try {
      pieces.write(line(truth));
      pieces.flush();
      profile(truth);
      profiles.flush();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String line(LineTruth t) {
    double from = t.idealFromMm();
    double to = t.idealToMm();
    return String.format(
        Locale.ROOT,
        "%d,%.3f,%.3f,%.1f,%.1f,%.1f,%.1f,%.1f,%.1f,%.1f,%.9e,%.9e,%.9e,%.9e,%s%n",
        t.piece(),
        t.beganSeconds(),
        t.leftSeconds(),
        t.lengthMm(),
        t.leadInMm(),
        t.riseInMm(),
        t.leadOutMm(),
        t.riseOutMm(),
        from,
        to,
        t.meanCurvaturePerMm(from, to),
        t.meanShownPerMm(from, to),
        t.leastShownPerMm(from, to),
        t.mostShownPerMm(from, to),
        t.rollers().stream().map(LineTruthFile::roller).collect(Collectors.joining("; ")));
  }

  private static String roller(LineTruth.Rolled rolled) {
    return String.format(
        Locale.ROOT,
        "%s %.4f %% phase %.3f slip %.3f %%",
        rolled.roller().name(),
        rolled.roller().amplitudePercent(),
        rolled.phase(),
        rolled.roller().slipPercent());
  }

  private void profile(LineTruth truth) throws IOException {
    for (int s = 0; s <= truth.lengthMm(); s += STEP_MM) {
      profiles.write(
          String.format(
              Locale.ROOT,
              "%d,%d,%.9e,%.9e%n",
              truth.piece(),
              s,
              truth.curvaturePerMm(s),
              truth.shownPerMm(s)));
    }
  }

  @Override
  public void close() throws IOException {
    pieces.close();
    profiles.close();
  }
}
