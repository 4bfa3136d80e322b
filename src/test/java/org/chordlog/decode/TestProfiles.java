package org.chordlog.decode;

/** Profiles that only tests need. */
final class TestProfiles {
  private TestProfiles() {}

  static FrameProfile sevenBit(FrameProfile p) {
    return new FrameProfile(
        p.kind(),
        p.framing(),
        p.pattern(),
        p.number(),
        p.unit(),
        p.units(),
        p.statuses(),
        p.channels(),
        p.checksum(),
        true,
        p.buttonOnly(),
        p.reversed(),
        p.polling(),
        p.modbus());
  }
}
