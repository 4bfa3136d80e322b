package org.chordlog.cli.gauge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Ran;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class RadiusCommandTest {
  @TempDir private Path folder;

  private static void refused(String line, String why) {
    Ran run = Ran.line(line);
    assertEquals(ExitCode.BAD_INPUT, run.code(), run.toString());
    assertTrue(run.err().contains(why), run.err());
  }

  @Test
  void oneDepthInWords() {
    Ran run = Ran.line("radius --depth 1 --span 200 --lower 4000 --upper 4500");
    assertEquals(ExitCode.FAULT, run.code(), run.err());
    assertTrue(
        run.out().startsWith("outer face: 5000 ± 120 mm (at least 95.45 %, k = 2.00)"), run.out());
    assertTrue(run.out().contains("Out of tolerance"), run.out());
  }

  @Test
  void budgetMonteCarloAndSkewArePrinted() {
    Ran run =
        Ran.line(
            "radius --depth 5 --span 200 --section tube:50x3 --specified-face centreline --skew 1"
                + " --budget --monte-carlo --trials 20000 --seed 3");
    assertEquals(0, run.code(), run.err());
    for (String part :
        List.of("permissible error", "skew out of", "combined u", "seed 3", "too tight")) {
      assertTrue(run.out().contains(part), run.out());
    }
  }

  @Test
  void aBudgetIsInTheUnitOfTheCommand() {
    String bent = Ran.line("radius --unit inch --depth 0.1 --span 8 --budget").out();
    assertFalse(bent.contains("mm"), bent);
    assertTrue(bent.contains("± 0.00079 in") && bent.contains("8 in  "), bent);
    String flat = Ran.line("radius --unit inch --depth 0 --span 8 --budget").out();
    assertFalse(flat.contains("mm") || flat.contains("1/km"), flat);
    assertTrue(flat.contains("per 1,000 in"), flat);
  }

  /** Without spans of its own an inch shop is not offered bridges of 200 inches. */
  @Test
  void usualSpansAreInTheUnitAsked() {
    String inch =
        Ran.line("span --radius 70.8661 --tolerance 0.4724 --travel 0.5 --unit inch").out();
    assertTrue(inch.contains("        12 ") && inch.contains("recommended"), inch);
    String mm = Ran.line("span --radius 1800 --tolerance 12 --travel 12.5").out();
    assertTrue(mm.contains("       300 ") && mm.contains("recommended"), mm);
  }

  @Test
  void aBridgeThatShowsNothingIsNotRecommended() {
    String spans = Ran.line("span --radius 70 --tolerance 0.5 --unit inch --spans 4;8").out();
    assertTrue(spans.contains("0.8  the best of these; U is no smaller"), spans);
    assertTrue(spans.endsWith("All lengths in inches." + System.lineSeparator()), spans);
  }

  @Test
  void jsonHasUnitsInItsNames() throws IOException {
    JsonNode json =
        new ObjectMapper().readTree(Ran.line("radius --depth 1 --span 200 --json").out());
    assertEquals(5000.5, json.at("/radius/radiusMm").asDouble(), 1e-9);
    assertEquals("mm", json.at("/budget/unit").asText());
    assertTrue(json.at("/budget/lines/0/contribution").asDouble() > 0);
  }

  @Test
  void inchIsTakenAndGivenButNeverMixed() {
    Ran run = Ran.line("radius --unit inch --depth 0.1in --span 10");
    assertTrue(run.out().startsWith("outer face: 125.1"), run.out());
    refused("radius --unit inch --depth 2.5mm --span 10", "is in another unit");
    refused("radius --depth 0.1in --span 200", "is in another unit");
  }

  /** Never as another number: whole nanometres end at 9.2 million km. */
  @Test
  void whatIsTooLargeIsRefusedAsItWasTyped() {
    refused("radius --depth 1e400 --span 200", "--depth: 1e400 is too large");
    refused("radius --depth -1e17 --span 200", "--depth: -1e17 is too large");
    refused("radius --depth 5 --span 1e400", "--span: 1e400 is too large");
    refused("radius --depth 5 --span 200 --section tube:1e400x3", "--section: 1e400 is too large");
    refused("radius --depth 5 --span 200 --skew 1e400", "--skew: '1e400' is too large");
    refused("study plan --expected 1e400", "--expected: '1e400' is too large");
    refused("radius --depth 5 --span 200 --samples 99999999999", "'99999999999' is too large");
    refused("close --target 1800 --angle 1e400 --gap 3", "--angle: 1e400 is too large");
  }

  @Test
  void impossibleInputIsRefusedByName() {
    refused("radius --depth 101 --span 200", "beyond half the span");
    refused("radius --depth 1 --span -200", "--span: -200.0 is not above zero");
    refused("radius --depth 1 --span 200 --lower 9 --upper 8", "--lower: 9.0 is not below");
    refused("radius --unit inch --depth 5 --span 8", "--depth: 5 in is beyond half");
    refused("radius --depth 1 --span 200 --face centreline", "allowed: outer or inner");
    refused("radius --depth NaN --span 200", "is not a length");
    refused("radius --depth -5 --span 200", "concave");
    refused("radius --depth 1 --span 200 --specified-face inner", "--section is needed for");
    refused("radius --depth 1 --span 200 --section tube:50", "is not a section");
    refused("radius --span 200", "Missing");
    refused(
        "radius --depth 5 --span 200 --section tube:3000x3.2 --specified-face inner",
        "radiusMm: 1002.5 on the outer face leaves no inner face");
    refused("radius --card x.pdf --span 200", "A card needs --from");
    refused(
        "radius --card none/x.pdf --span 200 --from 500 --to 3000", "its folder does not exist");
    refused("radius --card x.pdf --span 200 --from 2000 --to 500", "--from");
  }

  @Test
  void aColumnGoesOnAfterABadRowAndSaysSo() throws IOException {
    Path csv = folder.resolve("depths.csv");
    Files.writeString(csv, "piece;depth\n1;1,0\n2;what\n3;0,001\n4;2\n");
    Ran run = Ran.line("radius --csv " + csv + " --span 200");
    assertEquals(ExitCode.FAULT, run.code());
    List<String> lines = run.out().lines().toList();
    assertEquals("line,depth_mm,radius_mm,lower_mm,upper_mm,decision,fault", lines.get(0));
    assertTrue(lines.get(1).contains(",5000,4880,5130,"), run.out());
    assertTrue(lines.get(2).contains("is not a length"), run.out());
    assertTrue(lines.get(3).contains("flat"), run.out());
    refused("radius --csv " + csv + " --column nothing --span 200", "--column");
    Files.writeString(csv, "depth_in\n0.1\n0.11\n");
    refused(
        "radius --csv " + csv + " --column depth_in --span 200",
        "depth_in is in inches by its name");
  }

  @Test
  void aColumnWithARadiusOutOfToleranceEndsAsAFault() throws IOException {
    Path csv = Files.writeString(folder.resolve("depths.csv"), "depth\n1\n1.001\n");
    String line = "radius --csv " + csv + " --span 200 --lower 4000 --upper ";
    assertEquals(ExitCode.WELL, Ran.line(line + 6000).code());
    assertEquals(ExitCode.FAULT, Ran.line(line + 4500).code());
  }

  @Test
  void theCardIsAPdfWithTheRightRadii() throws IOException {
    Path pdf = folder.resolve("card.pdf");
    Ran run = Ran.line("radius --card " + pdf + " --span 200 --from 500 --to 3000");
    assertEquals(0, run.code(), run.err());
    try (PdfReader reader = new PdfReader(pdf.toString())) {
      assertTrue(reader.getNumberOfPages() >= 1);
      String text = new PdfTextExtractor(reader).getTextFromPage(1);
      assertTrue(text.contains("10.100") && text.contains("500.1"), text);
      assertTrue(text.contains("drive locked out"), text);
    }
  }

  /** The skew of the bridge biases one way: both sides as the single reading gives them. */
  @Test
  void theCardGivesBothSidesOfTheUncertainty() throws IOException {
    String gauge = " --span 200 --section tube:50x3 --skew 0.5";
    JsonNode single =
        new ObjectMapper()
            .readTree(Ran.line("radius --depth 5 --json" + gauge).out())
            .get("radius");
    double radius = single.get("radiusMm").asDouble();
    double less = radius - single.get("lowerMm").asDouble();
    double more = single.get("upperMm").asDouble() - radius;
    Path pdf = folder.resolve("sides.pdf");
    assertEquals(0, Ran.line("radius --card " + pdf + gauge + " --from 500 --to 3000").code());
    try (PdfReader reader = new PdfReader(pdf.toString())) {
      String text = new PdfTextExtractor(reader).getTextFromPage(1).replaceAll("\\s+", " ");
      String row = String.format(Locale.ROOT, "5.000 %.1f %.1f %.1f", radius, less, more);
      assertTrue(text.contains(row), row + " is not in " + text);
    }
  }

  /** Who reads thousandths of an inch off the indicator finds thousandths on the card. */
  @Test
  void aCardInInchesHasEvenStepsOfInches() throws IOException {
    String line = "radius --card " + folder.resolve("inch.pdf") + " --unit inch --span 8";
    Ran run = Ran.line(line + " --from 20 --to 120 --json");
    List<String> depths = new ArrayList<>();
    new ObjectMapper()
        .readTree(run.out())
        .get("rows")
        .forEach(row -> depths.add(row.get(0).asText()));
    assertTrue(depths.size() > 100, run.out());
    assertTrue(depths.stream().allMatch(each -> each.endsWith("00")), depths::toString);
  }

  @Test
  void spanAdvice() throws IOException {
    String line = "span --radius 1800 --tolerance 12 --section tube:60x3 --skew 0.2 --travel 12.5";
    Ran run = Ran.line(line);
    assertEquals(0, run.code(), run.err());
    assertTrue(run.out().contains("recommended"), run.out());
    JsonNode json = new ObjectMapper().readTree(Ran.line(line + " --json").out());
    assertEquals(5, json.size());
    assertTrue(json.get(0).at("/remarks").toString().contains("below 2 mm"));
    assertFalse(json.get(4).at("/reachable").asBoolean());
    assertTrue(json.get(4).at("/reasons").toString().contains("beyond the travel"));
    assertEquals(ExitCode.FAULT, Ran.line("span --radius 100 --tolerance 1 --spans 500").code());
  }

  private List<String> column(String content, String options) throws IOException {
    Path csv = Files.writeString(folder.resolve("column.csv"), content);
    return Ran.line("radius --csv " + csv + " --span 200" + options).out().lines().toList();
  }

  /** 5.123 and 4.987 mm over 200 mm: R = (100² + h²)/2h by hand. */
  @Test
  void aSingleColumnOfDecimalCommasIsUnderstood() throws IOException {
    List<String> lines = column("depth\n5,123\n4,987\n", " --permissible-error 0");
    assertTrue(lines.get(1).startsWith("2,\"5,123\",978.6"), lines.toString());
    assertTrue(lines.get(2).startsWith("3,\"4,987\",1005.1"), lines.toString());
  }

  @Test
  void aRowLongerThanTheHeaderIsRefusedByItsLine() throws IOException {
    Path csv = Files.writeString(folder.resolve("long.csv"), "piece,depth\n1,5\n\n2,5,123\n");
    refused("radius --csv " + csv + " --span 200", "line 4: 2,5,123 has 3 cells");
  }

  @Test
  void digitsAreThoseThatUCarries() throws IOException {
    String fine = " --resolution 0.0001 --permissible-error 0.0002";
    List<String> lines = column("depth\n20\n", fine);
    assertTrue(lines.get(1).matches("2,20,260\\.00\\d+,.*"), lines.toString());
    String coarse = Ran.line("radius --depth 0.03 --span 200").out();
    assertTrue(coarse.matches("(?s)outer face: \\d+000 [+]\\d+000 −\\d+000 .*"), coarse);
  }

  @Test
  void aCommaThatMayDivideThousandsIsRefused() {
    refused("radius --span 1,000 --depth 0.005", "decimal comma or thousands");
    assertEquals(0, Ran.line("radius --span 200 --depth 0,505").code());
  }

  /** Half of 1.59043 inches in the last bit is less than the depth. */
  @Test
  void aDepthOfHalfTheSpanIsTakenInInchesToo() {
    Ran half = Ran.line("radius --unit inch --span 1.59043 --depth 0.795215");
    assertEquals(0, half.code(), half.err());
    refused("radius --unit inch --span 2 --depth 1.1", "± 1 in");
  }

  @Test
  void oneSampleHasNoScatter() {
    refused("radius --depth 1 --span 200 --scatter 0.05 --samples 1", "can't have a scatter");
  }

  /** Each limit by itself is 1.645 u away, but 10 % lie beyond the two together. */
  @Test
  void limitsNearEachOtherAreBothCounted() {
    Ran run = Ran.line("radius --depth 5 --span 200 --lower 998.49 --upper 1006.55");
    assertTrue(run.out().contains("Too close to call"), run.out());
  }

  @Test
  void feetAcrossATubeHardlyErrAskew() {
    String gauge = "radius --depth 5 --span 200 --section tube:50x3 --skew 1 --budget --feet ";
    assertTrue(
        Ran.line(gauge + "point").out().contains("bias −4.0 mm"), Ran.line(gauge + "point").out());
    assertTrue(
        Ran.line(gauge + "across").out().contains("bias −0.099 mm"),
        Ran.line(gauge + "across").out());
  }
}
