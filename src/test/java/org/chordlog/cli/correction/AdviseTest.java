package org.chordlog.cli.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.io.PipedReader;
import java.io.PipedWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.FutureTask;
import org.chordlog.cli.Chordlog;
import org.chordlog.cli.common.ExitCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The command over its standard input, and its options. */
final class AdviseTest extends AdviseRuns {

  /** Tight and wide, as pieces are called everywhere. */
  @Test
  void aLevelIsTooTightOrTooWide() throws IOException {
    assertTrue(level(1797).contains(" too tight (±"), level(1797));
    assertTrue(level(1803).contains(" too wide (±"), level(1803));
  }

  private static String level(double radius) throws IOException {
    return follow(USUAL, piece(radius)).line(0).get("text").asText();
  }

  @Test
  void eachLineIsAnswered() throws IOException {
    Ran ran =
        follow(
            USUAL
                + "--gain -81 --gain-uncertainty 10 --scale dial --scale-unit mm"
                + " --scale-step 0.01",
            "{\"setUp\":{\"setting\":12.4}}",
            piece(1784),
            piece(1784.5),
            "",
            "{\"correction\":{\"before\":12.4,\"after\":12.21}}",
            piece(1799.8),
            "{\"lot\":\"B\"}",
            "{\"piece\":{\"radiusMm\":null}}");
    assertEquals(ExitCode.WELL, ran.code(), ran.err());
    assertEquals(7, ran.out().size());
    assertEquals("TOO_EARLY", ran.action(0));
    assertTrue(ran.line(0).get("levelMm").isNull());
    JsonNode advice = ran.line(2);
    assertEquals("CORRECT", advice.get("action").asText());
    assertEquals(-0.19, advice.get("amount").asDouble(), 1e-9);
    assertEquals(0.03, advice.get("amountStandardUncertainty").asDouble(), 0.02);
    assertEquals(-15.5, advice.get("levelMm").asDouble(), 0.5);
    assertTrue(advice.get("levelStandardUncertaintyMm").asDouble() > 0);
    assertTrue(advice.get("text").asText().contains("Open by 0.19 mm"), advice.toString());
    assertEquals(12.21, advice.at("/prospect/setTo").asDouble(), 1e-9);
    assertEquals("LEAVE", ran.action(4));
    assertTrue(ran.line(4).get("amount").isNull());
    assertEquals("MEASURE_AGAIN", ran.action(6));
  }

  /** Each answer comes before the next line is written. */
  @Test
  @Timeout(60)
  void answersAreFlushedAtOnce() throws Exception {
    PipedOutputStream toCommand = new PipedOutputStream();
    System.setIn(new PipedInputStream(toCommand));
    PipedReader fromCommand = new PipedReader();
    PrintWriter out = new PrintWriter(new PipedWriter(fromCommand));
    FutureTask<Integer> command =
        new FutureTask<>(() -> Chordlog.commandLine().setOut(out).execute(USUAL.split(" ")));
    new Thread(command, "advise").start();
    BufferedReader answers = new BufferedReader(fromCommand);
    for (String line : List.of(piece(1801), "nonsense", piece(1800))) {
      toCommand.write((line + "\n").getBytes(StandardCharsets.UTF_8));
      toCommand.flush();
      String answer = answers.readLine();
      assertEquals(line.equals("nonsense"), MAPPER.readTree(answer).has("error"), answer);
    }
    toCommand.close();
    assertEquals(ExitCode.FAULT, command.get());
  }

  @Test
  void unitAndSignAreLearnedFromOneCorrection() throws IOException {
    Ran ran =
        follow(
            USUAL,
            piece(1822),
            piece(1821),
            "{\"correction\":{\"before\":3,\"after\":1}}",
            piece(1790),
            piece(1789));
    assertEquals("AMOUNT_UNKNOWN", ran.action(1));
    assertTrue(ran.line(1).get("amount").isNull());
    assertEquals("CORRECT", ran.action(4));
    assertEquals(0.68, ran.line(4).get("amount").asDouble(), 0.15);
    assertTrue(ran.line(4).get("text").asText().contains("Open by"), ran.out().get(4));
  }

  /** A line that is refused, and what is said of it. */
  private static final String[] BAD_LINES = {
    "{\"piece\":{}}|piece.radiusMm: none is missing",
    "{\"piece\":{\"radiusMm\":-5}}|radiusMm: -5.0 is not above zero",
    "{\"piece\":{\"radiusMm\":\"1800\"}}|piece.radiusMm: \"1800\" is not a number",
    "{\"piece\":{\"radiusMm\":1800,\"number\":0}}|piece: 0 is out of range",
    "{\"piece\":{\"readings\":[]}}|piece: 2 has neither a radius nor a flat",
    "{\"correction\":{\"before\":1}}|is not complete",
    "{\"correction\":{\"amount\":1,\"unit\":\"inch\"}}|correction.unit: inch is not this",
    "{\"lot\":\"A\"}|lot: A is in the machine already",
    "{\"lot\":7}|lot: 7 is not a name",
    "{\"setUp\":{\"setting\":1e999}}|setUp.setting is too large a number",
    "{\"piece\":{\"radiusMm\":1e300}}|piece.radiusMm: 1e300 is too large",
    "{\"target\":{\"targetMm\":1800}}|limits: none leave nothing to weigh",
    "{\"target\":{\"toleranceMm\":12}}|target.targetMm: none is missing",
    "{\"piece\":{\"radiusMm\":1},\"lot\":\"B\"}|is not one object with one name",
    "{\"tea\":{}}|line: tea is not known",
    "{\"piece\":{\"radiusMm\":1800}} x|is not JSON",
    "[1]|is not one object",
    "7|is not one object"
  };

