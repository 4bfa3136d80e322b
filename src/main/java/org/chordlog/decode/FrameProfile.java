package org.chordlog.decode;

import java.util.Map;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * How the bytes of an indicator become values: plain data, as it stands in the station file.
 *
 * @param pattern of a whole frame (RE2 syntax) with the named groups value, sign, unit, status,
 *     channel, button, reversed; value1, sign1… for several channels in a frame; empty: a number
 *     with an optional unit behind it
 * @param unit of the value; null: each frame says it
 * @param units texts for units beside mm, um, in, inch and "
 * @param statuses what a status group, or a whole frame, of that text means
 * @param channels numbers of channels that are not sent as digits
 * @param sevenBit whether bit 8 is a parity bit to be cleared
 * @param buttonOnly whether each frame is sent by the indicator's data button
 * @param reversed whether the indicator counts down as its plunger moves in
 * @param polling request of an indicator that answers; null: it sends by itself
 * @param modbus of {@link DecoderKind#MODBUS_RTU}, else null
 */
public record FrameProfile(
    DecoderKind kind,
    Framing framing,
    String pattern,
    NumberForm number,
    @Nullable LengthUnit unit,
    Map<String, LengthUnit> units,
    Map<String, Meaning> statuses,
    Map<String, Integer> channels,
    Checksum checksum,
    boolean sevenBit,
    boolean buttonOnly,
    boolean reversed,
    @Nullable Polling polling,
    @Nullable ModbusRegisters modbus) {

  /** Null (not given) takes the default. */
  public FrameProfile {
    kind = kind == null ? (modbus == null ? DecoderKind.FRAMES : DecoderKind.MODBUS_RTU) : kind;
    framing = framing == null ? Framing.LINES : framing;
    pattern = pattern == null ? "" : pattern;
    number = number == null ? NumberForm.DECIMAL : number;
    units = units == null ? Map.of() : Map.copyOf(units);
    statuses = statuses == null ? Map.of() : Map.copyOf(statuses);
    channels = channels == null ? Map.of() : Map.copyOf(channels);
    checksum = checksum == null ? Checksum.NONE : checksum;
    channels.values().forEach(c -> Check.within("channels", c, 0, ValueReader.MOST_CHANNEL));
    FramePattern.check(pattern, unit);
    if (kind == DecoderKind.MODBUS_RTU) {
      checkModbus(unit, modbus);
    } else {
      ProfileCheck.framing(framing, pattern, number, checksum);
    }
  }

  private static void checkModbus(@Nullable LengthUnit unit, @Nullable ModbusRegisters registers) {
    if (registers == null) {
      throw new BadInput("modbus", "none", "is missing", "the registers of a MODBUS_RTU profile");
    }
    if (unit == null) {
      throw new BadInput("unit", "none", "is missing", "MM, UM or INCH: registers have no unit");
    }
  }

  /** Lines of one number as {@code number} says, in that unit. */
  public static FrameProfile lines(NumberForm number, @Nullable LengthUnit unit) {
    return of(Framing.LINES, "", number, unit, Map.of(), Checksum.NONE);
  }

  /** Frames that need no more than these to be told. */
  public static FrameProfile of(
      Framing framing,
      String pattern,
      NumberForm number,
      @Nullable LengthUnit unit,
      Map<String, Meaning> statuses,
      Checksum checksum) {
    return new FrameProfile(
        DecoderKind.FRAMES,
        framing,
        pattern,
        number,
        unit,
        Map.of(),
        statuses,
        Map.of(),
        checksum,
        false,
        false,
        false,
        null,
        null);
  }

  /** Registers in that unit; {@code number} gives the scale. */
  public static FrameProfile of(ModbusRegisters modbus, NumberForm number, LengthUnit unit) {
    return new FrameProfile(
        DecoderKind.MODBUS_RTU,
        Framing.LINES,
        "",
        number,
        unit,
        Map.of(),
        Map.of(),
        Map.of(),
        Checksum.NONE,
        false,
        false,
        false,
        null,
        modbus);
  }

  public FrameProfile withPolling(@Nullable Polling request) {
    return new FrameProfile(
        kind,
        framing,
        pattern,
        number,
        unit,
        units,
        statuses,
        channels,
        checksum,
        sevenBit,
        buttonOnly,
        reversed,
        request,
        modbus);
  }

  /** The same with bit 8 cleared as a parity bit, or not. */
  FrameProfile withSevenBit(boolean masked) {
    return new FrameProfile(
        kind,
        framing,
        pattern,
        number,
        unit,
        units,
        statuses,
        channels,
        checksum,
        masked,
        buttonOnly,
        reversed,
        polling,
        modbus);
  }

  /** The same where each frame is sent by the indicator's data button. */
  public FrameProfile onButtonOnly() {
    return new FrameProfile(
        kind, framing, pattern, number, unit, units, statuses, channels, checksum, sevenBit, true,
        reversed, polling, modbus);
  }

  /** A new decoder for these frames. */
  public Decoder decoder() {
    return kind.decoder(this);
  }

  /** Whether a frame that lost its beginning can't be taken for a whole one. */
  boolean startIsCertain() {
    return kind == DecoderKind.MODBUS_RTU
        || checksum.kind() != Checksum.Kind.NONE
        || framing.kind() == Framing.Kind.MARKERS
        || (framing.kind() == Framing.Kind.FIXED_LENGTH && framing.idleMs() == 0)
        || signTellsStart();
  }

  private boolean signTellsStart() {
    return number.sign() == NumberForm.Sign.ALWAYS
        && !FramePattern.has(pattern, "sign")
        && !FramePattern.has(pattern, "channel");
  }
}
