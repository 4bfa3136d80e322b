package org.chordlog.web.http;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;

/** Knows whether anything was written. */
final class Begun extends FilterOutputStream {
  private boolean begun;

  Begun(OutputStream out) {
    super(out);
  }

  boolean begun() {
    return begun;
  }

  @Override
  public void write(int b) throws IOException {
    begun = true;
    out.write(b);
  }

  @Override
  public void write(byte[] bytes, int offset, int length) throws IOException {
    begun = true;
    out.write(bytes, offset, length);
  }
}
