package org.chordlog.decode;

import java.util.Optional;
import org.chordlog.measure.Check;

/**
 * Registers that follow each other, asked for at once, after MODBUS Application Protocol V1.1b3,
 * sections 6.3 and 6.4.
 */
public record RegisterBlock(int device, ModbusRegisters.Table table, int first, int count) {
  public static final int MOST = 60;

  public RegisterBlock {
    Check.within("device", device, 1, 247);
    Check.within("count", count, 1, MOST);
    Check.within("first", first, 0, 0x10000 - count);
  }

  public byte[] request() {
    return ModbusFrames.withCrc(device, table.function(), first >>> 8, first & 0xFF, 0, count);
  }

  /** The registers of an answer to this request among those bytes; empty while there is none. */
  public Optional<int[]> words(byte[] bytes) {
    int length = 2 * count;
    for (int at = 0; at + length + 5 <= bytes.length; at++) {
      boolean head =
          (bytes[at] & 0xFF) == device
              && bytes[at + 1] == table.function()
              && (bytes[at + 2] & 0xFF) == length;
      if (head && ModbusFrames.crcAgrees(bytes, at, at + length + 5)) {
        return Optional.of(words(bytes, at + 3));
      }
    }
    return Optional.empty();
  }

  private int[] words(byte[] bytes, int from) {
    int[] words = new int[count];
    for (int i = 0; i < count; i++) {
      words[i] = (bytes[from + 2 * i] & 0xFF) << 8 | (bytes[from + 2 * i + 1] & 0xFF);
    }
    return words;
  }

  /** Whether the device answers that it has no such registers. */
  public boolean refused(byte[] bytes) {
    for (int at = 0; at + ModbusFrames.EXCEPTION_LENGTH <= bytes.length; at++) {
      boolean head =
          (bytes[at] & 0xFF) == device && (bytes[at + 1] & 0xFF) == (table.function() | 0x80);
      if (head && ModbusFrames.crcAgrees(bytes, at, at + ModbusFrames.EXCEPTION_LENGTH)) {
        return true;
      }
    }
    return false;
  }
}
