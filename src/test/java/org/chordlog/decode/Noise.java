package org.chordlog.decode;

import java.util.Arrays;
import java.util.Locale;
import java.util.Random;

/** Frames through a line that replaces bytes by random ones, and what became of them. */
final class Noise {
  private static final long STEP = 50_000_000L;
  private final BuiltInProfile built;
  private final Random random;
  private final double share;
  private final Decoder decoder;
  private long expected;
  private long frame;
  private boolean untellable;
  long sent;
  long right;
  long wrong;

  /** Wrong values of frames in which only digits became other digits, or a sign the other. */
  long wrongUntellable;

  Noise(BuiltInProfile built, long seed, double share) {
    this.built = built;
    this.share = share;
    random = new Random(seed);
    decoder = Decoders.of(built.profile());
    decoder.idle(0, d -> {});
  }

  Noise run(int frames) {
    for (int i = 0; i < frames; i++) {
      send();
    }
    decoder.idle((frame + 1) * STEP, this::judge);
    return this;
  }

  private void send() {
    frame++;
    sent++;
    long microns = random.nextInt(24_001) - 12_000L;
    byte[] clean = Sender.frame(built, microns);
    byte[] line = clean.clone();
    for (int i = 0; i < line.length; i++) {
      if (random.nextDouble() < share) {
        line[i] = (byte) random.nextInt(256);
      }
    }
    decoder.idle(frame * STEP, this::judge);
    expected = microns * 1000;
    untellable = untellable(clean, line);
    decoder.feed(line, 0, line.length, frame * STEP, this::judge);
  }

  private boolean untellable(byte[] clean, byte[] line) {
    boolean exchanged = false;
    for (int i = 0; i < clean.length; i++) {
      boolean changed = clean[i] != line[i];
      boolean sameKind = kind(clean[i]) == kind(line[i]) && kind(line[i]) != line[i];
      exchanged |= changed && sameKind;
      if (changed && !sameKind && clean[i] != '\r' && clean[i] != '\n') {
        return false;
      }
    }
    return exchanged;
  }

  private int kind(byte b) {
    boolean hexadecimal = built.profile().number().base() == NumberForm.Base.HEXADECIMAL;
    if (hexadecimal && b > 0 && Character.digit(b, 16) >= 0) {
      return '0' + 1000;
    }
    if ((b | 0x20) == 'e') {
      return 'e';
    }
    return b >= '0' && b <= '9' ? '0' + 1000 : b == '+' || b == '-' ? '+' + 1000 : b;
  }

  private void judge(Decoded decoded) {
    if (!(decoded instanceof Decoded.Value value)) {
      return;
    }
    boolean second = value.channel() == 2;
    if (value.valueNm() == (second ? -1_250_000 : expected)) {
      right += second ? 0 : 1;
    } else {
      wrong++;
      wrongUntellable += untellable ? 1 : 0;
    }
  }

  static String head() {
    return "| profile | sent | right | lost | wrong | of these a digit or sign for another |\n|---|---|---|---|---|---|";
  }

  String row() {
    return String.format(
        Locale.ROOT,
        "| %s | %d | %d | %d | %d | %d |",
        built.plainName(),
        sent,
        right,
        sent - right,
        wrong,
        wrongUntellable);
  }

  static void table(int frames, long seed, double share) {
    System.out.println(head());
    Arrays.stream(BuiltInProfile.values())
        .forEach(p -> System.out.println(new Noise(p, seed, share).run(frames).row()));
  }
}