  @Test
  void aBadLineIsNamedAndTheNextGoesOn() throws IOException {
    List<String> lines = new ArrayList<>(List.of(piece(1800)));
    for (String bad : BAD_LINES) {
      lines.add(bad.substring(0, bad.indexOf('|')));
    }
    lines.add(piece(1801));
    Ran ran = follow(USUAL + "--lot A", lines.toArray(String[]::new));
    assertEquals(ExitCode.FAULT, ran.code());
    for (int i = 0; i < BAD_LINES.length; i++) {
      String why = BAD_LINES[i].substring(BAD_LINES[i].indexOf('|') + 1);
      String answer = ran.line(i + 1).path("error").asText();
      assertTrue(answer.contains(why), ran.out().get(i + 1));
    }
    assertEquals("LEAVE", ran.action(BAD_LINES.length + 1));
  }

  @Test
  void aLineGivesTheYieldStrengthOfALot() throws IOException {
    String steel = "--yield 240 --young 210 --yield-uncertainty 3 --section tube:60.3x3.2 --lot A ";
    Ran ran =
        follow(
            USUAL + steel,
            piece(1800),
            "{\"lot\":{\"name\":\"B\",\"yieldMpa\":248}}",
            "{\"lot\":{\"name\":\"C\",\"yieldMpa\":2.4e8}}",
            "{\"lot\":{\"name\":\"D\"}}");
    double known = ran.line(0).get("levelMm").asDouble();
    assertEquals(8 * 0.381425 * 1.8, ran.line(1).get("levelMm").asDouble() - known, 0.05);
    assertTrue(ran.out().get(2).contains("yieldMpa: 240000000 is out of range"), ran.out().get(2));
    assertEquals("TOO_EARLY", ran.action(3));
  }

  @Test
  void aDoubtfulGaugeGetsNoAdvice() throws IOException {
    Ran ran =
        follow(
            USUAL + "--gain -81",
            piece(1784),
            "{\"gauge\":{\"doubt\":\"the zero is stale.\"}}",
            piece(1700),
            "{\"gauge\":{}}");
    assertEquals("NONE", ran.action(1));
    assertEquals("No advice: the zero is stale.", ran.line(2).get("text").asText());
    assertEquals("CORRECT", ran.action(3));
    assertEquals(-15.5, ran.line(3).get("levelMm").asDouble(), 1, "the doubtful piece left out");
  }

  @Test
  void positionsTargetsAndJobs() throws IOException {
    Ran ran =
        follow(
            USUAL + "--gain -81",
            "{\"piece\":{\"readings\":[{\"position\":\"start\",\"radiusMm\":1790},"
                + "{\"position\":\"end\",\"radiusMm\":1778}]}}",
            "{\"target\":{\"targetMm\":1784,\"lowerMm\":1770,\"upperMm\":1800}}",
            "{\"job\":{\"targetMm\":900,\"toleranceMm\":6,\"lot\":\"C\",\"pieces\":3}}",
            piece(899));
    assertEquals(ExitCode.WELL, ran.code(), ran.out().toString());
    assertEquals(-15.6, ran.line(0).get("levelMm").asDouble(), 1);
    assertEquals("LEAVE", ran.action(1));
    assertEquals(-1, ran.line(3).get("levelMm").asDouble(), 0.2);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "advise --target 1800 --tolerance 12|Either FILE or --follow",
        "advise --follow --target 1800|--tolerance is missing",
        "advise --follow --target 1800 --tolerance 0|--tolerance: 0.0 is not above zero",
        "advise --follow --target x --tolerance 1|--target: x is not a length",
        "advise --follow --target 1800 --tolerance 12 --lower 1|--tolerance: 12 is given beside",
        "advise --follow --target 1800 --lower 1810|--lower: 1810.0 is not below the target",
        "advise --follow --target 1800 --tolerance 12 --gain 3 --roller-distance 600|--gain: 3",
        "advise --follow --target 1800 --tolerance 12 --scale-step -1|--scale-step: -1.0 is below zero",
        "advise --follow --target 1800 --tolerance 12 --least-chance 2|--least-chance: 2.0 is out of",
        "advise --follow --target 1800 --tolerance 12 --gain 0|--gain: 0 would change nothing",
        "advise --follow --target 1800 --tolerance 12 --scale-step 1,250|comma or thousands",
        "advise none.csv --target 1800 --tolerance 12|FILE: none.csv does not exist"
      })
  void badOptions(String command, String why) {
    Ran ran = follow(command);
    assertEquals(ExitCode.BAD_INPUT, ran.code());
    assertTrue(ran.err().contains(why), ran.err());
    assertFalse(ran.err().contains("\tat "), ran.err());
  }

  @Test
  void oneLimitAndRollersAreEnough() throws IOException {
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      lines.add(piece(1820));
    }
    Ran ran =
        follow(
            "advise --follow --target 1800 --upper 1812 --roller-distance 600 --unit-mm -0.37",
            lines.toArray(String[]::new));
    assertEquals("CORRECT", ran.action(2));
    double gain = 1.25 * 2 / 300 / 300 * 0.37;
    double expected = -(1 / 1800.0 - 1 / 1820.0) / gain;
    assertEquals(expected, ran.line(2).get("amount").asDouble(), -expected / 4);
  }
}
