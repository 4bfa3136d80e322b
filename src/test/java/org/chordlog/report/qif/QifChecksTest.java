package org.chordlog.report.qif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The document against the standard's schemas and checks, and against checks of our own. */
final class QifChecksTest {
  private static final int COUNT = 36;

  @TempDir private Path folder;

  private static String text(QifJob job) {
    return new String(QifJobs.bytes(job), StandardCharsets.UTF_8);
  }

  private Path file(QifJob job) throws Exception {
    return Files.write(folder.resolve("job.qif"), QifJobs.bytes(job));
  }

  @Test
  void passesTheSchemasAndTheStandardsOwnChecks() throws Exception {
    QifSchemas schemas = QifSchemas.orSkip();
    QifJob job = QifJobs.small(COUNT);
    for (QifJob each :
        List.of(
            job,
            QifJobs.small(1),
            QifJobs.without(job, List.of()),
            QifJobs.without(job, job.studies()))) {
      Path document = file(each);
      assertEquals("", schemas.schemaFaults(document));
      String report = schemas.report(document);
      assertTrue(report.contains("<CheckFormat/>"), report);
      assertTrue(report.contains("<CheckSemantic/>"), report);
      assertEquals(2, report.split("<Error>", -1).length - 1, "nominal not drawn: " + report);
    }
  }

  @Test
  void theChecksBite() throws Exception {
    QifSchemas schemas = QifSchemas.orSkip();
    String good = text(QifJobs.small(COUNT));
    Path bad = folder.resolve("bad.qif");
    Files.writeString(bad, good.replace("INDETERMINATE", "DONTKNOW"));
    assertFalse(schemas.schemaFaults(bad).isEmpty());
    Files.writeString(bad, good.replaceFirst("idMax=\"\\d+\"", "idMax=\"9\""));
    assertFalse(schemas.report(bad).contains("<CheckFormat/>"));
  }

  /** By the processor for long documents they find the same. */
  @Test
  void theChecksOfLongDocumentsFindTheSame() throws Exception {
    QifSchemas schemas = QifSchemas.orSkip();
    String good = text(QifJobs.small(COUNT));
    Path document = folder.resolve("either.qif");
    for (String each :
        List.of(
            good,
            good.replaceFirst("idMax=\"\\d+\"", "idMax=\"9\""),
            good.replaceFirst("<Ids n=\"\\d+\"", "<Ids n=\"77\""))) {
      Files.writeString(document, each);
      String report = schemas.report(document);
      assertEquals(faults(report), faults(schemas.reportOfLong(document)));
      assertEquals(each.equals(good), report.contains("<CheckFormat/>"));
    }
  }

  private static List<String> faults(String report) {
    return Pattern.compile("<Check(Format|Semantic|Quality)/?>|<Report>[^<]*")
        .matcher(report)
        .results()
        .map(MatchResult::group)
        .toList();
  }

  @Test
  void passesOurOwnChecks() throws Exception {
    QifJob job = QifJobs.small(COUNT);
    assertEquals(List.of(), QifChecks.faults(QifJobs.bytes(job)));
    assertEquals(List.of(), QifChecks.faults(QifJobs.bytes(QifJobs.without(job, List.of()))));
  }

  @Test
  void ourOwnChecksBite() throws Exception {
    String good = text(QifJobs.small(COUNT));
    bites(good, "idMax=\"\\d+\"", "idMax=\"4000\"", "largest id");
    bites(good, "<MeasuredIds>\n<Ids n=\"\\d+\"", "<MeasuredIds>\n<Ids n=\"2\"", "Ids n 2");
    bites(good, "<FormalStandardId>1<", "<FormalStandardId>4711<", "points nowhere");
    bites(good, "(<MaxValue[^>]*>)1812", "$11787", "above");
    bites(good, " meanError=\"0\"", "", "go together");
  }

  private static void bites(String good, String from, String to, String fault) throws Exception {
    String bad = good.replaceFirst(from, to);
    assertNotEquals(good, bad);
    String faults = QifChecks.faults(bad.getBytes(StandardCharsets.UTF_8)).toString();
    assertTrue(faults.contains(fault), faults);
  }
}
