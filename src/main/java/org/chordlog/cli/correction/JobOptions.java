package org.chordlog.cli.correction;

import org.chordlog.cli.common.LengthOptions;
import org.chordlog.cli.common.TypedNumber;
import org.chordlog.correction.Aim;
import org.chordlog.correction.Told.JobStart;
import org.chordlog.correction.Tuning;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What is to be bent, and what a correction is worth there. */
final class JobOptions {
  @Mixin private LengthOptions lengths = new LengthOptions();

  @Option(names = "--target", paramLabel = "L", required = true, description = "Target radius.")
  private String target;

  @Option(
      names = "--tolerance",
      paramLabel = "L",
      description = "Tolerance (±) of the radius; or limits:")
  private @Nullable String tolerance;

  @Option(
      names = {"--lower", "--lsl"},
      paramLabel = "L",
      description = "Lower limit of the radius.")
  private @Nullable String lower;

  @Option(
      names = {"--upper", "--usl"},
      paramLabel = "L",
      description = "Upper limit of the radius.")
  private @Nullable String upper;

  @Option(
      names = "--part",
      paramLabel = "PART",
      defaultValue = "",
      description = "Part, for its start to be learned.")
  private String part;

  @Option(
      names = "--section",
      paramLabel = "SECTION",
      defaultValue = "",
      description = "Section, as tube:60.3x3.2.")
  private String section;

  @Option(
      names = "--lot",
      paramLabel = "LOT",
      defaultValue = "",
      description = "Material lot at first.")
  private String lot;

  @Option(names = "--pieces", paramLabel = "N", description = "How many pieces are to be bent.")
  private @Nullable Integer pieces;

  @Option(
      names = "--uncertainty",
      paramLabel = "L",
      defaultValue = "0",
      description = "Standard uncertainty of a reading where it names none (0).")
  private String uncertainty;

  @Option(
      names = "--least-chance",
      paramLabel = "P",
      defaultValue = "0.8",
      description = "Least probability that a correction helps (${DEFAULT-VALUE}).")
  private String leastChance;

  @Option(
      names = "--correction-cost",
      paramLabel = "C",
      defaultValue = "0.5",
      description = "What a correction costs, in pieces at their limit (${DEFAULT-VALUE}).")
  private String cost;

  @Mixin private CertificateOptions certificates = new CertificateOptions();

  double targetMm() {
    return lengths.mm("--target", target);
  }

  double uncertaintyMm() {
    return lengths.mm("--uncertainty", uncertainty);
  }

  JobStart start() {
    return new JobStart(1, aim(), part, section, lot, pieces);
  }

  private Aim aim() {
    if (tolerance != null && (lower != null || upper != null)) {
      throw new BadInput("--tolerance", tolerance, "is given beside limits", "one or the other");
    }
    if (tolerance == null && lower == null && upper == null) {
      throw new BadInput("--tolerance", "", "is missing", "--tolerance, --lower or --upper");
    }
    return tolerance == null
        ? new Aim(targetMm(), limitMm("--lower", lower), limitMm("--upper", upper))
        : Aim.symmetric(targetMm(), lengths.mm("--tolerance", tolerance));
  }

  private @Nullable Double limitMm(String field, @Nullable String text) {
    return text == null ? null : (Double) lengths.mm(field, text);
  }

  String section() {
    return section;
  }

  CertificateOptions certificates() {
    return certificates;
  }

  /** The unit of everything that the command is given and says. */
  LengthOptions lengths() {
    return lengths;
  }

  Tuning tuning() {
    Tuning.Stakes usual = Tuning.usual().stakes();
    return Tuning.usual()
        .with(
            new Tuning.Stakes(
                TypedNumber.of("--correction-cost", cost),
                usual.pieces(),
                TypedNumber.of("--least-chance", leastChance),
                usual.leastSteady()));
  }
}
