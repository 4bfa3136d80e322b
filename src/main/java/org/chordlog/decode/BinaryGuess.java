package org.chordlog.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import org.chordlog.decode.BinaryNumber.Order;
import org.chordlog.decode.BinaryNumber.SignDigit;
import org.chordlog.decode.Checksum.Kind;
import org.chordlog.measure.LengthUnit;
import org.jspecify.annotations.Nullable;

/** Numbers that are not text, in frames of one length: each way to read them that may be meant. */
final class BinaryGuess {
  private static final double LEAST_STEADY = 0.5;
  private static final double UNCHECKED = 0.8;
  private static final double REAL = 0.8;
  private static final double PACKED = 1.1;
  private static final double UNSIGNED = 0.9;
  private static final double SHORTER = 0.95;
  private static final int MOST_STRANGE = 10;
  private static final float LEAST_MM = 1e-3f;
  private static final float MOST_MM = 1e3f;

  /** Letters and digits that say minus, likelier ones first: common practice, no source. */
  private static final String MINUS = "DFB81";

  private final BinaryCut cut;
  private final Checksum check;
  private final @Nullable Polling polling;

  private BinaryGuess(BinaryCut cut, Checksum check, @Nullable Polling polling) {
    this.cut = cut;
    this.check = check;
    this.polling = polling;
  }

  static List<Candidate> candidates(List<Arrival> stream, @Nullable Polling polling) {
    List<Candidate> found = new ArrayList<>();
    for (BinaryCut cut : BinaryCut.of(stream)) {
      for (Checksum check : BinaryChecks.of(cut)) {
        BinaryGuess guess = new BinaryGuess(cut, check, polling);
        guess.numbers().forEach(number -> found.addAll(guess.candidates(number)));
      }
    }
    return found;
  }

  private List<BinaryNumber> numbers() {
    List<BinaryNumber> numbers = new ArrayList<>();
    int body = cut.framing().length() - cut.startLength() - check.width();
    for (BinaryNumber.Type type : BinaryNumber.Type.values()) {
      for (Order order : Order.values()) {
        if (type == BinaryNumber.Type.PACKED_DECIMAL) {
          packed(body, order, numbers);
          continue;
        }
        int bytes = BinaryNumber.of(type, order).length();
        for (int offset = 0; offset + bytes <= body; offset++) {
          numbers.add(new BinaryNumber(type, offset, 0, order, SignDigit.NONE, ""));
        }
      }
    }
    return numbers;
  }

  private void packed(int body, Order order, List<BinaryNumber> numbers) {
    for (int bytes = 2; bytes <= Math.min(4, body); bytes++) {
      for (int offset = 0; offset + bytes <= body; offset++) {
        for (SignDigit sign : SignDigit.values()) {
          BinaryNumber number =
              new BinaryNumber(BinaryNumber.Type.PACKED_DECIMAL, offset, bytes, order, sign, "D");
          if (decimal(number)) {
            numbers.add(withMinus(number));
          }
        }
      }
    }
  }

  private boolean decimal(BinaryNumber number) {
    return cut.frames().stream()
        .allMatch(frame -> number.whole(frame, cut.startLength() + number.offset()) != null);
  }

  /** The sign's digit that is usual for minus, of those that came. */
  private BinaryNumber withMinus(BinaryNumber number) {
    boolean first = number.signDigit() == SignDigit.FIRST;
    boolean high = (number.order() == Order.HIGH_FIRST) == first;
    int at = cut.startLength() + number.offset() + (high ? 0 : number.length() - 1);
    TreeSet<String> seen = new TreeSet<>();
    for (byte[] frame : cut.frames()) {
      int digit = first ? (frame[at] & 0xF0) >> 4 : frame[at] & 0xF;
      seen.add(Integer.toHexString(digit).toUpperCase(Locale.ROOT));
    }
    String minus =
        MINUS.chars().mapToObj(Character::toString).filter(seen::contains).findFirst().orElse("D");
    return new BinaryNumber(
        number.type(), number.offset(), number.bytes(), number.order(), number.signDigit(), minus);
  }

  private List<Candidate> candidates(BinaryNumber number) {
    if (movement(number).steadiness() < LEAST_STEADY) {
      return List.of();
    }
    double trust = trust(number);
    if (number.type() == BinaryNumber.Type.FLOAT32) {
      return List.of(
          candidate(number, NumberForm.DECIMAL, LengthUnit.MM, REAL * trust, "the unit is mm"));
    }
    return CountScales.usual().stream()
        .map(
            scale ->
                candidate(
                    number,
                    scale.counts(),
                    scale.unit(),
                    scale.trust() * trust,
                    scale.assumption()))
        .toList();
  }

  /** Equals are told apart by what is commoner: a check that covers the start, few bytes before. */
  private double trust(BinaryNumber number) {
    return (check.kind() == Kind.NONE ? UNCHECKED : 1)
        * (check.coversStart() || cut.startLength() == 0 ? 1 : 0.99)
        * trust(number.type())
        * (number.type() == BinaryNumber.Type.PACKED_DECIMAL ? packedTrust(number) : 1)
        * (1 - 0.01 * number.offset())
        * (1 + 0.001 * cut.startLength());
  }

  private static double trust(BinaryNumber.Type type) {
    return switch (type) {
      case INT32, FLOAT32 -> 1;
      case INT24 -> SHORTER;
      case INT16 -> SHORTER * SHORTER;
      case UINT32, UINT24 -> UNSIGNED * SHORTER;
      case UINT16 -> UNSIGNED * SHORTER * SHORTER;
      case PACKED_DECIMAL -> PACKED;
    };
  }

  private static double packedTrust(BinaryNumber number) {
    double sign = number.signDigit() == SignDigit.NONE ? UNSIGNED : 1;
    return sign * (0.8 + 0.05 * number.bytes());
  }

  private Candidate candidate(
      BinaryNumber number, NumberForm form, LengthUnit unit, double trust, String assumption) {
    FrameProfile profile =
        new FrameProfileBuilder()
            .framing(cut.framing())
            .binary(number)
            .number(form)
            .unit(unit)
            .checksum(check)
            .polling(polling)
            .build();
    String kind = number.type().words() + ", " + number.order().words();
    return new Candidate(profile, trust, List.of("the number is " + kind, assumption));
  }

  /** How the number moves, as thousandths of a millimetre or as millimetres. */
  private Movement movement(BinaryNumber number) {
    Movement movement = new Movement();
    int strange = 0;
    for (byte[] frame : cut.frames()) {
      Long whole = number.whole(frame, cut.startLength() + number.offset());
      if (whole != null && number.type() == BinaryNumber.Type.FLOAT32) {
        float real = Float.intBitsToFloat((int) (long) whole);
        strange += isDepth(real) ? 0 : 1;
        movement.add(isDepth(real) ? Math.round(real * 1e6) : 0);
      } else if (whole != null) {
        movement.add(whole * 1000);
      }
    }
    return strange * MOST_STRANGE > cut.frames().size() ? new Movement() : movement;
  }

  /** Bytes that are no float mostly make numbers that no indicator shows. */
  private static boolean isDepth(float mm) {
    float size = Math.abs(mm);
    return Float.isFinite(mm) && (size == 0 || (size > LEAST_MM && size < MOST_MM));
  }
}
