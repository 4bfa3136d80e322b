package org.chordlog.store.sql;

import java.io.ByteArrayOutputStream;
import java.util.zip.DataFormatException;
import java.util.zip.Deflater;
import java.util.zip.Inflater;

/** Raw deflate (RFC 1951) of small blocks. */
final class Deflation {
  private static final int CHUNK = 4096;

  private Deflation() {}

  static byte[] deflate(byte[] plain) {
    Deflater deflater = new Deflater(Deflater.DEFAULT_COMPRESSION, true);
    try {
      deflater.setInput(plain);
      deflater.finish();
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      byte[] chunk = new byte[CHUNK];
      while (!deflater.finished()) {
        out.write(chunk, 0, deflater.deflate(chunk));
      }
      return out.toByteArray();
    } finally {
      deflater.end();
    }
  }

  static byte[] inflate(byte[] packed) {
    Inflater inflater = new Inflater(true);
    try {
      inflater.setInput(packed);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      byte[] chunk = new byte[CHUNK];
      while (!inflater.finished()) {
        int count = inflater.inflate(chunk);
        if (count == 0 && inflater.needsInput()) {
          throw new IllegalStateException("a trace block ends early");
        }
        out.write(chunk, 0, count);
      }
      return out.toByteArray();
    } catch (DataFormatException e) {
      throw new IllegalStateException("a trace block is damaged", e);
    } finally {
      inflater.end();
    }
  }
}
