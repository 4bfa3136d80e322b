package org.chordlog.decode;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HexFormat;
import java.util.List;
import org.chordlog.decode.ModbusRegisters.Table;
import org.chordlog.measure.LengthUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** MODBUS over Serial Line V1.02 and MODBUS Application Protocol V1.1b3. */
final class ModbusTest {
  private static byte[] hex(String text) {
    return HexFormat.of().parseHex(text);
  }

  /**
   * 123456789: check value of the CRC catalogue; C5CD and 4409: frames in published notes; the
   * others from the serial-line guide (appendix B) and the protocol's examples, from memory.
   */
  @ParameterizedTest
  @CsvSource({
    "313233343536373839,4B37", // read
    "01030000000A,CDC5", // read
    "010300000004,0944", // read
    "0207,1241", // memory
    "1103006B0003,8776", // memory
    "110306AE4156524340,AD49", // memory
    "010402FFFF,80B8", // memory
    "110500ACFF00,8B4E", // memory
    "110600010003,9B9A", // memory
    "018302,F1C0", // memory
    "'',FFFF" // by definition
  })
  void crc(String message, String crc) {
    byte[] bytes = hex(message);
    int sum = Sums.crc16(bytes, 0, bytes.length);
    assertEquals(Integer.parseInt(crc, 16), sum);
    assertEquals(sum, Sender.crc(bytes));
    int[] values = new int[bytes.length];
    for (int i = 0; i < bytes.length; i++) {
      values[i] = bytes[i];
    }
    byte[] framed = ModbusFrames.withCrc(values);
    assertEquals(0, Sums.crc16(framed, 0, framed.length));
  }

  @Test
  void everySingleBitErrorIsSeen() {
    byte[] frame = hex("01030400001403B532");
    assertTrue(ModbusFrames.crcAgrees(frame, 0, frame.length));
    for (int bit = 0; bit < 8 * frame.length; bit++) {
      byte[] wrong = frame.clone();
      wrong[bit / 8] ^= (byte) (1 << bit % 8);
      assertTrue(!ModbusFrames.crcAgrees(wrong, 0, wrong.length), "bit " + bit);
    }
  }

  @Test
  void requestIsThePublishedFrame() {
    ModbusRegisters registers =
        new ModbusRegisters(0x11, Table.HOLDING, 0x6B, ModbusRegisters.Type.INT16, false, 0, 0);
    byte[] request = ModbusFrames.request(registers);
    assertArrayEquals(hex("1103006B0001"), java.util.Arrays.copyOf(request, 6));
    assertEquals(0, Sums.crc16(request, 0, request.length));
    assertArrayEquals(hex("1103006B00037687"), ModbusFrames.withCrc(0x11, 3, 0, 0x6B, 0, 3));
  }

  private static List<String> read(
      ModbusRegisters.Type type, boolean lowFirst, String scale, String data) {
    ModbusRegisters registers = new ModbusRegisters(1, Table.INPUT, 7, type, lowFirst, 0, 0);
    FrameProfile profile =
        FrameProfile.of(
            registers, NumberForm.counts(NumberForm.Sign.OPTIONAL, null, scale), LengthUnit.MM);
    byte[] body = hex("0104" + String.format("%02X", data.length() / 2) + data);
    int[] values = new int[body.length];
    for (int i = 0; i < values.length; i++) {
      values[i] = body[i];
    }
    byte[] answer = ModbusFrames.withCrc(values);
    return Fed.told(profile, Bytes.text(answer, 0, answer.length));
  }

  @Test
  void numbersOfEachTypeAndWordOrder() {
    assertEquals(List.of("-2000 MM"), read(ModbusRegisters.Type.INT16, false, "0.001", "FFFE"));
    assertEquals(List.of("65534000 MM"), read(ModbusRegisters.Type.UINT16, false, "0.001", "FFFE"));
    assertEquals(List.of("-2000 MM"), read(ModbusRegisters.Type.INT32, false, "0.001", "FFFFFFFE"));
    assertEquals(
        List.of("-65538000 MM"), read(ModbusRegisters.Type.INT32, true, "0.001", "FFFEFFFE"));
    assertEquals(
        List.of("65536000 MM"), read(ModbusRegisters.Type.INT32, true, "0.001", "00000001"));
    assertEquals(
        List.of("4294967294 MM"), read(ModbusRegisters.Type.UINT32, false, "0.000001", "FFFFFFFE"));
    assertEquals(List.of("5123000 MM"), read(ModbusRegisters.Type.FLOAT32, false, "1", "40A3EF9E"));
    assertEquals(List.of("5123000 MM"), read(ModbusRegisters.Type.FLOAT32, true, "1", "EF9E40A3"));
    assertEquals(
        List.of("ERROR not a number"), read(ModbusRegisters.Type.FLOAT32, false, "1", "7FC00000"));
  }

  @Test
  void exceptionsEchoesAndGarbage() {
    FrameProfile profile = BuiltInProfile.MODBUS_INT32_MICRONS.profile();
    String answer = BuiltInProfile.MODBUS_INT32_MICRONS.example();
    byte[] asked =
        ModbusFrames.request(
            new ModbusRegisters(1, Table.HOLDING, 0, ModbusRegisters.Type.INT32, false, 0, 0));
    String echo = Bytes.text(asked, 0, asked.length);
    byte[] exception = hex("018302C0F1"); // memory
    assertEquals(
        List.of("5123000 MM", "ERROR exception 2: illegal data address", "5123000 MM"),
        Fed.told(profile, echo + answer + Bytes.text(exception, 0, 5) + "\u0001\u0003xyz" + answer)
            .stream()
            .filter(t -> !t.startsWith("refused"))
            .toList());
  }

  @Test
  void anAnswerThatDoesNotComeIsGivenUpAfterItsTime() {
    Decoder decoder = Decoders.of(BuiltInProfile.MODBUS_INT32_MICRONS.profile());
    assertTrue(decoder.request(0) != null);
    assertTrue(decoder.request(499_000_000) == null);
    assertTrue(decoder.request(500_000_000) != null);
    assertEquals(1, decoder.counts().unanswered());
    Fed.whole(decoder, BuiltInProfile.MODBUS_INT32_MICRONS.example());
    assertTrue(decoder.request(600_000_000) != null);
    assertEquals(1, decoder.counts().unanswered());
  }
}
