package org.chordlog.decode;

import java.math.BigDecimal;
import java.util.function.Consumer;
import org.chordlog.measure.LengthUnit;
import org.jspecify.annotations.Nullable;

/** Reads the registers of an answer. */
final class ModbusReader implements FrameReader {
  private static final int DATA = 3;
  private final ModbusRegisters registers;
  private final byte[] request;
  private final Nanometres nanometres;
  private final LengthUnit unit;
  private final boolean button;

  ModbusReader(FrameProfile profile, LengthUnit unit, ModbusRegisters registers, byte[] request) {
    this.registers = registers;
    this.request = request;
    nanometres = new Nanometres(profile.number().scale());
    this.unit = unit;
    button = profile.buttonOnly();
  }

  @Override
  public @Nullable String read(Frame frame, Consumer<Decoded> sink) {
    if (!ModbusFrames.crcAgrees(frame.bytes, frame.from, frame.to)) {
      return "check does not agree";
    }
    if (frame.to - frame.from == request.length) {
      return null;
    }
    int function = frame.bytes[frame.from + 1] & 0xFF;
    if (function == registers.table().function()) {
      return value(frame, sink);
    }
    String text = ModbusFrames.exception(frame.bytes[frame.from + 2] & 0xFF);
    sink.accept(new Decoded.Status(frame.nanos, frame.raw(), Decoded.Status.Kind.ERROR, text));
    return null;
  }

  private @Nullable String value(Frame frame, Consumer<Decoded> sink) {
    int high = word(frame, registers.lowWordFirst() ? 1 : 0);
    int low = word(frame, registers.lowWordFirst() ? 0 : 1);
    int both = high << 16 | low;
    if (registers.type() == ModbusRegisters.Type.FLOAT32
        && !Float.isFinite(Float.intBitsToFloat(both))) {
      sink.accept(
          new Decoded.Status(frame.nanos, frame.raw(), Decoded.Status.Kind.ERROR, "not a number"));
      return null;
    }
    long nm = nanometres.of(number(both, word(frame, 0)), unit);
    if (nm == Nanometres.REFUSED) {
      return "beyond 5000 kilometres";
    }
    sink.accept(new Decoded.Value(frame.nanos, frame.raw(), nm, unit, 0, button));
    return null;
  }

  /** A float as the shortest decimal that is that float: what the indicator shows. */
  private BigDecimal number(int both, int first) {
    return switch (registers.type()) {
      case INT16 -> BigDecimal.valueOf((short) first);
      case UINT16 -> BigDecimal.valueOf(first);
      case INT32 -> BigDecimal.valueOf(both);
      case UINT32 -> BigDecimal.valueOf(both & 0xFFFF_FFFFL);
      case FLOAT32 -> new BigDecimal(Float.toString(Float.intBitsToFloat(both)));
    };
  }

  /** The register of that index, or 0 where the answer has only one. */
  private int word(Frame frame, int index) {
    if (index >= registers.type().registers()) {
      return 0;
    }
    int at = frame.from + DATA + 2 * index;
    return (frame.bytes[at] & 0xFF) << 8 | (frame.bytes[at + 1] & 0xFF);
  }
}
