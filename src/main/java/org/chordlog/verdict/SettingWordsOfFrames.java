package org.chordlog.verdict;

import java.util.Map;

/** What the fields of a frame profile are called on pages. */
final class SettingWordsOfFrames {
  private final Map<String, SettingWords> all;
  private final Map<String, String> choices;

  private SettingWordsOfFrames(Map<String, SettingWords> all, Map<String, String> choices) {
    this.all = all;
    this.choices = choices;
  }

  static void frames(Map<String, SettingWords> all, Map<String, String> choices) {
    SettingWordsOfFrames words = new SettingWordsOfFrames(all, choices);
    words.whole();
    words.framing();
    words.number();
    words.checksum();
    words.binary();
    words.asked();
  }

  private void say(String key, String label, String unit, String hint) {
    all.put("profile" + key, new SettingWords(label, unit, hint));
  }

  private void choice(String key, String value, String words) {
    choices.put("profile" + key + "=" + value, words);
  }

  /** Values that are words already, or names that have no others. */
  private void themselves(String key, String... values) {
    for (String value : values) {
      choice(key, value, value);
    }
  }

  private void whole() {
    say("", "How its frames are read", "", "");
    say(".kind", "Kind of frames", "", "");
    say(".pattern", "Pattern of a frame", "", "RE2 syntax with the groups value, unit, channel …");
    say(".unit", "Unit", "", "Where frames do not name it");
    themselves(".unit", "mm", "um", "inch");
    say(".units", "Texts that name units", "", "");
    say(".statuses", "Texts that name a state", "", "");
    say(".channels", "Texts that name channels", "", "");
    say(".signs", "Texts of signs", "", "");
    say(".passOver", "Lines that say nothing", "", "One pattern a line");
    say(".sevenBit", "Bit 8 is a parity bit", "", "");
    say(".buttonOnly", "Sent by the data button only", "", "");
  }

  private void framing() {
    say(".framing", "Where a frame begins and ends", "", "");
    say(".framing.kind", "Frames are", "", "");
    choice(".framing.kind", "terminator", "lines");
    choice(".framing.kind", "fixed_length", "of one length");
    choice(".framing.kind", "idle_gap", "between pauses");
    choice(".framing.kind", "markers", "between markers");
    say(".framing.terminator", "End of a line", "", "Left empty: CR, LF or both");
    say(".framing.start", "Start of a frame", "", "");
    say(".framing.end", "End of a frame", "", "");
    say(".framing.length", "Length of a frame", "bytes", "");
    say(".framing.idleMs", "Pause between frames", "ms", "");
    say(".framing.maxLength", "Longest frame", "bytes", "");
  }

  private void number() {
    say(".number", "How numbers are written", "", "");
    say(".number.mark", "Decimal mark", "", "");
    themselves(".number.mark", "point", "comma", "none");
    say(".number.sign", "Sign", "", "");
    themselves(".number.sign", "always", "never");
    choice(".number.sign", "optional", "only where it is needed");
    choice(".number.sign", "after", "behind the number");
    choice(".number.sign", "twos_complement", "two's complement");
    say(".number.integerDigits", "Digits before the mark", "", "Left empty: any count");
    say(".number.decimals", "Decimals", "", "Left empty: any count, but steady");
    say(".number.scale", "One count is", "", "Of the unit");
    say(".number.base", "Digits are", "", "");
    themselves(".number.base", "decimal", "hexadecimal");
    say(".number.exponent", "A power of ten follows", "", "");
    say(".number.decimalsVary", "Decimals come and go", "", "");
    say(".number.zeroOmitted", "No zero before the mark", "", "");
  }

  private void checksum() {
    say(".checksum", "Check of a frame", "", "");
    say(".checksum.kind", "Check", "", "");
    themselves(".checksum.kind", "none", "sum");
    choice(".checksum.kind", "xor", "exclusive or");
    choice(".checksum.kind", "sum_negated", "negated sum");
    choice(".checksum.kind", "crc16", "CRC-16");
    choice(".checksum.kind", "crc_ccitt", "CRC-CCITT, start FFFF");
    choice(".checksum.kind", "crc_ccitt_zero", "CRC-CCITT, start 0");
    say(".checksum.encoding", "Check is written", "", "");
    choice(".checksum.encoding", "hex", "in hexadecimal");
    choice(".checksum.encoding", "raw", "as bytes");
    choice(".checksum.encoding", "decimal", "in decimal");
    say(".checksum.separator", "Before the check", "", "");
    say(".checksum.afterEnd", "Check comes behind the end", "", "");
    say(".checksum.coversStart", "Check covers the start", "", "");
    say(".checksum.coversEnd", "Check covers the end", "", "");
    say(".checksum.highFirst", "Check sends its high byte first", "", "");
  }

  private void binary() {
    say(".binary", "Number that is not text", "", "");
    say(".binary.type", "Type of number", "", "");
    themselves(".binary.type", "int16", "uint16", "int24", "uint24", "int32", "uint32", "float32");
    choice(".binary.type", "packed_decimal", "packed decimal");
    say(".binary.offset", "Bytes before the number", "", "");
    say(".binary.bytes", "Bytes of a packed decimal", "", "");
    say(".binary.order", "Byte order", "", "");
    choice(".binary.order", "high_first", "high byte first");
    choice(".binary.order", "low_first", "low byte first");
    say(".binary.signDigit", "Digit of the sign", "", "");
    themselves(".binary.signDigit", "none", "first", "last");
    say(".binary.minus", "Minus is", "", "");
  }

  private void asked() {
    say(".polling", "Request", "", "");
    say(".polling.request", "Sent to ask for a value", "", "");
    say(".polling.intervalMs", "Between two requests", "ms", "");
    say(".modbus", "Modbus registers", "", "");
    say(".modbus.device", "Device address", "", "1 to 247");
    say(".modbus.table", "Registers", "", "");
    themselves(".modbus.table", "holding", "input");
    say(".modbus.register", "First register", "", "Counted from 0");
    say(".modbus.type", "Type of number", "", "");
    themselves(".modbus.type", "int16", "uint16", "int32", "uint32", "float32");
    say(".modbus.lowWordFirst", "Low word first", "", "");
    say(".modbus.intervalMs", "Between two requests", "ms", "");
    say(".modbus.timeoutMs", "Wait for an answer", "ms", "");
  }
}
