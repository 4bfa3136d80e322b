package org.chordlog.verdict;

import org.chordlog.stats.control.ChartSettings;

/**
 * What the newest jobs of a machine show on one chart. Whether the machine is steady is said by
 * {@link MachineStatement} alone: points found here are places to look at.
 *
 * @param readings pooled ones
 * @param signals points that broke a rule of the pooled charts
 */
public record ShortRunStatement(int jobs, long readings, long signals) {
  private static final int LEAST_JOBS = 2;
  private static final int BASELINE = ChartSettings.usual().baselinePoints();

  /** Whether points of the pooled chart are to be looked at. */
  public Statement statement() {
    if (jobs < LEAST_JOBS) {
      return Statement.of(
          Tone.QUIET,
          "Nothing to compare yet",
          "Jobs are compared from two on; a single job has its own chart.");
    }
    if (readings < BASELINE) {
      return Statement.of(
          Tone.QUIET,
          "Too few readings to tell",
          Counted.of(readings, "reading") + " so far; the control limits need " + BASELINE + ".");
    }
    return signals == 0 ? quiet() : found();
  }

  private Statement quiet() {
    return Statement.of(Tone.GOOD, "No shift between these jobs", "No point broke a rule.");
  }

  /** One in eight: DEVELOPERS, decision on pooled short runs (simulated, 1,000 runs). */
  private Statement found() {
    return new Statement(
        Tone.OPEN,
        "Points to look at",
        Counted.of(signals, "point")
            + " broke a rule; on one steady machine in eight that is chance.",
        "Look at what changed before the first of them: setting, tube, rollers, or a target keyed in"
            + " wrong.");
  }
}
