package org.chordlog.decode;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import org.chordlog.decode.BinaryNumber.Order;
import org.chordlog.decode.BinaryNumber.SignDigit;
import org.chordlog.decode.BinaryNumber.Type;
import org.chordlog.decode.Checksum.Encoding;
import org.chordlog.decode.Checksum.Kind;
import org.chordlog.measure.LengthUnit;
import org.jspecify.annotations.Nullable;

/** Numbers that are not text, in frames of one length: each way to read them that may be meant. */
final class BinaryGuess {
  private static final double CHECKED = 1;
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

  private BinaryGuess() {}

  static List<Candidate> candidates(List<Arrival> stream, @Nullable Polling polling) {
    List<Candidate> found = new ArrayList<>();
    for (BinaryCut cut : BinaryCut.of(stream)) {
      for (Checksum check : checks(cut)) {
        numbers(cut, check).forEach(number -> add(cut, check, number, polling, found));
      }
    }
    return found;
  }

  /** The checks that hold in all frames; none where the start bytes must do. */
  private static List<Checksum> checks(BinaryCut cut) {
    List<Checksum> holding = new ArrayList<>();
    for (Kind kind : Kind.values()) {
      for (boolean start : new boolean[] {true, false}) {
        for (boolean high : new boolean[] {true, false}) {
          Checksum check = new Checksum(kind, Encoding.RAW, "", false, start, false, high);
          if (kind.bytes > 0 && (kind.bytes > 1 || high) && holds(cut, check)) {
            holding.add(check);
          }
        }
      }
    }
    boolean bounded = cut.startLength() >= 2 || cut.framing().idleMs() > 0;
    return holding.isEmpty() && bounded ? List.of(Checksum.NONE) : holding;
  }

  private static boolean holds(BinaryCut cut, Checksum check) {
    CheckReader reader = new CheckReader(check, cut.startLength(), 0);
    Frame frame = new Frame();
    for (byte[] bytes : cut.frames()) {
      frame.set(bytes, 0, bytes.length, 0);
      if (reader.verify(frame) != null) {
        return false;
      }
    }
    return true;
  }

  private static List<BinaryNumber> numbers(BinaryCut cut, Checksum check) {
    List<BinaryNumber> numbers = new ArrayList<>();
    int body = cut.framing().length() - cut.startLength() - check.width();
    for (Type type : Type.values()) {
      for (Order order : Order.values()) {
        if (type == Type.PACKED_DECIMAL) {
          packed(cut, body, order, numbers);
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

  private static void packed(BinaryCut cut, int body, Order order, List<BinaryNumber> numbers) {
    for (int bytes = 2; bytes <= Math.min(4, body); bytes++) {
      for (int offset = 0; offset + bytes <= body; offset++) {
        for (SignDigit sign : SignDigit.values()) {
          BinaryNumber number =
              new BinaryNumber(Type.PACKED_DECIMAL, offset, bytes, order, sign, "D");
          if (decimal(cut, number)) {
            numbers.add(withMinus(cut, number));
          }
        }
      }
    }
  }

  private static boolean decimal(BinaryCut cut, BinaryNumber number) {
    return cut.frames().stream()
        .allMatch(frame -> number.whole(frame, cut.startLength() + number.offset()) != null);
  }

  /** The sign's digit that is usual for minus, of those that came. */
  private static BinaryNumber withMinus(BinaryCut cut, BinaryNumber number) {
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

  private static void add(
      BinaryCut cut,
      Checksum check,
      BinaryNumber number,
      @Nullable Polling polling,
      List<Candidate> found) {
    Movement movement = movement(cut, number);
    if (movement.steadiness() < 0.5) {
      return;
    }
    double trust =
        (check.kind() == Kind.NONE ? UNCHECKED : CHECKED)
            * (check.coversStart() || cut.startLength() == 0 ? 1 : 0.99)
            * typeTrust(number)
            * (1 - 0.01 * number.offset())
            * (1 + 0.001 * cut.startLength());
    if (number.type() == Type.FLOAT32) {
      found.add(
          candidate(
              cut,
              check,
              number,
              polling,
              NumberForm.DECIMAL,
              LengthUnit.MM,
              REAL * trust,
              "the unit is mm"));
      return;
    }
    for (CountScales scale : CountScales.usual()) {
      NumberForm form =
          NumberForm.counts(NumberForm.Sign.OPTIONAL, null, scale.scale().toPlainString());
      found.add(
          candidate(
              cut,
              check,
              number,
              polling,
              form,
              scale.unit(),
              scale.trust() * trust,
              scale.assumption()));
    }
  }

  private static double typeTrust(BinaryNumber number) {
    return switch (number.type()) {
      case INT32, FLOAT32 -> 1;
      case INT24 -> SHORTER;
      case INT16 -> SHORTER * SHORTER;
      case UINT32, UINT24 -> UNSIGNED * SHORTER;
      case UINT16 -> UNSIGNED * SHORTER * SHORTER;
      case PACKED_DECIMAL ->
          PACKED
              * (number.signDigit() == SignDigit.NONE ? UNSIGNED : 1)
              * (0.8 + 0.05 * number.bytes());
    };
  }

  private static Candidate candidate(
      BinaryCut cut,
      Checksum check,
      BinaryNumber number,
      @Nullable Polling polling,
      NumberForm form,
      LengthUnit unit,
      double trust,
      String assumption) {
    FrameProfile profile =
        new FrameProfileBuilder()
            .framing(cut.framing())
            .binary(number)
            .number(form)
            .unit(unit)
            .checksum(check)
            .polling(polling)
            .build();
    String kind = number.type().name().toLowerCase(Locale.ROOT).replace('_', ' ');
    String order = number.order().name().toLowerCase(Locale.ROOT).replace('_', ' ');
    return new Candidate(
        profile, trust, List.of("the number is " + kind + ", " + order, assumption));
  }

  /** How the number moves, as thousandths of a millimetre or as millimetres. */
  private static Movement movement(BinaryCut cut, BinaryNumber number) {
    Movement movement = new Movement();
    int strange = 0;
    for (byte[] frame : cut.frames()) {
      Long whole = number.whole(frame, cut.startLength() + number.offset());
      if (whole != null && number.type() == Type.FLOAT32) {
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
