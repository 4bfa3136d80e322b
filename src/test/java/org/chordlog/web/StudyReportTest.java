package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import java.io.IOException;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.chordlog.chart.ViewUnit;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Ran;
import org.chordlog.measure.Decimals;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.GaugeStudy.Kind;
import org.chordlog.report.StudyPdf;
import org.chordlog.report.StudyReport;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The report of a study: three pages at most, with the figures that its page has. */
@Tag("slow")
final class StudyReportTest {
  private static final List<String> THREE = List.of("Ann", "Bo", "Żak");

  @TempDir Path directory;
  private Served served;
  private DoneStudies studies;

  @BeforeEach
  void serve() {
    served = new Served(directory);
    studies = new DoneStudies(served.store);
  }

  @AfterEach
  void stop() {
    served.close();
  }

  /** Text of a report without blanks (cells of a table abut), after its pages were counted. */
  private String text(GaugeStudy study) throws Exception {
    var answer =
        served.client.send(
            HttpRequest.newBuilder(served.uri("/api/studies/" + study.id() + "/report.pdf"))
                .build(),
            BodyHandlers.ofByteArray());
    assertEquals(200, answer.statusCode());
    assertEquals("application/pdf", answer.headers().firstValue("Content-Type").orElseThrow());
    String name = study.design().kind() + "-" + study.design().parts().size() + ".pdf";
    Path pictures = Files.createDirectories(Path.of("target", "pictures"));
    Files.write(pictures.resolve("study-" + name), answer.body());
    return text(answer.body());
  }

  private static String text(byte[] pdf) throws IOException {
    try (PdfReader reader = new PdfReader(pdf)) {
      assertTrue(reader.getNumberOfPages() <= 3, reader.getNumberOfPages() + " pages");
      StringBuilder all = new StringBuilder();
      for (int page = 1; page <= reader.getNumberOfPages(); page++) {
        all.append(new PdfTextExtractor(reader).getTextFromPage(page)).append(' ');
      }
      return bare(all.toString());
    }
  }

  private static String bare(String text) {
    return text.replaceAll("\\s+", "");
  }

  private static void has(String text, String needed) {
    assertTrue(text.contains(bare(needed)), () -> needed + " is not in " + text);
  }

  /** Every figure of the result as the page rounds it: three significant digits. */
  private void hasTheFiguresOfThePage(GaugeStudy study, String text) throws Exception {
    JsonNode result = served.json("/api/studies/" + study.id() + "/result");
    assertTrue(result.get("figures").size() > 2);
    for (JsonNode each : result.get("figures")) {
      boolean none = each.get("lower").isNull() && each.get("upper").isNull();
      String row =
          "%s %s%s"
              .formatted(
                  told(each, "value", "–"),
                  each.get("unit").asText().isEmpty() ? "" : each.get("unit").asText() + " ",
                  none ? "–" : told(each, "lower", "open") + " to " + told(each, "upper", "open"));
      has(text.toLowerCase(Locale.ROOT), each.get("words").asText().toLowerCase(Locale.ROOT));
      has(text, row);
    }
    for (String needed :
        List.of(
            result.get("says").asText(),
            "Released by",
            "drive locked out",
            "page 1 of",
            "hoops in spring")) {
      has(text, needed);
    }
  }

  private static String told(JsonNode figure, String of, String none) {
    JsonNode value = figure.get(of);
    return value.isNull()
        ? none
        : Decimals.significant(value.asDouble(), end(figure, "lower"), end(figure, "upper"));
  }

  private static @Nullable Double end(JsonNode figure, String of) {
    return figure.get(of).isNull() ? null : (Double) figure.get(of).asDouble();
  }

  @Test
  void ofPiecesAndOperators() throws Exception {
    GaugeStudy study = studies.onPieces(Kind.CROSSED, 5, List.of(), THREE);
    String text = text(study);
    hasTheFiguresOfThePage(study, text);
    for (String needed :
        List.of(
            "Study of the gauge",
            "5 pieces × 3 operators × 3 repeats",
            "Ann, Bo, Żak",
            "1788 mm to 1812 mm",
            "Readings by operator",
            "Where the scatter comes from",
            "Analysis of variance",
            "at most 30 %")) {
      has(text, needed);
    }
  }

  @Test
  void ofMarkedPlaces() throws Exception {
    GaugeStudy study = studies.onPieces(Kind.SPLIT, 4, List.of("start", "end"), THREE);
    String text = text(study);
    hasTheFiguresOfThePage(study, text);
    has(text, "Pieces and their places together");
    has(text, "PVplace places on a piece");
  }

