package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.chordlog.harness.Ran;
import org.chordlog.measure.Job;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What happened in a job as a file, and the phases that it makes of the readings. */
final class ChangesCsvTest {
  @TempDir Path directory;
  private Served served;
  private Job job;

  @BeforeEach
  void aJobInWhichMuchHappened() throws Exception {
    served = new Served(directory);
    job = served.job();
    served.readings(job, 12);
    happened("{\"kind\":\"SET_UP\",\"afterReadingId\":0}");
    happened(
        "{\"kind\":\"CORRECTION\",\"settingBefore\":25.7,\"settingAfter\":25.85,"
            + "\"afterReadingId\":6,\"note\":\"too wide\"}");
    happened("{\"kind\":\"MATERIAL_LOT\",\"materialLot\":\"lot 2\",\"afterReadingId\":6}");
    happened("{\"kind\":\"CORRECTION\",\"afterReadingId\":9}");
    post("/api/jobs/1/events/4/take-back", "{\"reason\":\"not done\"}", 200);
    post("/api/readings/5/exclusion", "{\"excluded\":true,\"reason\":\"=chips\"}", 200);
    post(
        "/api/jobs/1/signal-answers",
        "{\"characteristic\":\"whole piece\",\"chart\":\"MEAN\",\"readingId\":9,"
            + "\"cause\":\"worn roller\",\"action\":\"renewed\"}",
        201);
  }

  @AfterEach
  void stop() {
    served.close();
  }

  private void happened(String event) throws Exception {
    post("/api/jobs/1/events", event, 201);
  }

  private void post(String path, String body, int status) throws Exception {
    var answer = served.post(path, body);
    assertEquals(status, answer.statusCode(), answer.body());
  }

  private static List<CSVRecord> rows(String text, char separator) throws Exception {
    CSVFormat form =
        CSVFormat.RFC4180
            .builder()
            .setDelimiter(separator)
            .setHeader()
            .setSkipHeaderRecord(true)
            .get();
    try (CSVParser parser = CSVParser.parse(text, form)) {
      return parser.getRecords();
    }
  }

  private static List<String> column(List<CSVRecord> rows, String name) {
    return rows.stream().map(row -> row.get(name)).toList();
  }

  @Test
  void everyChangeIsALineTheOldestFirst() throws Exception {
    List<CSVRecord> rows = rows(served.get("/api/jobs/1/changes.csv").body(), ',');
    List<CSVRecord> late = rows.subList(rows.size() - 7, rows.size());
    assertEquals(
        List.of(
            "EVENT",
            "EVENT",
            "EVENT",
            "EVENT",
            "EVENT_TAKEN_BACK",
            "READING_EXCLUDED",
            "SIGNAL_ANSWERED"),
        column(late, "kind"));
    CSVRecord correction = late.get(1);
    assertEquals("Correction", correction.get("what"));
    assertEquals("setting 25.7", correction.get("from"));
    assertEquals("setting 25.85", correction.get("to"));
    assertEquals("25.85", correction.get("setting_after"));
    assertEquals("too wide", correction.get("why"));
    assertEquals("6", correction.get("reading_id"));
    assertEquals("Jörg", correction.get("by"));
    assertEquals("lot 2", late.get(2).get("material_lot"));
    assertEquals("not done", late.get(4).get("why"));
    assertEquals("2", late.get(5).get("piece"));
    assertTrue(late.get(5).get("why").endsWith("=chips"));
    assertTrue(!late.get(5).get("why").startsWith("="), "no formula");
    assertEquals("worn roller", late.get(6).get("from"));
    assertEquals(served.json("/api/jobs/1/history").size(), rows.size(), "as the page lists them");
  }

  @Test
  void withDecimalCommasAndByCommand() throws Exception {
    List<CSVRecord> commas = rows(served.get("/api/jobs/1/changes.csv?decimal=comma").body(), ';');
    assertTrue(column(commas, "setting_after").contains("25,85"), commas::toString);
    String data = directory.toString();
    Ran ran = Ran.command("export", "--data", data, "--job", "1", "--changes");
    assertEquals(served.get("/api/jobs/1/changes.csv").body(), ran.out());
    Ran all = Ran.command("export", "--data", data, "--changes");
    assertTrue(all.err().contains("--changes"), all.err());
    assertEquals(2, all.code());
  }

  /** As charts number them: a set-up before the first reading counts, what was taken back not. */
  @Test
  void readingsNameTheirPhase() throws Exception {
    List<CSVRecord> rows = rows(served.get("/api/jobs/1/readings.csv").body(), ',');
    assertEquals(
        List.of("2", "2", "2", "2", "2", "2", "4", "4", "4", "4", "4", "4"), column(rows, "phase"));
    var facts = served.json("/api/jobs/1/chart-facts?characteristic=start");
    for (var limits : facts.get("limits")) {
      assertTrue(List.of(2, 4).contains(limits.get("phase").asInt()), limits::toString);
    }
    assertTrue(facts.get("limits").size() >= 2, facts::toString);
  }
}
