package org.chordlog.decode;

import java.util.List;
import java.util.Map;
import org.chordlog.measure.LengthUnit;
import org.jspecify.annotations.Nullable;

/** Builds a {@link FrameProfile}; starts as plain lines of decimal numbers without a unit. */
public final class FrameProfileBuilder {
  private DecoderKind kind = DecoderKind.FRAMES;
  private Framing framing = Framing.LINES;
  private String pattern = "";
  private NumberForm number = NumberForm.DECIMAL;
  private @Nullable LengthUnit unit;
  private Map<String, LengthUnit> units = Map.of();
  private Map<String, StatusMeaning> statuses = Map.of();
  private Map<String, Integer> channels = Map.of();
  private Map<String, SignMeaning> signs = Map.of();
  private List<String> passOver = List.of();
  private Checksum checksum = Checksum.NONE;
  private boolean sevenBit;
  private boolean buttonOnly;
  private @Nullable Polling polling;
  private @Nullable BinaryNumber binary;
  private @Nullable ModbusRegisters modbus;

  public FrameProfileBuilder() {}

  FrameProfileBuilder(FrameProfile from) {
    kind = from.kind();
    framing = from.framing();
    pattern = from.pattern();
    number = from.number();
    unit = from.unit();
    units = from.units();
    statuses = from.statuses();
    channels = from.channels();
    signs = from.signs();
    passOver = from.passOver();
    checksum = from.checksum();
    sevenBit = from.sevenBit();
    buttonOnly = from.buttonOnly();
    polling = from.polling();
    binary = from.binary();
    modbus = from.modbus();
  }

  public FrameProfileBuilder framing(Framing value) {
    framing = value;
    return this;
  }

  public FrameProfileBuilder pattern(String value) {
    pattern = value;
    return this;
  }

  public FrameProfileBuilder number(NumberForm value) {
    number = value;
    return this;
  }

  /** Null: each frame names its unit. */
  public FrameProfileBuilder unit(@Nullable LengthUnit value) {
    unit = value;
    return this;
  }

  public FrameProfileBuilder units(Map<String, LengthUnit> value) {
    units = value;
    return this;
  }

  public FrameProfileBuilder statuses(Map<String, StatusMeaning> value) {
    statuses = value;
    return this;
  }

  public FrameProfileBuilder channels(Map<String, Integer> value) {
    channels = value;
    return this;
  }

  public FrameProfileBuilder signs(Map<String, SignMeaning> value) {
    signs = value;
    return this;
  }

  public FrameProfileBuilder passOver(List<String> value) {
    passOver = value;
    return this;
  }

  public FrameProfileBuilder checksum(Checksum value) {
    checksum = value;
    return this;
  }

  public FrameProfileBuilder sevenBit(boolean value) {
    sevenBit = value;
    return this;
  }

  public FrameProfileBuilder buttonOnly(boolean value) {
    buttonOnly = value;
    return this;
  }

  /** Null: it sends by itself. */
  public FrameProfileBuilder polling(@Nullable Polling value) {
    polling = value;
    return this;
  }

  /** Null: the number is text. */
  public FrameProfileBuilder binary(@Nullable BinaryNumber value) {
    binary = value;
    kind = DecoderKind.of(binary, modbus);
    return this;
  }

  /** Null: not Modbus. */
  public FrameProfileBuilder modbus(@Nullable ModbusRegisters value) {
    modbus = value;
    kind = DecoderKind.of(binary, modbus);
    return this;
  }

  /** The profile; {@link org.chordlog.measure.BadInput} where it could not be read. */
  public FrameProfile build() {
    return new FrameProfile(
        kind,
        framing,
        pattern,
        number,
        unit,
        units,
        statuses,
        channels,
        signs,
        passOver,
        checksum,
        sevenBit,
        buttonOnly,
        polling,
        binary,
        modbus);
  }
}
