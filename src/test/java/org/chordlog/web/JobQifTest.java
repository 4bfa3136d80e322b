package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Ran;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.report.qif.QifChecks;
import org.chordlog.report.qif.QifSchemas;
import org.chordlog.store.Some;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A stored job as QIF, by the service and by the command. */
@Tag("slow")
final class JobQifTest {
  @TempDir Path directory;

  private Path exported(String name, long job) {
    Path file = directory.resolve(name);
    Ran ran =
        Ran.command(
            "export",
            "--data",
            directory.toString(),
            "--job",
            Long.toString(job),
            "--format",
            "qif",
            "--output",
            file.toString());
    assertEquals(ExitCode.WELL, ran.code(), ran.err());
    return file;
  }

  @Test
  void serviceAndCommandGiveTheSameBytesAndTheyPassTheStandardsChecks() throws Exception {
    Path document = directory.resolve("job.qif");
    try (Served served = new Served(directory)) {
      Job job = served.job();
      served.readings(job, 2_100); // more than two pages of the store, the last reading a flat
      served.store.readings().add(new Exclusion(0, 9, true, "knocked", Some.T0, "me"));
      HttpResponse<String> answer = served.get("/api/jobs/" + job.id() + "/results.qif");
      assertEquals(200, answer.statusCode());
      assertEquals("application/xml", answer.headers().firstValue("Content-Type").orElseThrow());
      Files.writeString(document, answer.body());
      assertEquals(answer.body(), Files.readString(exported("by-command.qif", job.id())));
      assertEquals(answer.body(), served.get("/api/jobs/" + job.id() + "/results.qif").body());
      Job small = served.job();
      served.readings(small, 40);
      CompleteStudy.in(served.store, small);
      String studied = served.get("/api/jobs/" + small.id() + "/results.qif").body();
      assertTrue(studied.contains("<GageRandR>"), "the study of its gauge");
      String statistics = served.get("/api/jobs/" + small.id() + "/statistics").body();
      assertTrue(statistics.contains("By the study hoops in spring it takes"), statistics);
      passesTheStandardsChecks(exported("small.qif", small.id()));
    }
    String text = Files.readString(document);
    assertEquals(2_100, text.split("</RadiusCharacteristicMeasurement>", -1).length - 1);
    assertEquals(4, text.split("<RadiusCharacteristicStats>", -1).length - 1);
    assertTrue(text.contains("<OtherExclusionReason>knocked<"));
    assertTrue(text.contains("combinedUncertainty="));
    assertTrue(text.contains("<ExpirationDate>"), "calibration of the gauge");
    assertEquals(List.of(), QifChecks.faults(text.getBytes(StandardCharsets.UTF_8)));
  }

  private static void passesTheStandardsChecks(Path document) throws Exception {
    QifSchemas schemas = QifSchemas.orSkip();
    assertEquals("", schemas.schemaFaults(document));
    String report = schemas.report(document);
    assertTrue(report.contains("<CheckFormat/>"), report);
    assertTrue(report.contains("<CheckSemantic/>"), report);
  }

  @Test
  void oneJobInOneFile() {
    try (Served served = new Served(directory)) {
      assertEquals(1, served.job().id());
      Ran ran = Ran.command("export", "--data", directory.toString(), "--format", "qif");
      assertEquals(ExitCode.BAD_INPUT, ran.code());
      assertTrue(ran.err().startsWith("--format: qif is one job in one file"), ran.err());
      Ran other = Ran.command("export", "--data", directory.toString(), "--format", "xls");
      assertTrue(other.err().startsWith("--format: xls is not known"), other.err());
    }
  }
}
