package org.chordlog.decode;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.decode.ModbusRegisters.Table;
import org.chordlog.measure.LengthUnit;
import org.jspecify.annotations.Nullable;

/** Answers of Modbus RTU in a stream: told by their CRC. */
final class ModbusGuess {
  private static final double TRUST = 0.5;

  private ModbusGuess() {}

  static List<Candidate> candidates(List<Arrival> stream, @Nullable Polling polling) {
    int register = register(polling);
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
          add(b[at] & 0xFF, b[at + 1], length, register, out);
        }
      }
    }
    return out;
  }

  /** The register that the request asks for; 0 where it can't be told. */
  private static int register(@Nullable Polling polling) {
    byte[] request = polling == null ? new byte[0] : polling.requestBytes();
    return request.length == 8 && ModbusFrames.crcAgrees(request, 0, 8)
        ? (request[2] & 0xFF) << 8 | (request[3] & 0xFF)
        : 0;
  }

  private static void add(int device, int function, int length, int register, List<Candidate> out) {
    if (device > 247) {
      return;
    }
    Table table = function == 3 ? Table.HOLDING : Table.INPUT;
    if (length == 7) {
      out.add(candidate(device, table, register, ModbusRegisters.Type.INT16, false));
      return;
    }
    for (boolean lowFirst : new boolean[] {false, true}) {
      out.add(candidate(device, table, register, ModbusRegisters.Type.INT32, lowFirst));
      out.add(candidate(device, table, register, ModbusRegisters.Type.FLOAT32, lowFirst));
    }
  }

  private static Candidate candidate(
      int device, Table table, int register, ModbusRegisters.Type type, boolean lowFirst) {
    boolean counts = type != ModbusRegisters.Type.FLOAT32;
    NumberForm number =
        counts ? NumberForm.counts(NumberForm.Sign.OPTIONAL, null, "0.001") : NumberForm.DECIMAL;
    return new Candidate(
        FrameProfile.of(
            new ModbusRegisters(device, table, register, type, lowFirst, 0, 0),
            number,
            LengthUnit.MM),
        TRUST,
        List.of(
            "the first register is " + register,
            "the unit is mm",
            counts ? "one count is 0.001 mm" : "the value is a float"));
  }
}
