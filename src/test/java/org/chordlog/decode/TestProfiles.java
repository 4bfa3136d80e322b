package org.chordlog.decode;

/** Profiles that only tests need. */
final class TestProfiles {
  private TestProfiles() {}

  static FrameProfile sevenBit(FrameProfile p) {
    return p.withSevenBit(true);
  }
}
