package org.chordlog.decode;

import java.util.EnumMap;
import java.util.Map;
import org.chordlog.measure.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * Refuses numbers that are not written as those before them: another count of decimals, a missing
 * leading zero or sign. Such a number lost a byte, or the indicator's unit or resolution was
 * changed. The latter is believed only where each frame names its unit, after the new shape has
 * come {@code confirmations} times in a row; else the frame can't tell the two apart, and all are
 * refused until the profile says what they are.
 */
final class ShapeGuard {
  private static final int SETTLED = 3;
  private final Map<LengthUnit, Shape> known = new EnumMap<>(LengthUnit.class);
  private final int confirmations;
  private @Nullable Shape next;

  /** 0 confirmations: a change is never believed. */
  ShapeGuard(int confirmations) {
    this.confirmations = confirmations;
  }

  /** Null when the number fits, else why it is refused. */
  @Nullable String refuse(LengthUnit unit, NumberText number) {
    Shape shape = known.get(unit);
    if (shape == null) {
      known.put(unit, new Shape(number));
      return null;
    }
    String difference = shape.difference(number);
    if (difference == null) {
      shape.learn(number);
      next = null;
      return null;
    }
    return changed(unit, number, shape, difference);
  }

  private @Nullable String changed(
      LengthUnit unit, NumberText number, Shape shape, String difference) {
    Shape candidate = next;
    if (candidate == null || candidate.difference(number) != null) {
      candidate = new Shape(number);
    } else {
      candidate.learn(number);
    }
    next = candidate;
    if (shape.seen >= SETTLED && (confirmations == 0 || candidate.seen < confirmations)) {
      return difference;
    }
    known.put(unit, candidate);
    next = null;
    return shape.seen < SETTLED ? difference : null;
  }

  /** How numbers were written. */
  private static final class Shape {
    private final int decimals;
    private final int exponentDigits;
    private int paddedTo;
    private int plus;
    private int seen;

    Shape(NumberText number) {
      decimals = number.decimals;
      exponentDigits = number.exponentDigits;
      learn(number);
    }

    void learn(NumberText number) {
      seen = Math.min(seen + 1, SETTLED + 1);
      if (number.zeroPadded) {
        paddedTo = number.integerDigits;
      }
      if (number.sign >= 0 && number.digits != 0) {
        plus = number.sign == 1 ? 1 : -1;
      }
    }

    @Nullable String difference(NumberText number) {
      if (number.decimals != decimals) {
        return "unit or resolution changed: "
            + number.decimals
            + " decimals instead of "
            + decimals;
      }
      if (number.exponentDigits != exponentDigits) {
        return number.exponentDigits + " exponent digits instead of " + exponentDigits;
      }
      if (paddedTo > 0 && number.integerDigits != paddedTo) {
        return number.integerDigits + " digits before the mark instead of " + paddedTo;
      }
      if (plus != 0 && number.digits != 0 && number.sign == -Math.min(plus, 0)) {
        return plus > 0 ? "sign missing" : "unexpected plus sign";
      }
      return null;
    }
  }
}
