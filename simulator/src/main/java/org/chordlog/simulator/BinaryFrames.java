package org.chordlog.simulator;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Locale;
import org.chordlog.decode.BuiltInProfile;
import org.chordlog.decode.Checksum;
import org.chordlog.decode.Sums;

/** Binary frames as an indicator of each such built-in profile sends them. */
final class BinaryFrames {
  private static final byte[] START = {(byte) 0xAA, 0x55};

  private BinaryFrames() {}

  static byte[] frame(BuiltInProfile profile, double mm) {
    int microns = (int) Math.round(mm * 1000);
    return switch (profile) {
      case BINARY_INT32_MICRONS -> checked(profile, low().putInt(microns).array());
      case BINARY_INT24_MICRONS ->
          checked(
              profile, Arrays.copyOfRange(ByteBuffer.allocate(4).putInt(microns).array(), 1, 4));
      case BINARY_FLOAT_MM -> checked(profile, low().putFloat((float) mm).array());
      case PACKED_DECIMAL_MICRONS -> checked(profile, packed(microns));
      default -> throw new IllegalArgumentException(profile + " is no binary profile");
    };
  }

  private static ByteBuffer low() {
    return ByteBuffer.allocate(4).order(ByteOrder.LITTLE_ENDIAN);
  }

  private static byte[] packed(int microns) {
    String digits = String.format(Locale.ROOT, "%07d", Math.abs(microns));
    return HexFormat.of().parseHex((microns < 0 ? "F" : "0") + digits);
  }

  /** Start bytes, number, check over both, high byte first. */
  private static byte[] checked(BuiltInProfile profile, byte[] number) {
    Checksum.Kind kind = profile.profile().checksum().kind();
    int covered = START.length + number.length;
    byte[] frame = Arrays.copyOf(START, profile.profile().framing().length());
    System.arraycopy(number, 0, frame, START.length, number.length);
    int check = Sums.of(kind, frame, 0, covered);
    for (int at = frame.length - 1; at >= covered; at--) {
      frame[at] = (byte) check;
      check >>>= 8;
    }
    return frame;
  }
}
