package org.chordlog.bench;

import java.nio.file.Path;
import org.chordlog.report.qif.QifSchemas;

/**
 * The standard's own XSLT checks of a long QIF document, as {@code QifLoad} writes it: {@code
 * QifCheckLoad FILE}. Tells how long they take and how many faults of format, of quality and of
 * semantics they find. Exit code 1 if there is one of format or semantics.
 */
public final class QifCheckLoad {
  private QifCheckLoad() {}

  public static void main(String[] arguments) throws Exception {
    Path document = Path.of(arguments[0]);
    QifSchemas schemas = QifSchemas.orSkip();
    long start = System.nanoTime();
    String report = schemas.reportOfLong(document);
    System.out.printf("checked in %.1f s%n", (System.nanoTime() - start) / 1e9);
    int faults = told(report, "Format") + told(report, "Semantic");
    int unused = told(report, "Quality");
    System.exit(faults == 0 ? 0 : 1);
  }

  private static int told(String report, String section) {
    String name = "Check" + section;
    boolean empty = report.contains("<" + name + "/>");
    int from = report.indexOf("<" + name + ">");
    if (!empty && from < 0) {
      throw new IllegalStateException("no " + name + " in the report: " + report);
    }
    int faults = empty ? 0 : count(report.substring(from, report.indexOf("</" + name + ">")));
    System.out.printf("%s: %d faults%n", section, faults);
    return faults;
  }

  private static int count(String section) {
    return section.split("<Error>", -1).length - 1;
  }
}
