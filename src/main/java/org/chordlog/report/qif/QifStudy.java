package org.chordlog.report.qif;

import org.chordlog.measure.Check;
import org.chordlog.study.StudyResult;

/** A study of the gauge under its name; lengths in it are mm. */
public record QifStudy(String name, StudyResult result) {
  public QifStudy {
    Check.text("name", name);
  }
}
