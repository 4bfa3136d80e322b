package org.chordlog.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.chordlog.chart.ViewUnit;
import org.chordlog.measure.RadiusEstimate;
import org.junit.jupiter.api.Test;

final class PdfReportTest {
  @Test
  void saysEverythingAndNumbersItsPages() throws IOException {
    AtomicInteger rows = new AtomicInteger();
    byte[] pdf = PdfReport.write(Reports.of(120), rows::incrementAndGet);
    assertEquals(240, rows.get());
    Path file = Files.createDirectories(Path.of("target", "pictures")).resolve("report.pdf");
    Files.write(file, pdf);
    PdfReader reader = new PdfReader(pdf);
    PdfTextExtractor text = new PdfTextExtractor(reader);
    StringBuilder all = new StringBuilder();
    int pages = reader.getNumberOfPages();
    for (int page = 1; page <= pages; page++) {
      String one = text.getTextFromPage(page);
      assertTrue(one.contains("page " + page + " of " + pages), one);
      all.append(one.replaceAll("\\s+", " ")).append(' ');
    }
    reader.close();
    for (String needed :
        List.of(
            "Canopy hoops Ø 60 – Żółw",
            "Round tube 60.3 × 3.2 mm",
            "1812 mm",
            "bridge 200",
            "lot B",
            "by material lot",
            "EWMA: λ 0.2, limits ± 2.962 σ",
            "2 of 40 pieces took more than one pass (5.0 %); 1.05 passes a piece",
            "2 6 −31.40 2.25",
            "when measured: ✓ Good",
            "bridge slipped",
            "(whole job): ",
            "1 reading, marked: zero too old",
            "zero too old",
            "? Too close to call",
            "Cpk",
            "(USL - LSL)/6σ",
            "Distribution and capability",
            "rollers stopped and the drive locked out",
            "applicable code")) {
      assertTrue(all.toString().contains(needed), () -> needed + " is missing in\n" + all);
    }
  }

  /** What a customer reads first, all on one page. */
  @Test
  void theFirstPageIsACertificate() throws IOException {
    try (PdfReader reader = new PdfReader(PdfReport.write(Reports.of(120)))) {
      String first = new PdfTextExtractor(reader).getTextFromPage(1).replaceAll("\\s+", " ");
      for (String needed :
          List.of(
              "Of 40 pieces measured, ",
              "lot A17, lot B",
              "Process: ",
              "Capability: ",
              "Gauge: ",
              "Newest reading that counts, 95 % interval",
              "! 1 of 120 readings is excluded and counts in no figure; it is listed under Readings",
              "! ",
              "(whole job): ",
              "Released by")) {
        assertTrue(first.contains(needed), () -> needed + " is missing in\n" + first);
      }
    }
  }

  @Test
  void givesEqualBytesForEqualInput() {
    assertArrayEquals(PdfReport.write(Reports.of(12)), PdfReport.write(Reports.of(12)));
  }

  /** A character that the font lacks is shown as such, never left out without a word. */
  @Test
  void saysWhereACharacterIsMissing() {
    Type type = new Type();
    assertEquals("Los 17 / □", type.fitted("Los 17 / 𓀀", 10, 1_000));
    assertTrue(type.missed());
    Type all = new Type();
    String names = "Żółw Ελλ Русский 測試 鋼管 カタカナ 한국 ✓ →";
    assertEquals(names, all.fitted(names, 10, 1_000));
    assertFalse(all.missed());
    assertTrue(all.fitted("a long name of a job", 10, 40).endsWith("…"));
  }

  @Test
  void numbersKeepTheDigitsThatMatter() {
    PrintedLengths mm = new PrintedLengths(ViewUnit.MM);
    assertEquals("1788.25 mm", mm.asked(1788.25));
    assertEquals("1812 mm", mm.asked(1812.0));
    assertEquals("0.00029", Print.figure(0.000289));
    assertEquals("0.0000082", Print.figure(8.2e-6));
    assertEquals("1 reading", Print.counted(1, "reading"));
  }

  /** One inch is 25.4 mm; digits are those that the uncertainty supports in inches. */
  @Test
  void lengthsAreInInchesWhereAsked() {
    PrintedLengths inches = new PrintedLengths(ViewUnit.INCH);
    assertEquals("71 in", inches.asked(1803.4));
    assertEquals("70.4 in", inches.asked(1788.16));
    assertEquals("0.003 in", inches.plain(0.0762));
    assertEquals("0.100000", inches.depth(2_540_000));
    assertEquals("−0.0100", inches.signed(-0.254, 2));
    assertEquals("radius, in", inches.heading("radius"));
    RadiusEstimate radius = new RadiusEstimate(1803.4, 1800.0, 1807.0, 1 / 1803.4, 5e-7, 2, 50);
    assertEquals("71.00", inches.radius(radius));
    assertEquals("70.87 to 71.14", inches.interval(radius));
    assertEquals(2.54, inches.value(100, "1/km"), 1e-12);
    assertEquals(12, inches.value(12, "%"));
  }

  /** No length is left in millimetres, no axis either. */
  @Test
  void theWholeReportIsInInchesWhereAsked() throws IOException {
    JobReport report = Reports.of(120, ViewUnit.INCH);
    byte[] pdf = PdfReport.write(report);
    assertArrayEquals(pdf, PdfReport.write(report));
    Path pictures = Files.createDirectories(Path.of("target", "pictures"));
    Files.write(pictures.resolve("report-inch.pdf"), pdf);
    StringBuilder all = new StringBuilder();
    try (PdfReader reader = new PdfReader(pdf)) {
      for (int page = 1; page <= reader.getNumberOfPages(); page++) {
        String text = new PdfTextExtractor(reader).getTextFromPage(page);
        all.append(text.replaceAll("\\s+", " ")).append(' ');
      }
    }
    assertFalse(all.toString().matches(".*\\bmm\\b.*"), all::toString);
    for (String needed :
        List.of(
            "Cause of the signal at piece 4: Bearing loose; Tightened (op, ",
            "Round tube 2.374 × 0.126 in",
            "71.3386 in",
            "radius, in",
            "2 6 −1.2362 0.0886")) {
      assertTrue(all.toString().contains(needed), () -> needed + " is missing in\n" + all);
    }
  }

  @Test
  void isMadeOfAJobWithoutReadings() throws IOException {
    try (PdfReader reader = new PdfReader(PdfReport.write(Reports.of(0)))) {
      String first = new PdfTextExtractor(reader).getTextFromPage(1);
      assertTrue(first.contains("No piece has been measured yet."), first);
      assertTrue(first.replaceAll("\\s+", " ").contains("Checked on a master passed"), first);
      assertEquals("Certificate: Canopy hoops Ø 60 – Żółw", reader.getInfo().get("Title"));
    }
  }
}
