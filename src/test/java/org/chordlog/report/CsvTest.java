package org.chordlog.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.chordlog.stats.capability.Summary;
import org.junit.jupiter.api.Test;

final class CsvTest {
  private static final CSVFormat WITH_HEADER =
      CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();

  @Test
  void readingsComeBackToTheLastDigit() throws IOException {
    JobReport report = Reports.of(12);
    StringBuilder out = new StringBuilder();
    Csv.readings(report, out);
    List<CSVRecord> rows = WITH_HEADER.parse(new StringReader(out.toString())).getRecords();
    assertEquals(12, rows.size());
    for (int i = 0; i < 12; i++) {
      Double radius = report.readings().get(i).radius().radiusMm();
      assertEquals(radius, Double.valueOf(rows.get(i).get("radius_mm")));
    }
    assertEquals("bridge slipped", rows.get(8).get("excluded_reason"));
    assertEquals("zero_stale", rows.get(4).get("marks"));
    assertTrue(rows.get(0).get("utc").endsWith("Z"));
  }

  @Test
  void figuresKeepIntervalAndMethod() throws IOException {
    List<Summary> summaries = Reports.of(30).summaries();
    StringBuilder out = new StringBuilder();
    Csv.figures(summaries, out);
    CSVRecord row =
        WITH_HEADER.parse(new StringReader(out.toString())).stream()
            .filter(r -> r.get("figure").equals("Cpk"))
            .findFirst()
            .orElseThrow();
    var figure = summaries.get(0).figure("Cpk").orElseThrow();
    assertEquals(figure.value(), Double.valueOf(row.get("value")));
    assertEquals(figure.lower(), Double.valueOf(row.get("lower")));
    assertEquals(figure.method(), row.get("method"));
  }
}
