package org.chordlog.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Ran;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.report.JobReport;
import org.chordlog.report.Reports;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class ReportCommandTest {
  private static final JobReport SAMPLE = Reports.of(30);

  @TempDir private Path folder;

  @BeforeEach
  void keepAJob() {
    try (Store store = Stores.open(folder.resolve("data"))) {
      Job job = store.jobs().add(SAMPLE.job(), "operator");
      long setUp =
          store.readings().keep(Objects.requireNonNull(SAMPLE.measured().setUps().get(1L)));
      SAMPLE.readings().forEach(reading -> keep(store, reading, job.id(), setUp));
    }
  }

  private static void keep(Store store, Reading r, long job, long setUp) {
    store
        .readings()
        .append(
            new Reading(
                0,
                r.source(),
                new Reading.Place(job, r.piece(), r.position()),
                new Reading.Measured(r.captured(), r.depthNm(), setUp),
                r.result(),
                r.circumstances()))
        .join();
  }

  @Test
  void writesTheReportOfAKeptJob() throws IOException {
    Path out = folder.resolve("job.pdf");
    assertEquals(ExitCode.WELL, run("1", out).code());
    try (PdfReader reader = new PdfReader(Files.readAllBytes(out))) {
      String first = new PdfTextExtractor(reader).getTextFromPage(1);
      assertTrue(first.contains("Canopy hoops"), first);
      assertTrue(first.contains("Certificate of measured radius"), first);
      assertTrue(all(reader).contains("Cpk"));
      assertTrue(all(reader).contains("Distribution and capability"));
      assertTrue(all(reader).contains("Positions compared"));
    }
  }

  private void exclude(long reading, String reason) {
    try (Store store = Stores.open(folder.resolve("data"))) {
      var unused = store.readings().add(new Exclusion(0, reading, true, reason, 1, "operator"));
    }
  }

  private String certificate() throws IOException {
    Path out = folder.resolve("job.pdf");
    assertEquals(ExitCode.WELL, run("1", out, "--certificate").code());
    try (PdfReader reader = new PdfReader(Files.readAllBytes(out))) {
      return new PdfTextExtractor(reader).getTextFromPage(1).replaceAll("\\s+", " ");
    }
  }

  /** Without the list of readings the reasons are on page one. */
  @Test
  void aCertificateSaysWhatIsExcludedAndWhy() throws IOException {
    exclude(29, "bridge slipped");
    exclude(30, "bridge slipped");
    String first = certificate();
    assertTrue(
        first.contains(
            "2 of 30 readings are excluded and count in no figure: 2 × “bridge slipped”."),
        first);
    assertTrue(first.contains("Readings that count 28"), first);
  }

  /** Each of them has its piece there among its reasons, but they went for one. */
  @Test
  void readingsThatWereMovedToOneJobAreOneReasonOfACertificate() throws IOException {
    for (int i = 1; i <= 7; i++) {
      exclude(23 + i, Exclusion.belongsTo("rings", i));
    }
    String first = certificate();
    assertTrue(first.contains("count in no figure: 7 × “Belongs to job rings”."), first);
  }

  private static String all(PdfReader reader) throws IOException {
    StringBuilder text = new StringBuilder();
    for (int page = 1; page <= reader.getNumberOfPages(); page++) {
      text.append(new PdfTextExtractor(reader).getTextFromPage(page)).append(' ');
    }
    return text.toString();
  }

  @Test
  void writesTheStatisticsAsCsv() throws IOException {
    Path out = folder.resolve("job.csv");
    assertEquals(ExitCode.WELL, run("1", out).code());
    assertTrue(Files.readString(out).contains("whole piece,job,30,Cpk,"), Files.readString(out));
  }

  @Test
  void refusesAnUnknownJobAndAnUnknownEnding() {
    Ran unknown = run("99", folder.resolve("job.pdf"));
    assertEquals(ExitCode.BAD_INPUT, unknown.code());
    assertTrue(unknown.err().contains("does not exist"), unknown.err());
    Ran ending = run("1", folder.resolve("job.docx"));
    assertEquals(ExitCode.BAD_INPUT, ending.code());
    assertTrue(ending.err().contains(".pdf, .csv"), ending.err());
    Ran nowhere = run("1", folder.resolve("none").resolve("job.csv"));
    assertTrue(nowhere.err().contains("its folder does not exist;"), nowhere.err());
    Ran zone = run("1", folder.resolve("job.pdf"), "--zone", "BST");
    assertEquals(ExitCode.BAD_INPUT, zone.code());
    assertTrue(zone.err().startsWith("--zone: 'BST' is not a time zone, as "), zone.err());
  }

  @Test
  void lengthsAreInInchesWhereAsked() throws IOException {
    Path out = folder.resolve("job.pdf");
    assertEquals(ExitCode.WELL, run("1", out, "--unit", "inch").code());
    try (PdfReader reader = new PdfReader(Files.readAllBytes(out))) {
      assertTrue(all(reader).contains("71.3386 in"), all(reader));
    }
    Ran csv = run("1", folder.resolve("job.csv"), "--unit", "inch");
    assertEquals(ExitCode.BAD_INPUT, csv.code());
    assertTrue(csv.err().contains("--unit"), csv.err());
  }

  private Ran run(String job, Path out, String... more) {
    String data = folder.resolve("data").toString();
    List<String> arguments = new ArrayList<>(List.of("report", "--job", job, "--data", data));
    arguments.addAll(List.of("--output", out.toString()));
    arguments.addAll(List.of(more));
    return Ran.command(arguments.toArray(String[]::new));
  }
}
