package org.chordlog.decode;

import org.chordlog.measure.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * The kinds of decoder; a new one is a class, a row here, its test and a row in
 * src/docs/stations.md.
 */
public enum DecoderKind {
  /** Frames of text: lines, fixed lengths, marked frames, frames between pauses. */
  FRAMES {
    @Override
    Decoder decoder(FrameProfile profile) {
      return new FrameDecoder(
          profile,
          framer(profile.framing(), profile.checksum()),
          new EnvelopeReader(profile),
          Polls.of(profile.polling()));
    }
  },
  /** Frames in which the number is not text: whole numbers, floats, packed decimals. */
  BINARY {
    @Override
    Decoder decoder(FrameProfile profile) {
      return FRAMES.decoder(profile);
    }
  },
  /** Holding or input registers, polled after the Modbus RTU standard. */
  MODBUS_RTU {
    @Override
    Decoder decoder(FrameProfile profile) {
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
  };

  static DecoderKind of(@Nullable BinaryNumber binary, @Nullable ModbusRegisters modbus) {
    return modbus != null ? MODBUS_RTU : binary != null ? BINARY : FRAMES;
  }

  abstract Decoder decoder(FrameProfile profile);

  static Framer framer(Framing framing, Checksum checksum) {
    return switch (framing.kind()) {
      case TERMINATOR -> new LineFramer(framing);
      case IDLE_GAP -> new PauseFramer(framing.maxLength());
      case FIXED_LENGTH -> new SearchFramer(new LengthFinder(framing), framing.maxLength());
      case MARKERS -> new SearchFramer(new MarkerFinder(framing, checksum), framing.maxLength());
    };
  }
}
