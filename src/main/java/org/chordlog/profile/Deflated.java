package org.chordlog.profile;

import java.util.Arrays;
import java.util.zip.DataFormatException;
import java.util.zip.Deflater;
import java.util.zip.Inflater;
import org.chordlog.measure.BadInput;

/** Whole numbers, small ones in few bytes, deflated, with the checksum of zlib (RFC 1950). */
final class Deflated {
  private static final int MOST_BYTES = 1 << 22;

  private Deflated() {}

  /** Seven bits a byte, least first; the sign goes into the lowest bit. */
  static final class Writer {
    private byte[] bytes = new byte[1024];
    private int length;

    void put(long value) {
      long rest = (value << 1) ^ (value >> 63);
      while ((rest & ~0x7FL) != 0) {
        put((byte) (rest | 0x80));
        rest >>>= 7;
      }
      put((byte) rest);
    }

    private void put(byte b) {
      if (length == bytes.length) {
        bytes = Arrays.copyOf(bytes, 2 * length);
      }
      bytes[length++] = b;
    }

    byte[] bytes() {
      Deflater deflater = new Deflater(Deflater.BEST_COMPRESSION);
      deflater.setInput(bytes, 0, length);
      deflater.finish();
      byte[] out = new byte[length + length / 1000 + 64];
      int size = deflater.deflate(out);
      deflater.end();
      return Arrays.copyOf(out, size);
    }
  }

  /** Reads them again; refuses what ends too early. */
  static final class Reader {
    private final byte[] bytes;
    private int at;

    Reader(byte[] packed) {
      bytes = inflated(packed);
    }

    private static byte[] inflated(byte[] packed) {
      Inflater inflater = new Inflater();
      try {
        inflater.setInput(packed);
        byte[] out = new byte[4096];
        int size = inflater.inflate(out);
        while (!inflater.finished() && size == out.length && size < MOST_BYTES) {
          out = Arrays.copyOf(out, 2 * size);
          size += inflater.inflate(out, size, out.length - size);
        }
        if (inflater.finished()) {
          return Arrays.copyOf(out, size);
        }
      } catch (DataFormatException e) {
        // refused below, as what ends too early
      } finally {
        inflater.end();
      }
      throw new BadInput("profile", packed.length + " bytes", "are damaged", "a packed profile");
    }

    long next() {
      long value = 0;
      for (int shift = 0; shift < 64; shift += 7) {
        byte b = one();
        value |= (long) (b & 0x7F) << shift;
        if (b >= 0) {
          break;
        }
      }
      return (value >>> 1) ^ -(value & 1);
    }

    /** A number of things to come, each of which takes at least a byte. */
    int size() {
      long size = next();
      if (size < 0 || size > bytes.length) {
        throw cutOff();
      }
      return (int) size;
    }

    private byte one() {
      if (at == bytes.length) {
        throw cutOff();
      }
      return bytes[at++];
    }

    private BadInput cutOff() {
      return new BadInput(
          "profile", bytes.length + " bytes", "end too early", "a whole packed profile");
    }
  }
}
