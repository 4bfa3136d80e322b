package org.chordlog.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.math.BigDecimal;
import java.util.Map;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.LengthUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

final class FrameProfileTest {
  private static void refused(String field, Executable making) {
    assertEquals(field, assertThrows(BadInput.class, making).faults().get(0).field());
  }

  private static FrameProfile pattern(String pattern) {
    return FrameProfile.of(
        Framing.LINES, pattern, NumberForm.DECIMAL, null, Map.of(), Checksum.NONE);
  }

  @Test
  void nonsenseIsRefusedByItsField() {
    refused("pattern", () -> pattern("(?P<value>[0-9]+"));
    refused("pattern", () -> pattern("[0-9]+"));
    refused("pattern", () -> pattern("(?P<value>[0-9]+)"));
    refused("pattern", () -> pattern("(a)\\1(?P<value>x)(?P<unit>y)"));
    refused("pattern", () -> pattern("x".repeat(301)));
    refused("idleMs", () -> Framing.pauses(0));
    refused("length", () -> Framing.fixed(0));
    refused("length", () -> Framing.fixed(257));
    refused("start, end", () -> Framing.markers("", "\u0003"));
    refused("terminator", () -> new Framing(Framing.Kind.TERMINATOR, "\u20AC", "", "", 0, 0, 0));
    refused("decimals", () -> new NumberForm(NumberForm.Mark.NONE, NumberForm.Sign.ALWAYS, 3, 2));
    refused("scale", () -> NumberForm.counts(NumberForm.Sign.ALWAYS, 3, "0"));
    refused("request", () -> new Polling("", 100));
    refused("intervalMs", () -> new Polling("?", 0));
    refused(
        "device",
        () ->
            new ModbusRegisters(
                248, ModbusRegisters.Table.HOLDING, 0, ModbusRegisters.Type.INT16, false, 0, 0));
    refused(
        "register",
        () ->
            new ModbusRegisters(
                1, ModbusRegisters.Table.HOLDING, 65535, ModbusRegisters.Type.INT32, false, 0, 0));
  }

  @Test
  void framesThatCannotBeToldApartAreRefused() {
    NumberForm loose = NumberForm.DECIMAL;
    refused(
        "framing",
        () -> FrameProfile.of(Framing.fixed(7), "", loose, LengthUnit.MM, Map.of(), Checksum.NONE));
    Checksum raw =
        new Checksum(Checksum.Kind.XOR, Checksum.Encoding.RAW, "", false, false, false, false);
    refused(
        "checksum.encoding",
        () -> FrameProfile.of(Framing.LINES, "", loose, LengthUnit.MM, Map.of(), raw));
  }

  @Test
  void aYamlTextBecomesAProfile() throws Exception {
    String yaml =
        """
        framing: {kind: markers, start: "\\x02", end: "\\x03"}
        pattern: '(?P<status>[A-Z])(?P<value>[+-][0-9,]+)'
        number: {mark: comma, sign: always, integerDigits: 2, decimals: 3}
        unit: mm
        statuses: {S: ok, L: low_battery}
        checksum: {kind: xor, afterEnd: true, coversEnd: true}
        polling: {request: "?\\r", intervalMs: 50}
        """;
    FrameProfile profile =
        YAMLMapper.builder()
            .enable(MapperFeature.ACCEPT_CASE_INSENSITIVE_ENUMS)
            .build()
            .readValue(yaml, FrameProfile.class);
    assertEquals(DecoderKind.FRAMES, profile.kind());
    assertEquals(64, profile.framing().maxLength());
    assertEquals(BigDecimal.ONE, profile.number().scale());
    assertEquals(new Polling("?\r", 50), profile.polling());
    assertEquals(StatusMeaning.LOW_BATTERY, profile.statuses().get("L"));
  }

  @ParameterizedTest
  @EnumSource
  void jsonThereAndBackIsTheSame(BuiltInProfile built) throws Exception {
    JsonMapper json = new JsonMapper();
    String text = json.writeValueAsString(built.profile());
    assertEquals(built.profile(), json.readValue(text, FrameProfile.class));
  }
}
