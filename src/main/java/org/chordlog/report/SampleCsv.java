package org.chordlog.report;

import java.io.IOException;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.chordlog.measure.CsvText;
import org.chordlog.measure.Sample;
import org.chordlog.store.Traces;

/** The raw samples of a station as CSV (RFC 4180), one a line; pages by sequence. */
public final class SampleCsv {
  private static final int PAGE = 10_000;

  private SampleCsv() {}

  /** Samples from one sequence to another, both included; how many were written. */
  public static long write(Traces traces, String station, long first, long last, Appendable out)
      throws IOException {
    CSVPrinter printer = new CSVPrinter(out, CSVFormat.RFC4180);
    printer.printRecord(
        "station",
        "sequence",
        "time_utc",
        "wall_micros",
        "monotonic_nanos",
        "value_nm",
        "channel",
        "button");
    long next = first;
    long count = 0;
    List<Sample> page;
    do {
      page = traces.range(station, next, last, PAGE);
      for (Sample sample : page) {
        print(printer, station, sample);
        next = sample.sequence() + 1;
      }
      count += page.size();
    } while (page.size() == PAGE);
    return count;
  }

  private static void print(CSVPrinter to, String station, Sample sample) throws IOException {
    to.printRecord(
        CsvText.harmless(station),
        sample.sequence(),
        UtcTime.text(sample.wallMicros()),
        sample.wallMicros(),
        sample.monotonicNanos(),
        sample.valueNm(),
        sample.channel(),
        sample.button());
  }
}
