package org.chordlog.report;

/** How the figures come about, and what the report does not say. */
final class NotesSection {
  private NotesSection() {}

  static void write(JobReport report, Paper paper) {
    paper.heading("Notes");
    paper.text(
        "Radius: a = span/2, h = depth against the zero taken on a flat, ρ = (a² + h²)/(2|h|);"
            + " on a convex face R = ρ − foot radius, on a concave face R = ρ + foot radius; from"
            + " there to the specified face by the height of the section. Span, zero offset and foot"
            + " radius are those of the calibration where there is one.");
    paper.text(
        "Uncertainty: JCGM 100 (GUM), propagated in curvature; the interval covers 95.45 %, with k"
            + " from Student's t and the effective degrees of freedom.");
    paper.text(
        "Decision: ISO 14253-1 with a guard band of 1.645 standard uncertainties (in proportion to U"
            + " where these are few). Good (conforms): inside the limits by more than the guard"
            + " band. Out of tolerance (does not conform): outside by more. Too close to call"
            + " (undecided): a limit lies within the guard band.");
    paper.text(
        "Excluded readings stay listed with their reason and count in no figure. Run tests are"
            + " numbered after Nelson (1984).");
    paper.text(
        "Safety: measure only with the rollers stopped and the drive locked out; the machine's"
            + " manual and local rules come first. Structural or pressure work defers to the"
            + " applicable code and to licensed practice; this report states measured radii and"
            + " nothing else of the pieces.");
  }
}
