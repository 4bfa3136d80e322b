package org.chordlog.cli.correction;

import org.chordlog.cli.common.LengthOptions;
import org.chordlog.cli.common.SectionText;
import org.chordlog.cli.common.TypedNumber;
import org.chordlog.correction.Certificates;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What certificates say of the material, as options. */
final class CertificateOptions {
  private static final double MPA_PER_GPA = 1000;

  /** Metals are within; a modulus in MPa is not. Common practice, no source. */
  private static final double LEAST_GPA = 1;

  private static final double MOST_GPA = 1000;

  @Option(
      names = "--yield",
      paramLabel = "MPA",
      description = "Yield strength of the lot at first, by its certificate.")
  private @Nullable String firstYield;

  @Option(
      names = "--young",
      paramLabel = "GPA",
      description = "Young's modulus of the material, as 210 for steel.")
  private @Nullable String young;

  @Option(
      names = "--yield-uncertainty",
      paramLabel = "MPA",
      description = "Standard uncertainty of each yield strength for its whole lot.")
  private @Nullable String uncertainty;

  @Option(
      names = "--hardening",
      paramLabel = "H",
      defaultValue = "0",
      description = "Tangent modulus over Young's modulus (${DEFAULT-VALUE}).")
  private String hardening;

  /** Yield strength of the first lot, MPa; null where none was told. */
  @Nullable Double yieldMpa() {
    return TypedNumber.given("--yield", firstYield);
  }

  /** Of that section; {@link BadInput} where something is missing that yield strengths need. */
  Certificates of(String section, LengthOptions lengths) {
    String allowed = "tube:DIAMETERxWALL, round:DIAMETER, flat:HEIGHTxWIDTH";
    return new Certificates(
        SectionText.parse(needed("--section", section, allowed), lengths),
        MPA_PER_GPA * youngGpa(),
        TypedNumber.of("--hardening", hardening),
        number("--yield-uncertainty", uncertainty, "MPa"));
  }

  private double youngGpa() {
    double gpa = number("--young", young, "GPa, as 210 for steel");
    return Check.within("--young", gpa, LEAST_GPA, MOST_GPA);
  }

  private static double number(String option, @Nullable String text, String allowed) {
    return TypedNumber.of(option, needed(option, text, allowed));
  }

  private static String needed(String option, @Nullable String text, String allowed) {
    if (text == null || text.isEmpty()) {
      throw new BadInput(option, "", "is missing beside yield strengths", allowed);
    }
    return text;
  }
}
