package org.chordlog.measure;

/** Refusals that records use at birth; each throws {@link BadInput} naming the field. */
public final class Check {
  private static final int LONGEST_NAME = 200;

  /** What is allowed as a {@link #name}. */
  public static final String NAME = "1 to " + LONGEST_NAME + " characters";

  private Check() {}

  /** The value; {@link BadInput} for what is infinite or not a number. */
  public static double finite(String field, double value) {
    if (Double.isInfinite(value)) {
      throw new BadInput(field, "", "is too large a number", "a finite number");
    }
    if (Double.isNaN(value)) {
      throw new BadInput(field, value, "is not a number", "a finite number");
    }
    return value;
  }

  /** The value; {@link BadInput} unless it is above 0. */
  public static double positive(String field, double value) {
    if (!(finite(field, value) > 0)) {
      throw new BadInput(field, value, "is not above zero", "a number above 0");
    }
    return value;
  }

  /** The value; {@link BadInput} below 0. */
  public static double notNegative(String field, double value) {
    if (!(finite(field, value) >= 0)) {
      throw new BadInput(field, value, "is below zero", "0 or more");
    }
    return value;
  }

  /** The value; {@link BadInput} outside the bounds, which are allowed themselves. */
  public static double within(String field, double value, double least, double most) {
    if (finite(field, value) < least || value > most) {
      throw new BadInput(field, value, "is out of range", least + " to " + most);
    }
    return value;
  }

  /** Of a length in mm; the bounds are said in the reader's unit. */
  public static double lengthWithin(String field, double mm, double leastMm, double mostMm) {
    if (finite(field, mm) < leastMm || mm > mostMm) {
      Sentence allowed = Sentence.of("%s to %s", Quantity.stated(leastMm), Quantity.stated(mostMm));
      throw new BadInput(field, mm, "is out of range", allowed);
    }
    return mm;
  }

  /** The value; {@link BadInput} outside the bounds, which are allowed themselves. */
  public static long within(String field, long value, long least, long most) {
    if (value < least || value > most) {
      throw new BadInput(field, value, "is out of range", least + " to " + most);
    }
    return value;
  }

  /** The text; {@link BadInput} where it is blank. */
  public static String text(String field, String value) {
    if (value.isBlank()) {
      throw new BadInput(field, "'" + value + "'", "is empty", "a text");
    }
    return value;
  }

  /** A name that pages and reports print in one line; {@link BadInput} for any other. */
  public static String name(String field, String value) {
    if (text(field, value).length() > LONGEST_NAME) {
      throw new BadInput(field, value.substring(0, LONGEST_NAME), "is too long", NAME);
    }
    if (value.chars().anyMatch(Character::isISOControl)) {
      throw new BadInput(field, "", "has control characters, as the end of a line", NAME);
    }
    return value;
  }
}
