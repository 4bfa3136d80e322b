package org.chordlog.simulator;

import java.util.Arrays;
import java.util.function.LongSupplier;
import org.chordlog.decode.ModbusFrames;

/**
 * A Modbus RTU slave of address 1 whose holding registers 0 and 1 are the indicator's value; any
 * other request is answered by the exception the standard names (Modbus application protocol
 * V1.1b3, section 7), and one with a wrong check not at all.
 */
final class SlaveDevice implements Listener {
  private static final int ADDRESS = 1;
  private static final int READ_HOLDING = 3;
  private static final int LENGTH = 8;
  private static final int ILLEGAL_FUNCTION = 1;
  private static final int ILLEGAL_ADDRESS = 2;

  private final FrameWriter writer;
  private byte[] pending = new byte[0];

  SlaveDevice(FrameWriter writer) {
    this.writer = writer;
  }

  @Override
  public byte[] answer(byte[] received, LongSupplier valueNm) {
    byte[] all = Arrays.copyOf(pending, pending.length + received.length);
    System.arraycopy(received, 0, all, pending.length, received.length);
    int from = 0;
    byte[] answer = new byte[0];
    while (all.length - from >= LENGTH) {
      if (ModbusFrames.crcAgrees(all, from, from + LENGTH)) {
        answer = reply(Arrays.copyOfRange(all, from, from + LENGTH), valueNm);
        from += LENGTH;
      } else {
        from++;
      }
    }
    pending = Arrays.copyOfRange(all, from, all.length);
    return answer;
  }

  private byte[] reply(byte[] request, LongSupplier valueNm) {
    if (request[0] != ADDRESS) {
      return new byte[0];
    }
    if (request[1] != READ_HOLDING) {
      return ModbusFrames.withCrc(ADDRESS, (request[1] & 0x7F) | 0x80, ILLEGAL_FUNCTION);
    }
    boolean theValue = request[2] == 0 && request[3] == 0 && request[4] == 0 && request[5] == 2;
    return theValue
        ? writer.frame(valueNm.getAsLong(), false)
        : ModbusFrames.withCrc(ADDRESS, READ_HOLDING | 0x80, ILLEGAL_ADDRESS);
  }
}
