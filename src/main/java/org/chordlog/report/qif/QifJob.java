package org.chordlog.report.qif;

import java.util.List;
import org.chordlog.measure.Check;
import org.chordlog.measure.Job;

/**
 * What a document is made of; equal input gives equal bytes. {@code databaseId} makes the
 * document's identifiers unique among databases; {@code softwareVersion} is that of this program.
 */
public record QifJob(
    String databaseId,
    String softwareVersion,
    Job job,
    QifReadings readings,
    List<QifCapability> capabilities,
    List<QifStudy> studies) {
  public QifJob {
    Check.text("databaseId", databaseId);
    Check.text("softwareVersion", softwareVersion);
    capabilities = List.copyOf(capabilities);
    studies = List.copyOf(studies);
  }
}
