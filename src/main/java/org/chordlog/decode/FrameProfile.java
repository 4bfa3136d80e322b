package org.chordlog.decode;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.chordlog.measure.Check;
import org.chordlog.measure.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * How the bytes of an indicator become values: plain data, as the station file has it.
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
 * @param signs what a sign group of that text means, beside + and -
 * @param passOver patterns of whole frames (RE2 syntax) that say nothing, as headings
 * @param polling request of an indicator that answers; null: it sends by itself
 * @param binary of {@link DecoderKind#BINARY}, else null
 * @param modbus of {@link DecoderKind#MODBUS_RTU}, else null
 */
public record FrameProfile(
    DecoderKind kind,
    Framing framing,
    String pattern,
    NumberForm number,
    @Nullable LengthUnit unit,
    Map<String, LengthUnit> units,
    Map<String, StatusMeaning> statuses,
    Map<String, Integer> channels,
    Map<String, SignMeaning> signs,
    List<String> passOver,
    Checksum checksum,
    boolean sevenBit,
    boolean buttonOnly,
    @Nullable Polling polling,
    @Nullable BinaryNumber binary,
    @Nullable ModbusRegisters modbus) {

  /** Null (not given) takes the default. */
  public FrameProfile {
    kind = kind == null ? DecoderKind.of(binary, modbus) : kind;
    framing = framing == null ? Framing.LINES : framing;
    pattern = pattern == null ? "" : pattern;
    number = number == null ? NumberForm.DECIMAL : number;
    units = units == null ? Map.of() : Map.copyOf(units);
    statuses = statuses == null ? Map.of() : Map.copyOf(statuses);
    channels = channels == null ? Map.of() : Map.copyOf(channels);
    signs = signs == null ? Map.of() : Map.copyOf(signs);
    passOver = passOver == null ? List.of() : List.copyOf(passOver);
    checksum = checksum == null ? Checksum.NONE : checksum;
    channels.values().forEach(c -> Check.within("channels", c, 0, ProfileChannels.MOST));
    FramePattern.check(pattern, unit);
    passOver.forEach(FramePattern::compile);
    unit =
        switch (kind) {
          case MODBUS_RTU -> ProfileCheck.modbus(unit, modbus);
          case BINARY -> ProfileCheck.binary(unit, binary, framing, checksum);
          case FRAMES -> ProfileCheck.frames(unit, framing, pattern, number, checksum);
        };
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
      Map<String, StatusMeaning> statuses,
      Checksum checksum) {
    return new FrameProfileBuilder()
        .framing(framing)
        .pattern(pattern)
        .number(number)
        .unit(unit)
        .statuses(statuses)
        .checksum(checksum)
        .build();
  }

  /** Registers in that unit; {@code number} gives the scale. */
  public static FrameProfile of(ModbusRegisters modbus, NumberForm number, LengthUnit unit) {
    return new FrameProfileBuilder().modbus(modbus).number(number).unit(unit).build();
  }

  /** A builder that starts from this profile. */
  public FrameProfileBuilder toBuilder() {
    return new FrameProfileBuilder(this);
  }

  public FrameProfile withPolling(@Nullable Polling request) {
    return toBuilder().polling(request).build();
  }

  /** The same with bit 8 cleared as a parity bit, or not. */
  FrameProfile withSevenBit(boolean masked) {
    return toBuilder().sevenBit(masked).build();
  }

  /** The same where each frame is sent by the indicator's data button. */
  public FrameProfile onButtonOnly() {
    return toBuilder().buttonOnly(true).build();
  }

  /** Whether a value of that channel may come. */
  public boolean mayGive(int channel) {
    return possible().contains(channel);
  }

  private Set<Integer> possible() {
    return ProfileChannels.of(kind, pattern, channels.values());
  }

  /** The channels that may come. */
  public String channelsInWords() {
    return ProfileChannels.inWords(possible());
  }

  /** The one channel that comes, or null where there may be several. */
  public @Nullable Integer onlyChannel() {
    Set<Integer> possible = possible();
    return possible.size() == 1 ? possible.iterator().next() : null;
  }

  /** Whether the indicator sends its value only when it is asked for it. */
  public boolean sendsWhenAsked() {
    return switch (kind) {
      case MODBUS_RTU -> true;
      case FRAMES, BINARY -> polling != null;
    };
  }

  /** Whether a frame that lost its beginning can't be taken for a whole one. */
  boolean startIsCertain() {
    return !kind.isText()
        || checksum.kind() != Checksum.Kind.NONE
        || framing.kind() == Framing.Kind.MARKERS
        || (framing.kind() == Framing.Kind.FIXED_LENGTH && framing.idleMs() == 0)
        || signTellsStart();
  }

  private boolean signTellsStart() {
    boolean fixedHex = number.sign() == NumberForm.Sign.TWOS_COMPLEMENT;
    return (number.sign() == NumberForm.Sign.ALWAYS || fixedHex)
        && !FramePattern.has(pattern, "sign")
        && !FramePattern.has(pattern, "channel");
  }
}