  @Test
  void ofOneOperatorAndOfMasters() throws Exception {
    for (GaugeStudy study :
        List.of(
            studies.onPieces(Kind.ONE_OPERATOR, 5, List.of(), List.of("Ann")),
            studies.onPieces(
                Kind.PLACING, 5, List.of(GaugeStudy.BY_EYE, GaugeStudy.ON_MARK), List.of("Ann")),
            studies.onMasters(Kind.BIAS, 1, 12),
            studies.onMasters(Kind.TYPE1, 1, 30),
            studies.onMasters(Kind.LINEARITY, 5, 4))) {
      String text = text(study);
      hasTheFiguresOfThePage(study, text);
      assertFalse(text.contains(bare("The resolution was not given")), text);
      boolean symbols = study.design().kind() == Kind.ONE_OPERATOR;
      assertEquals(symbols, text.contains(bare("GRR gauge in all")), text);
    }
  }

  /**
   * As large as a study may be: what does not fit is counted, the figures that decide are there.
   */
  @Tag("slow")
  @Test
  void ofLargeStudies() throws Exception {
    List<String> operators =
        IntStream.rangeClosed(1, 12).mapToObj(i -> "an operator with a long name " + i).toList();
    String split =
        text(studies.onPieces(Kind.SPLIT, 13, List.of("start", "left", "right", "end"), operators));
    has(split, "Gauge (repeatability and reproducibility)");
    String masters = text(studies.onMasters(Kind.LINEARITY, 60, 3));
    assertTrue(masters.matches(".*[0-9]+morefiguresonthestudy'spage.*"), masters);
    has(masters, "Change of bias over reference");
    has(masters, "; and 55 more.");
  }

  @Test
  void equalReportsAreEqualBytes() {
    GaugeStudy study = studies.onPieces(Kind.CROSSED, 3, List.of(), THREE);
    StudyReport.Printing printing =
        new StudyReport.Printing(
            Instant.parse("2026-11-26T03:00:00Z"), ZoneId.of("Europe/Berlin"), ViewUnit.INCH);
    StudyReports reports = new StudyReports(served.store);
    assertArrayEquals(
        StudyPdf.write(reports.of(study.id(), printing)),
        StudyPdf.write(reports.of(study.id(), printing)));
  }

  @Test
  void lengthsAreInInchesWhereAsked() throws Exception {
    GaugeStudy study = studies.onPieces(Kind.CROSSED, 5, List.of(), THREE);
    String path = "/api/studies/" + study.id() + "/report.pdf?unit=inch";
    byte[] pdf =
        served
            .client
            .send(HttpRequest.newBuilder(served.uri(path)).build(), BodyHandlers.ofByteArray())
            .body();
    Path pictures = Files.createDirectories(Path.of("target", "pictures"));
    Files.write(pictures.resolve("study-inch.pdf"), pdf);
    String text = text(pdf);
    has(text, "70.3937 in to 71.3386 in");
    has(text, "sum of squares, 1/in²");
    assertFalse(text.contains("mm"), text);
  }

  @Test
  void whatIsNotThereIsRefused() throws Exception {
    assertEquals(404, served.get("/api/studies/99/report.pdf").statusCode());
    GaugeStudy study = studies.onPieces(Kind.CROSSED, 3, List.of(), THREE);
    String zone = "/api/studies/" + study.id() + "/report.pdf?zone=Nowhere";
    assertEquals(400, served.get(zone).statusCode());
  }

  @Test
  void theCommandWritesItToo() throws Exception {
    GaugeStudy study = studies.onPieces(Kind.CROSSED, 5, List.of(), THREE);
    Path out = directory.resolve("study.pdf");
    Ran ran = command(study.id(), out);
    assertEquals(ExitCode.WELL, ran.code(), ran.err());
    hasTheFiguresOfThePage(study, text(Files.readAllBytes(out)));
    assertEquals(ExitCode.BAD_INPUT, command(99, out).code());
    Ran other = command(study.id(), directory.resolve("study.txt"));
    assertTrue(other.err().contains("--output"), other.err());
  }

  private Ran command(long study, Path out) {
    List<String> arguments = new ArrayList<>(List.of("report", "--study", String.valueOf(study)));
    arguments.addAll(List.of("--data", directory.toString(), "--output", out.toString()));
    return Ran.command(List.of("study"), arguments.toArray(String[]::new));
  }
}
