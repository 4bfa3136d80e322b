package org.chordlog.decode;

/** Frames of one length: each place may be the start of one. */
final class LengthFinder implements Finder {
  private final int length;
  private final boolean pauses;

  LengthFinder(int length, boolean pauses) {
    this.length = length;
    this.pauses = pauses;
  }

  @Override
  public int start(byte[] bytes, int from, int to) {
    return from;
  }

  @Override
  public int end(byte[] bytes, int start, int to) {
    return to - start < length ? WAIT : start + length;
  }

  @Override
  public boolean needsPause() {
    return pauses;
  }
}
