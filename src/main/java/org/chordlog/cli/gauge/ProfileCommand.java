package org.chordlog.cli.gauge;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.JsonText;
import org.chordlog.measure.DecideBy;
import org.chordlog.profile.DelayFinder;
import org.chordlog.profile.RollerVerdict;
import org.chordlog.radius.RadiusModel;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A recorded stream of a gauge in the line: the radius along each piece that ran through. */
@Command(
    name = "profile",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Tells the radius along each piece that ran through a bridge fixed behind the rollers.",
      "From a CSV file with columns time_s, depth_mm (less its zero), and length_mm or count.",
      "Depths are positive on an outer (convex) face, negative on an inner (concave) one.",
      "Exit code 1 if a piece gives no result, or none is in the file."
    },
    footer = {
      "",
      "Fit, zero and adjust the gauge and the rollers only with the rollers stopped"
          + " and the drive locked out; the machine's manual and local rules come first."
    })
public final class ProfileCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE", description = "CSV with comma, semicolon or tab.")
  private Path file;

  @Option(names = "--span", required = true, paramLabel = "L", description = "Span of the bridge.")
  private String span;

  @Mixin private GaugeOptions gauge;

  @Mixin private LimitOptions limits = new LimitOptions();

  @Option(
      names = "--by",
      paramLabel = "WHAT",
      defaultValue = "mean",
      description = "What must be inside the limits: mean, everywhere or both (mean).")
  private DecideBy decideBy = DecideBy.MEAN;

  @Mixin private LineOptions line;

  @Option(
      names = "--find-delay",
      description = "Find the delay of depths behind lengths: one bent piece run forth and back.")
  private boolean findDelay;

  @Option(names = "--json", description = "Print JSON; lengths in mm.")
  private boolean json;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    LineRows rows = LineRows.read(file, line, gauge.lengths);
    LineRun run =
        new LineRun(
            rows,
            RadiusModel.of(gauge.setUp(span)),
            line,
            gauge.lengths,
            limits.specification(gauge),
            decideBy);
    int code = findDelay ? delay(run.delay(), out) : pieces(run, out);
    out.flush();
    return code;
  }

  private int delay(DelayFinder.Delay delay, PrintWriter out) {
    if (json) {
      out.println(JsonText.of(delay));
    } else {
      out.printf(
          Locale.ROOT,
          "Depths come %.1f ± %.1f ms after their lengths.%n",
          delay.ms(),
          2 * delay.uncertaintyMs());
    }
    return ExitCode.WELL;
  }

  private int pieces(LineRun run, PrintWriter out) {
    List<LineRun.Piece> pieces = run.pieces();
    ProfileAnswer answer = ProfileAnswer.of(pieces, run);
    if (json) {
      out.println(JsonText.of(answer));
    } else {
      print(pieces, run, out);
    }
    return answer.whole() ? ExitCode.WELL : ExitCode.FAULT;
  }

  private void print(List<LineRun.Piece> pieces, LineRun run, PrintWriter out) {
    ProfileText text = new ProfileText(gauge.lengths, gauge.lengths.mm("--span", span));
    for (int i = 0; i < pieces.size(); i++) {
      out.print(text.piece(i + 1, pieces.get(i)));
    }
    if (pieces.isEmpty()) {
      out.println("No piece ran through from its front to its end.");
    }
    RollerVerdict together = run.pooled();
    if (together != null) {
      out.print(text.together(together));
      run.trends().forEach(trend -> out.print(text.trend(trend)));
    }
    RollerVerdict twice = run.twice();
    if (twice != null) {
      out.print(text.twice(twice));
    }
  }
}
