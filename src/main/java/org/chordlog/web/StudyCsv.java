package org.chordlog.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.commons.csv.CSVPrinter;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.Length;
import org.chordlog.report.DecimalMark;
import org.chordlog.store.Store;
import org.chordlog.web.http.Times;

/** Measurements of a study as CSV, with the columns that the command reads; radii in mm. */
record StudyCsv(DecimalMark mark) {
  private static final Object[] HEADER = {
    "part", "place", "operator", "repeat", "order", "value", "depth_mm", "time_utc"
  };

  String text(Store store, GaugeStudy study) {
    StringBuilder text = new StringBuilder();
    try (CSVPrinter printer = new CSVPrinter(text, mark.format())) {
      printer.printRecord(HEADER);
      for (StudyEvaluation.Taken each : new StudyEvaluation(store, study).complete()) {
        for (Object cell : cells(each)) {
          printer.print(mark.cell(cell));
        }
        printer.println();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.toString();
  }

  private static Object[] cells(StudyEvaluation.Taken taken) {
    return new Object[] {
      taken.step().part(),
      taken.step().place(),
      taken.step().operator(),
      taken.step().repeat(),
      taken.step().order(),
      1 / taken.measurement().result().curvaturePerMm(),
      Length.mm(taken.measurement().depthNm()),
      Times.iso(taken.measurement().captured().wallMicros())
    };
  }
}
