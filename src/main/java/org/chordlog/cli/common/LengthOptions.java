package org.chordlog.cli.common;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Decimals;
import org.chordlog.measure.Fault;
import org.chordlog.measure.Length;
import org.chordlog.measure.LengthUnit;
import org.chordlog.measure.Lengths;
import org.chordlog.measure.NumberText;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
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
      paramLabel = "UNIT",
      defaultValue = "mm",
      description = "Unit of all lengths, in and out: mm or inch (mm).")
  private Unit unit = Unit.MM;

  /** Refuses a comma that could as well divide thousands. */
  public double mm(String field, String text) {
    NumberText.refuseThousands(field, text);
    return cellMm(field, text);
  }

  /** A cell of a file, where a comma is a decimal one. */
  public double cellMm(String field, String text) {
    Matcher matcher = LENGTH.matcher(Decimals.withHyphen(text.strip()));
    if (!matcher.matches()) {
      throw new BadInput(field, text, "is not a length", "a number, as 12.5 or 12.5" + unit.sign);
    }
    checkUnit(field, text, matcher.group(2));
    double mm = Double.parseDouble(matcher.group(1).replace(',', '.')) * unit.inMm;
    return Length.possible(field, text, mm);
  }

  /**
   * The length in mm, or {@code absentMm} where the option was not given; throws {@link BadInput}
   * that names the option where it is none or in another unit.
   */
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
    return Decimals.fixed(mm / unit.inMm, lengths().decimalsAs(decimals));
  }

  /** A length that was stated, as short as it is, in the command's unit. */
  public String stated(double mm) {
    return lengths().stated(mm);
  }

  /** The same with the sign of the unit. */
  public String statedWithUnit(double mm) {
    return stated(mm) + " " + unit.sign;
  }

  /** In the command's unit, with the decimals that its expanded uncertainty supports there. */
  public String byUncertainty(double mm, double expandedMm) {
    return Decimals.fixed(mm / unit.inMm, Lengths.decimals(expandedMm / unit.inMm));
  }

  /** A refusal that speaks of mm, in the command's unit. */
  public BadInput inUnit(BadInput refusal) {
    return unit == Unit.MM
        ? refusal
        : new BadInput(refusal.faults().stream().map(this::inUnit).toList());
  }

  private Fault inUnit(Fault fault) {
    return fault.field().endsWith("Mm")
        ? new Fault(
            fault.field().replaceFirst("Mm$", ""),
            converted(fault.value()),
            fault.problem(),
            Sentence.plain(fault.allowed().in(lengths())))
        : fault;
  }

  private String converted(String mm) {
    try {
      return lengths().text(Quantity.stated(Double.parseDouble(mm)));
    } catch (NumberFormatException e) {
      return mm;
    }
  }

  /** Lengths as said in the command's unit. */
  public Lengths lengths() {
    return unit == Unit.MM ? Lengths.MM : Lengths.INCH;
  }

  /** As {@link #text}, followed by the sign of the unit. */
  public String textWithUnit(double mm, int decimals) {
    return text(mm, decimals) + " " + unit.sign;
  }

  /** Length of the command's unit. */
  public double unitMm() {
    return unit.inMm;
  }

  public String sign() {
    return unit.sign;
  }

  public boolean metric() {
    return unit == Unit.MM;
  }
}
