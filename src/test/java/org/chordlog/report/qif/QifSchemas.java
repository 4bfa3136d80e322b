package org.chordlog.report.qif;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.stream.StreamResult;
import javax.xml.transform.stream.StreamSource;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/**
 * The standard's schemas and checks, which are not part of this project: the folder that the system
 * property {@code chordlog.qif} names, else {@code ../shared/qif} beside the project's folder. The
 * programs are those of Debian's libxml2-utils and xsltproc.
 */
public final class QifSchemas {
  private static final Pattern FOREIGN = Pattern.compile("user:[A-Za-z]+\\([^)]*\\)");
  private static final long MOST_SECONDS = 300;

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

  /**
   * The same of a document of any length, by the processor of the JDK, which compiles the checks:
   * xsltproc looks through all siblings of an element to match it, so that its time grows with the
   * square of the length. Calls of functions that neither processor has, all for arrays of numbers,
   * which these documents do not have, are left out.
   */
  public String reportOfLong(Path document) throws Exception {
    Path copy = Files.createTempDirectory(document.toAbsolutePath().getParent(), "checks");
    try (Stream<Path> files = Files.list(folder.resolve("checks"))) {
      for (Path each : files.toList()) {
        String text = Files.readString(each, StandardCharsets.UTF_8);
        Files.writeString(copy.resolve(each.getFileName()), FOREIGN.matcher(text).replaceAll("0"));
      }
    }
    StringWriter report = new StringWriter();
    transformer(copy.resolve("Check.xsl"))
        .transform(new StreamSource(document.toFile()), new StreamResult(report));
    return report.toString();
  }

  private static Transformer transformer(Path checks) throws Exception {
    TransformerFactory factory = TransformerFactory.newDefaultInstance();
    for (String limit : List.of("xpathExprGrpLimit", "xpathExprOpLimit", "xpathTotalOpLimit")) {
      factory.setAttribute("jdk.xml." + limit, "0");
    }
    return factory.newTemplates(new StreamSource(checks.toFile())).newTransformer();
  }

  private String run(Path document, String... command) throws Exception {
    Path said = Files.createTempFile(document.toAbsolutePath().getParent(), "said", ".txt");
    ProcessBuilder builder =
        new ProcessBuilder(new ArrayList<>(List.of(command)))
            .redirectErrorStream(true)
            .redirectOutput(said.toFile());
    builder.environment().put("XML_CATALOG_FILES", folder.resolve("catalog.xml").toString());
    Process process = builder.start();
    Assertions.assertTrue(
        process.waitFor(MOST_SECONDS, TimeUnit.SECONDS), command[0] + " takes too long");
    return Files.readString(said, StandardCharsets.UTF_8);
  }
}
