package org.chordlog.cli.common;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.LengthUnit;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** One unit for all lengths of a command; a length that names another one is refused. */
public final class LengthOptions {
  enum Unit {
    MM(LengthUnit.MM, "mm"),
    INCH(LengthUnit.INCH, "in");

    private final double inMm;
    private final String sign;

    Unit(LengthUnit unit, String sign) {
      inMm = unit.nanometres() / 1e6;
      this.sign = sign;
    }
  }

  private static final Pattern LENGTH =
      Pattern.compile("([-+]?(?:\\d+(?:[.,]\\d*)?|[.,]\\d+)(?:[eE][-+]?\\d{1,3})?)\\s*(mm|in|\")?");

  @Option(
      names = "--unit",
      defaultValue = "mm",
      description = "Unit of all lengths, in and out: ${COMPLETION-CANDIDATES} (${DEFAULT-VALUE}).")
  private Unit unit = Unit.MM;

  public double mm(String field, String text) {
    Matcher matcher = LENGTH.matcher(text.strip());
    if (!matcher.matches()) {
      throw new BadInput(field, text, "is not a length", "a number, as 12.5 or 12.5" + unit.sign);
    }
    checkUnit(field, text, matcher.group(2));
    return new BigDecimal(matcher.group(1).replace(',', '.')).doubleValue() * unit.inMm;
  }

  public double mm(String field, @Nullable String text, double absentMm) {
    return text == null ? absentMm : mm(field, text);
  }

  private void checkUnit(String field, String text, @Nullable String named) {
    boolean inch = named != null && !"mm".equals(named);
    if (named != null && inch != (unit == Unit.INCH)) {
      String allowed = "lengths in " + unit.sign + " (--unit), not mixed";
      throw new BadInput(field, text, "is in another unit", allowed);
    }
  }

  /** In the command's unit, with that many decimals in mm and as fine in inch. */
  public String text(double mm, int decimals) {
    int places = unit == Unit.INCH ? decimals + 1 : decimals;
    return String.format(Locale.ROOT, "%." + Math.max(0, places) + "f", mm / unit.inMm);
  }

  public String textWithUnit(double mm, int decimals) {
    return text(mm, decimals) + " " + unit.sign;
  }

  public String sign() {
    return unit.sign;
  }

  public boolean metric() {
    return unit == Unit.MM;
  }
}
