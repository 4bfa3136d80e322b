package org.chordlog.report.qif;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/**
 * The standard's schemas and checks, which are not part of this project: the folder that the system
 * property {@code chordlog.qif} names, else {@code ../shared/qif} beside the project's folder. The
 * programs are those of Debian's libxml2-utils and xsltproc.
 */
public final class QifSchemas {
  private final Path folder;

  private QifSchemas(Path folder) {
    this.folder = folder;
  }

  /** Skips the test loudly where they are missing. */
  public static QifSchemas orSkip() throws Exception {
    Path folder = Path.of(System.getProperty("chordlog.qif", "../shared/qif"));
    if (!Files.isDirectory(folder.resolve("xsd"))) {
      skip("the QIF schemas are not in " + folder + "; name their folder by -Dchordlog.qif");
    }
    for (String program : List.of("xmllint", "xsltproc")) {
      if (runs(program).isEmpty()) {
        String missing = program + " is missing: install libxml2-utils and xsltproc";
        Assertions.assertFalse(Boolean.parseBoolean(System.getenv("CI")), missing);
        skip(missing);
      }
    }
    return new QifSchemas(folder.toAbsolutePath().normalize());
  }

  private static void skip(String why) {
    System.err.println("SKIPPED validation of QIF documents: " + why);
    Assumptions.abort(why);
  }

  private static Optional<Process> runs(String program) throws InterruptedException {
    try {
      Process process = new ProcessBuilder(program, "--version").start();
      process.waitFor(30, TimeUnit.SECONDS);
      return Optional.of(process);
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /** What xmllint says; empty where the document is valid. */
  public String schemaFaults(Path document) throws Exception {
    String said =
        run(
            document,
            "xmllint",
            "--nonet",
            "--noout",
            "--schema",
            folder.resolve("xsd/QIFApplications/QIFDocument.xsd").toString(),
            document.toString());
    return said.strip().equals(document + " validates") ? "" : said;
  }

  /** The report of the standard's checks. */
  public String report(Path document) throws Exception {
    String checks = folder.resolve("checks/Check.xsl").toString();
    return run(document, "xsltproc", "--nonet", checks, document.toString());
  }

  private String run(Path document, String... command) throws Exception {
    Path said = Files.createTempFile(document.toAbsolutePath().getParent(), "said", ".txt");
    ProcessBuilder builder =
        new ProcessBuilder(new ArrayList<>(List.of(command)))
            .redirectErrorStream(true)
            .redirectOutput(said.toFile());
    builder.environment().put("XML_CATALOG_FILES", folder.resolve("catalog.xml").toString());
    Process process = builder.start();
    Assertions.assertTrue(process.waitFor(300, TimeUnit.SECONDS), command[0] + " takes too long");
    return Files.readString(said, StandardCharsets.UTF_8);
  }
}
