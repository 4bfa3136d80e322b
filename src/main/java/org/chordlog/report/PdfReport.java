package org.chordlog.report;

import com.lowagie.text.pdf.PdfWriter;

/** A job as a PDF on A4. */
public final class PdfReport {
  private final JobReport report;
  private final Runnable rowDone;

  private PdfReport(JobReport report, Runnable rowDone) {
    this.report = report;
    this.rowDone = rowDone;
  }

  /** Equal reports give equal bytes. */
  public static byte[] write(JobReport report) {
    return write(report, () -> {});
  }

  /** The same; {@code rowDone} is called for each reading laid out, twice for all. */
  public static byte[] write(JobReport report, Runnable rowDone) {
    String name = report.job().name();
    PdfPages.Head head =
        new PdfPages.Head(
            name,
            "Certificate: " + name,
            "Radius of roll-bent pieces",
            report.printing().madeAt(),
            report.zone());
    return PdfPages.lay(head, new PdfReport(report, rowDone)::sections).bytes();
  }

  private void sections(Paper paper, PdfWriter writer) {
    CertificateSection.write(report, paper);
    paper.newPage();
    CautionsSection.write(report, paper);
    GaugeSection.write(report, paper);
    FiguresSection.write(report, paper);
    ChartsSection.write(report, paper, writer);
    LineSection.write(report, paper, writer);
    FiguresSection.writeByPosition(report, paper);
    PartsSection.write(report, paper);
    HistorySection.write(report, paper);
    NotesSection.write(report, paper);
    if (report.printing().withReadings()) {
      ReadingsSection.write(report, paper, rowDone);
    }
  }
}
