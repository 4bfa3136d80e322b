package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.chordlog.chart.ViewUnit;
import org.chordlog.harness.Ran;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.GaugeStudy.Kind;
import org.chordlog.report.StudyPdf;
import org.chordlog.report.StudyReport;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The command on a study's measurements says the figures of its report, to the same digits. */
final class StudyDigitsTest {
  private static final int FIGURES = 20;
  private static final int VALUE = 5;
  private static final Pattern FIGURE =
      Pattern.compile("( *[−.\\d]+ ...) ([−.\\d]+ to [−.\\d]+) +([^:]+)(: .*)?");

  @TempDir Path directory;

  @ParameterizedTest
  @EnumSource(ViewUnit.class)
  void commandAndReportAgree(ViewUnit unit) throws Exception {
    try (Served served = new Served(directory)) {
      GaugeStudy study =
          new DoneStudies(served.store)
              .onPieces(Kind.CROSSED, 5, List.of(), List.of("Ann", "Bo", "Cy"));
      String csv = served.get("/api/studies/" + study.id() + "/measurements.csv").body();
      String report = report(served, study, unit);
      List<String> figures = figures(command(csv, unit));
      assertEquals(FIGURES, figures.size());
      figures.forEach(each -> assertTrue(report.contains(each), () -> each + " of " + report));
    }
  }

  private String command(String csv, ViewUnit unit) throws IOException {
    Path file = Files.writeString(directory.resolve("study.csv"), in(unit, csv));
    String lengths =
        " --nominal %s --lsl %s --usl %s".formatted(unit.of(1800), unit.of(1788), unit.of(1812));
    String name = unit == ViewUnit.MM ? "mm" : "inch";
    return Ran.line("study " + file + " --kind crossed --unit " + name + lengths).out();
  }

  /** The file with its radii in that unit. */
  private static String in(ViewUnit unit, String csv) {
    return csv.lines().map(row -> in(unit, row.split(","))).collect(Collectors.joining("\n"));
  }

  private static String in(ViewUnit unit, String[] cells) {
    if (!cells[VALUE].equals("value")) {
      cells[VALUE] = String.valueOf(unit.of(Double.parseDouble(cells[VALUE])));
    }
    return String.join(",", cells);
  }

  /** Name, value, unit and interval of each figure, as a row of the report without blanks. */
  private static List<String> figures(String said) {
    return said.lines()
        .takeWhile(line -> !line.startsWith("The same with"))
        .map(FIGURE::matcher)
        .filter(Matcher::matches)
        .map(found -> bare(found.group(3) + found.group(1) + found.group(2)))
        .toList();
  }

  private static String report(Served served, GaugeStudy study, ViewUnit unit) throws IOException {
    StudyReport.Printing printing = new StudyReport.Printing(Instant.EPOCH, ZoneOffset.UTC, unit);
    byte[] pdf = StudyPdf.write(new StudyReports(served.store).of(study.id(), printing));
    try (PdfReader reader = new PdfReader(pdf)) {
      StringBuilder all = new StringBuilder();
      for (int page = 1; page <= reader.getNumberOfPages(); page++) {
        all.append(new PdfTextExtractor(reader).getTextFromPage(page)).append(' ');
      }
      return bare(all.toString());
    }
  }

  private static String bare(String text) {
    return text.replaceAll("\\s+", "").toLowerCase(Locale.ROOT);
  }
}
