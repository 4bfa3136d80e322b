package org.chordlog.cli.gauge;

import java.util.List;
import java.util.Locale;
import org.chordlog.cli.common.CsvOptions;
import org.chordlog.cli.common.LengthOptions;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Face;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.Roller;
import org.chordlog.profile.CountScale;
import org.chordlog.profile.TrackSettings;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Where lengths come from, what is known of the pieces, and the rollers, as options. */
final class LineOptions {
  private static final String ROLLER = "NAME:DIAMETER:inner|outer, and :driven if a motor turns it";

  @Mixin CsvOptions csv = new CsvOptions();

  @Option(
      names = "--mm-per-count",
      paramLabel = "MM",
      defaultValue = "1",
      description = "Length of a count in the column count (${DEFAULT-VALUE}).")
  private double mmPerCount;

  @Option(
      names = "--counter-bits",
      paramLabel = "N",
      defaultValue = "0",
      description = "The counter starts over after 16 or 32 bits (0: never).")
  private int bits;

  @Option(names = "--reversed", description = "The length falls as the section goes forward.")
  private boolean reversed;

  @Option(
      names = "--one-way",
      description = "The length has no direction (a pulse line): a row where it falls is refused.")
  boolean oneWay;

  @Option(names = "--both-ways", description = "Sections may come from either end.")
  boolean bothWays;

  @Option(
      names = "--feed",
      paramLabel = "L",
      description = "Stated constant feed a second, where no length was measured; needs --piece.")
  @Nullable String feed;

  @Option(
      names = "--most-feed",
      paramLabel = "L",
      description = "Greatest feed a second (400 mm); a length that goes faster has jumped.")
  private @Nullable String mostFeed;

  @Option(
      names = "--length-face",
      paramLabel = "FACE",
      description = "Face that the length is measured on: outer, inner or centreline (as --face).")
  private @Nullable Face lengthFace;

  @Option(
      names = "--free-air",
      paramLabel = "L",
      description = "Depth less its zero in free air (learned from the file).")
  @Nullable String freeAir;

  @Option(names = "--piece", paramLabel = "L", description = "Length of a piece.")
  private @Nullable String piece;

  @Option(
      names = "--lead-in",
      paramLabel = "L",
      description = "From the front of a piece to the middle of the rise of its bend.")
  private @Nullable String leadIn;

  @Option(
      names = "--lead-out",
      paramLabel = "L",
      description = "From the middle of the fall of its bend to its end.")
  private @Nullable String leadOut;

  @Option(names = "--rise", paramLabel = "L", description = "Length over which the bend rises.")
  private @Nullable String rise;

  @Option(
      names = "--stretch",
      paramLabel = "L",
      description = "Endless stock: a result for each such length.")
  private @Nullable String stretch;

  @Option(
      names = "--roller",
      paramLabel = "ROLLER",
      description = {"A roller that the section runs over, may be repeated:", ROLLER + "."})
  private List<String> rollers = List.of();

  CountScale scale() {
    return new CountScale(mmPerCount, reversed, bits);
  }

  boolean reversed() {
    return reversed;
  }

  double mostFeed(LengthOptions lengths) {
    return Check.positive(
        "--most-feed", lengths.mm("--most-feed", mostFeed, TrackSettings.MOST_MM_PER_SECOND));
  }

  Face lengthFace(Face measured) {
    return lengthFace == null ? measured : lengthFace;
  }

  KnownLengths known(LengthOptions lengths) {
    return new KnownLengths(
        given(lengths, "--piece", piece),
        given(lengths, "--lead-in", leadIn),
        given(lengths, "--lead-out", leadOut),
        given(lengths, "--rise", rise),
        given(lengths, "--stretch", stretch));
  }

  private static @Nullable Double given(
      LengthOptions lengths, String option, @Nullable String text) {
    return text == null ? null : lengths.mm(option, text);
  }

  List<Roller> rollers(LengthOptions lengths) {
    return rollers.stream().map(text -> roller(text, lengths)).toList();
  }

  private static Roller roller(String text, LengthOptions lengths) {
    String[] parts = text.split(":", -1);
    boolean driven = parts.length == 4 && "driven".equals(parts[3]);
    if (parts.length != 3 && !driven) {
      throw new BadInput("--roller", text, "is not a roller", ROLLER);
    }
    return new Roller(parts[0], lengths.mm("--roller", parts[1]), 0, side(text, parts[2]), driven);
  }

  private static Face side(String text, String name) {
    return switch (name.toLowerCase(Locale.ROOT)) {
      case "inner" -> Face.INNER;
      case "outer" -> Face.OUTER;
      default -> throw new BadInput("--roller", text, "is on no face", ROLLER);
    };
  }
}
