package org.chordlog.decode;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.decode.ModbusRegisters.Table;
import org.chordlog.measure.LengthUnit;

/** Answers of Modbus RTU in a stream: told by their CRC. */
final class ModbusGuess {
  private static final double TRUST = 0.5;

  private ModbusGuess() {}

  static List<Candidate> candidates(List<Arrival> stream) {
    List<Candidate> out = new ArrayList<>();
    for (Arrival arrival : stream) {
      byte[] b = arrival.bytes();
      for (int at = 0; at + 7 <= b.length && out.isEmpty(); at++) {
        int length = b[at + 2] == 2 ? 7 : b[at + 2] == 4 ? 9 : 0;
        boolean function = b[at + 1] == 3 || b[at + 1] == 4;
        if (function
            && length > 0
            && b[at] != 0
            && at + length <= b.length
            && ModbusFrames.crcAgrees(b, at, at + length)) {
          add(b[at] & 0xFF, b[at + 1], length, out);
        }
      }
    }
    return out;
  }

  private static void add(int device, int function, int length, List<Candidate> out) {
    if (device > 247) {
      return;
    }
    Table table = function == 3 ? Table.HOLDING : Table.INPUT;
    if (length == 7) {
      out.add(candidate(device, table, ModbusRegisters.Type.INT16, false));
      return;
    }
    for (boolean lowFirst : new boolean[] {false, true}) {
      out.add(candidate(device, table, ModbusRegisters.Type.INT32, lowFirst));
      out.add(candidate(device, table, ModbusRegisters.Type.FLOAT32, lowFirst));
    }
  }

  private static Candidate candidate(
      int device, Table table, ModbusRegisters.Type type, boolean lowFirst) {
    boolean counts = type != ModbusRegisters.Type.FLOAT32;
    NumberForm number =
        counts ? NumberForm.counts(NumberForm.Sign.OPTIONAL, null, "0.001") : NumberForm.DECIMAL;
    return new Candidate(
        FrameProfile.of(
            new ModbusRegisters(device, table, 0, type, lowFirst, 0, 0), number, LengthUnit.MM),
        TRUST,
        List.of(
            "the first register is 0",
            "the unit is mm",
            counts ? "one count is 0.001 mm" : "the value is a float"));
  }
}
