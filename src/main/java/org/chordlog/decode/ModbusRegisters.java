package org.chordlog.decode;

import org.chordlog.measure.Check;

/**
 * Where an indicator keeps its value, after the Modbus application protocol.
 *
 * @param device address on the line, 1 to 247
 * @param table which function reads it: 3 (holding) or 4 (input)
 * @param register number in the frame, counted from 0
 * @param type how the registers make a number; the profile's {@code number.scale} applies
 * @param lowWordFirst whether the first of two registers is the low word
 * @param intervalMs between two requests; 0: 100
 * @param timeoutMs after which an unanswered request is given up; 0: 500
 */
public record ModbusRegisters(
    int device,
    Table table,
    int register,
    Type type,
    boolean lowWordFirst,
    int intervalMs,
    int timeoutMs) {

  /** Register tables with their function codes. */
  public enum Table {
    HOLDING(3),
    INPUT(4);

    final int function;

    Table(int function) {
      this.function = function;
    }

    public int function() {
      return function;
    }
  }

  /** Number types; FLOAT32 after IEEE 754. */
  public enum Type {
    INT16(1),
    UINT16(1),
    INT32(2),
    UINT32(2),
    FLOAT32(2);

    final int registers;

    Type(int registers) {
      this.registers = registers;
    }

    public int registers() {
      return registers;
    }
  }

  /** Null and 0 (not given) take the default. */
  public ModbusRegisters {
    device = device == 0 ? 1 : device;
    table = table == null ? Table.HOLDING : table;
    type = type == null ? Type.INT32 : type;
    intervalMs = intervalMs == 0 ? 100 : intervalMs;
    timeoutMs = timeoutMs == 0 ? 500 : timeoutMs;
    Check.within("device", device, 1, 247);
    Check.within("register", register, 0, 0x10000 - type.registers);
    Check.within("intervalMs", intervalMs, 1, 60_000);
    Check.within("timeoutMs", timeoutMs, 10, 60_000);
  }
}
