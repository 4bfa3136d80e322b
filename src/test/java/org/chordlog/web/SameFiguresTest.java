package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.chordlog.harness.Ran;
import org.chordlog.measure.Job;
import org.chordlog.measure.Plan;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.store.Some;
import org.chordlog.web.http.Json;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Job page, exported readings and CSV of statistics have one figure for the same pieces. */
final class SameFiguresTest {
  private static final List<String> FIGURES =
      List.of("mean", "standardDeviationWithin", "Cp", "Cpk", "Pp", "Ppk");

  @TempDir Path directory;
  @TempDir Path files;
  private Served served;

  @BeforeEach
  void serve() {
    served = new Served(directory);
  }

  @AfterEach
  void stop() {
    served.close();
  }

  /** Each reading a point of its place. */
  private Job ofSingles() {
    return by(new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1));
  }

  private Job by(SubgroupRule rule) {
    Job by = Some.job("by " + rule.kind(), "three-roll bender");
    Plan plan = new Plan(by.plan().positions(), rule);
    Job.Inspection inspection =
        new Job.Inspection(by.section(), by.measuredFace(), by.specification(), plan);
    return served.selected(Job.opened(by.order(), by.workplace(), inspection, by.openedAtMicros()));
  }

  private void corrected(Job job, long after) throws Exception {
    String path = "/api/jobs/" + job.id() + "/events";
    String event = "{\"kind\":\"CORRECTION\",\"afterReadingId\":" + after + "}";
    assertEquals(201, served.post(path, event).statusCode());
    String reading = "/api/readings/" + (after - 3) + "/exclusion";
    String reason = "{\"excluded\":true,\"reason\":\"chips under the foot\"}";
    assertEquals(200, served.post(reading, reason).statusCode());
  }

  private JsonNode page(Job job, String characteristic, String scope) throws Exception {
    String name = characteristic.replace(" ", "%20");
    String query = "?scope=" + scope + "&characteristic=" + name;
    return served.json("/api/jobs/" + job.id() + "/statistics" + query);
  }

  private JsonNode analysed(Job job, String... more) throws Exception {
    Ran ran = Ran.command(words(job), more);
    assertTrue(ran.err().isEmpty(), ran.err());
    return Json.shared().readTree(ran.out());
  }

  private List<String> words(Job job) throws Exception {
    Path csv = files.resolve("readings-" + job.id() + ".csv");
    Files.writeString(csv, served.get("/api/jobs/" + job.id() + "/readings.csv").body());
    return List.of(
        "analyse",
        csv.toString(),
        "--column",
        "radius_mm",
        "--lsl",
        "1788",
        "--usl",
        "1812",
        "--target",
        "1800",
        "--position-column",
        "position",
        "--json");
  }

  private static JsonNode part(JsonNode analysis, String characteristic) {
    for (JsonNode each : analysis.get("characteristics")) {
      if (each.get("characteristic").asText().equals(characteristic)) {
        return each;
      }
    }
    throw new AssertionError(characteristic);
  }

  private static double figure(JsonNode of, String name) {
    for (JsonNode each : of.get("figures")) {
      if (each.get("name").asText().equals(name)) {
        return each.get("value").asDouble();
      }
    }
    throw new AssertionError(name + " in " + of);
  }

  private static void same(JsonNode page, JsonNode analysis) {
    assertEquals(page.get("count").asLong(), analysis.get("count").asLong());
    for (String name : FIGURES) {
      assertEquals(figure(page, name), figure(analysis, name), 1e-9, name);
    }
  }

  private void sameAsTheFile(Job job, String characteristic, JsonNode page) throws Exception {
    String text = served.get("/api/jobs/" + job.id() + "/statistics.csv").body();
    CSVFormat headed = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    int seen = 0;
    try (CSVParser parser = CSVParser.parse(text, headed)) {
      for (CSVRecord row : parser) {
        String name = row.get("figure");
        if (row.get("characteristic").equals(characteristic) && FIGURES.contains(name)) {
          assertEquals("job", row.get("scope"));
          assertEquals(figure(page, name), Double.parseDouble(row.get("value")), 1e-9, name);
          assertEquals(job.name(), row.get("job"));
          assertEquals("1788.0", row.get("lower_limit_mm"));
          seen++;
        }
      }
    }
    assertEquals(FIGURES.size(), seen);
  }

  private void same(Job job, String characteristic, String... more) throws Exception {
    JsonNode whole = page(job, characteristic, "job");
    same(whole, part(analysed(job, more), characteristic));
    sameAsTheFile(job, characteristic, whole);
  }

  @Test
  void withoutAChangeAllFiguresAreThoseOfTheWholeJob() throws Exception {
    Job job = ofSingles();
    served.readings(job, 60);
    same(job, "middle");
    JsonNode newest = page(job, "middle", "phase");
    same(newest, part(analysed(job), "middle"));
  }

  /** The range across the correction would be counted as spread; the excluded reading too. */
  @Test
  void withACorrectionEachScopeHasItsFigures() throws Exception {
    Job job = ofSingles();
    served.readings(job, 60);
    corrected(job, 30);
    same(job, "start");
    JsonNode newest = page(job, "start", "phase");
    JsonNode analysed = analysed(job, "--phase", "newest");
    same(newest, part(analysed, "start"));
    assertEquals("2", analysed.get("phase").asText());
    assertEquals("[\"1\",\"2\"]", analysed.get("phases").toString());
    assertTrue(
        Math.abs(figure(newest, "Cpk") - figure(page(job, "start", "job"), "Cpk")) > 1e-6,
        "the two scopes differ, or nothing was shown");
  }

  /** The last piece is complete although none follows it. */
  @Test
  void byPieceToo() throws Exception {
    Job job = served.job();
    served.readings(job, 63);
    corrected(job, 30);
    String[] byPiece = {"--piece-column", "piece"};
    same(job, "whole piece", byPiece);
    String[] newest = {"--piece-column", "piece", "--phase", "newest"};
    same(page(job, "whole piece", "phase"), part(analysed(job, newest), "whole piece"));
  }

  /** An excluded reading keeps its place among the readings of its subgroup. */
  @Test
  void inSubgroupsToo() throws Exception {
    Job job = by(new SubgroupRule(SubgroupRule.Kind.CONSECUTIVE, 4));
    served.readings(job, 90);
    corrected(job, 40);
    String[] whole = {"--subgroup", "4"};
    same(job, "middle", whole);
    String[] newest = {"--subgroup", "4", "--phase", "newest"};
    same(page(job, "middle", "phase"), part(analysed(job, newest), "middle"));
  }

  @Test
  void theOutputSaysWhichReadingsItIsOf() throws Exception {
    Job job = ofSingles();
    served.readings(job, 60);
    corrected(job, 30);
    List<String> words = words(job).subList(0, 8);
    String whole = Ran.command(words).out();
    assertTrue(whole.startsWith("radius_mm: 51 readings, whole job: phases 1 to 2"), whole);
    assertTrue(whole.contains("a job's page shows first: --phase newest"), whole);
    assertTrue(whole.contains("--position-column position"), whole);
    String one = Ran.command(words, "--phase", "1").out();
    assertTrue(one.startsWith("radius_mm: 25 readings, phase 1" + System.lineSeparator()), one);
    String last = Ran.command(words, "--phase", "newest").out();
    assertTrue(last.startsWith("radius_mm: 26 readings, phase 2, since the last change"), last);
    Ran none = Ran.command(words, "--phase", "7");
    assertEquals(2, none.code());
    assertTrue(none.err().contains("--phase: 7 is not in the file; allowed: newest, 1, 2"));
  }
}
