package org.chordlog.decode;

import org.chordlog.measure.LengthUnit;

/** Makes the decoder that a profile describes. */
public final class Decoders {
  private Decoders() {}

  /** A new one, which has seen nothing. */
  public static Decoder of(FrameProfile profile) {
    return switch (profile.kind()) {
      case FRAMES, BINARY -> frames(profile);
      case MODBUS_RTU -> registers(profile);
    };
  }

  private static Decoder frames(FrameProfile profile) {
    return new FrameDecoder(
        profile,
        framer(profile.framing(), profile.checksum()),
        new EnvelopeReader(profile),
        Polls.of(profile.polling()));
  }

  private static Decoder registers(FrameProfile profile) {
    ModbusRegisters registers = profile.modbus();
    LengthUnit unit = profile.unit();
    if (registers == null || unit == null) {
      throw new IllegalStateException("a profile that was not checked");
    }
    byte[] request = ModbusFrames.request(registers);
    Framer framer = new SearchFramer(new ModbusFinder(registers, request), ModbusFrames.LONGEST);
    return new FrameDecoder(
        profile,
        framer,
        new ModbusReader(profile, unit, registers, request),
        new Polls(request, registers.intervalMs(), registers.timeoutMs()));
  }

  static Framer framer(Framing framing, Checksum checksum) {
    return switch (framing.kind()) {
      case TERMINATOR -> new LineFramer(framing);
      case IDLE_GAP -> new PauseFramer(framing.maxLength());
      case FIXED_LENGTH -> new SearchFramer(new LengthFinder(framing), framing.maxLength());
      case MARKERS -> new SearchFramer(new MarkerFinder(framing, checksum), framing.maxLength());
    };
  }
}
