package org.chordlog.verdict;

/** What the fields of a frame profile are called on pages. */
final class SettingWordsOfFrames {
  /** As the tables of {@link SettingWords}. */
  static final String TABLE =
      """
      profile | How its frames are read
      profile.kind | Kind of frames
      profile.pattern | Pattern of a frame | | RE2 syntax with the groups value, unit, channel …
      profile.unit | Unit | | Where frames do not name it
        mm, um, inch
      profile.units | Texts that name units
      profile.statuses | Texts that name a state
      profile.channels | Texts that name channels
      profile.signs | Texts of signs
      profile.passOver | Lines that say nothing | | One pattern a line
      profile.sevenBit | Bit 8 is a parity bit
      profile.buttonOnly | Sent by the data button only
      profile.framing | Where a frame begins and ends
      profile.framing.kind | Frames are
        terminator = lines
        fixed_length = of one length
        idle_gap = between pauses
        markers = between markers
      profile.framing.terminator | End of a line | | Left empty: CR, LF or both
      profile.framing.start | Start of a frame
      profile.framing.end | End of a frame
      profile.framing.length | Length of a frame | bytes
      profile.framing.idleMs | Pause between frames | ms
      profile.framing.maxLength | Longest frame | bytes
      profile.number | How numbers are written
      profile.number.mark | Decimal mark
        point, comma, none
      profile.number.sign | Sign
        always, never
        optional = only where it is needed
        after = behind the number
        twos_complement = two's complement
      profile.number.integerDigits | Digits before the mark | | Left empty: any count
      profile.number.decimals | Decimals | | Left empty: any count, but steady
      profile.number.scale | One count is | | Of the unit
      profile.number.base | Digits are
        decimal, hexadecimal
      profile.number.exponent | A power of ten follows
      profile.number.decimalsVary | Decimals come and go
      profile.number.zeroOmitted | No zero before the mark
      profile.checksum | Check of a frame
      profile.checksum.kind | Check
        none, sum
        xor = exclusive or
        sum_negated = negated sum
        crc16 = CRC-16
        crc_ccitt = CRC-CCITT, start FFFF
        crc_ccitt_zero = CRC-CCITT, start 0
      profile.checksum.encoding | Check is written
        hex = in hexadecimal
        raw = as bytes
        decimal = in decimal
      profile.checksum.separator | Before the check
      profile.checksum.afterEnd | Check comes behind the end
      profile.checksum.coversStart | Check covers the start
      profile.checksum.coversEnd | Check covers the end
      profile.checksum.highFirst | Check sends its high byte first
      profile.binary | Number that is not text
      profile.binary.type | Type of number
        int16, uint16, int24, uint24, int32, uint32, float32
        packed_decimal = packed decimal
      profile.binary.offset | Bytes before the number
      profile.binary.bytes | Bytes of a packed decimal
      profile.binary.order | Byte order
        high_first = high byte first
        low_first = low byte first
      profile.binary.signDigit | Digit of the sign
        none, first, last
      profile.binary.minus | Minus is
      profile.polling | Request
      profile.polling.request | Sent to ask for a value
      profile.polling.intervalMs | Between two requests | ms
      profile.modbus | Modbus registers
      profile.modbus.device | Device address | | 1 to 247
      profile.modbus.table | Registers
        holding, input
      profile.modbus.register | First register | | Counted from 0
      profile.modbus.type | Type of number
        int16, uint16, int32, uint32, float32
      profile.modbus.lowWordFirst | Low word first
      profile.modbus.intervalMs | Between two requests | ms
      profile.modbus.timeoutMs | Wait for an answer | ms
      """;

  private SettingWordsOfFrames() {}
}
