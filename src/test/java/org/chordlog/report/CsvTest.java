package org.chordlog.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.chordlog.measure.Job;
import org.chordlog.stats.capability.Summary;
import org.junit.jupiter.api.Test;

final class CsvTest {
  private static final Job JOB = Reports.of(30).job();

  private static final CSVFormat WITH_HEADER =
      CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();

  @Test
  void figuresKeepIntervalAndMethod() throws IOException {
    List<Summary> summaries = Reports.of(30).summaries();
    StringBuilder out = new StringBuilder();
    Csv.figures(JOB, summaries, DecimalMark.POINT, out);
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

  @Test
  void figuresWithDecimalCommas() throws IOException {
    List<Summary> summaries = Reports.of(30).summaries();
    StringBuilder points = new StringBuilder();
    StringBuilder commas = new StringBuilder();
    Csv.figures(JOB, summaries, DecimalMark.POINT, points);
    Csv.figures(JOB, summaries, DecimalMark.COMMA, commas);
    List<CSVRecord> expected = WITH_HEADER.parse(new StringReader(points.toString())).getRecords();
    List<CSVRecord> rows =
        WITH_HEADER
            .builder()
            .setDelimiter(';')
            .get()
            .parse(new StringReader(commas.toString()))
            .getRecords();
    assertEquals(expected.size(), rows.size());
    for (int i = 0; i < rows.size(); i++) {
      assertEquals(expected.get(i).get("method"), rows.get(i).get("method"));
      assertEquals(expected.get(i).get("value"), rows.get(i).get("value").replace(',', '.'));
    }
  }
}
