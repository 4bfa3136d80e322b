package org.chordlog.cli.study;

import java.util.Optional;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.JsonText;
import org.chordlog.measure.Check;
import org.chordlog.study.Criteria;
import org.chordlog.study.StudyPlanner;
import org.chordlog.study.StudyPlanner.Assumed;
import org.chordlog.study.StudyPlanner.Option;
import org.chordlog.study.StudySettings;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** How large a study has to be. */
@Command(
    name = "plan",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = "Tells how many pieces, operators and repeats give an interval that decides.")
final class StudyPlan implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @picocli.CommandLine.Option(
      names = "--expected",
      required = true,
      paramLabel = "PERCENT",
      description = "GRR that is expected, percent of the study variation.")
  private double expected;

  @picocli.CommandLine.Option(
      names = "--limit",
      paramLabel = "PERCENT",
      defaultValue = "30",
      description = "GRR that passes (${DEFAULT-VALUE}).")
  private double limit;

  @picocli.CommandLine.Option(
      names = "--places",
      paramLabel = "N",
      defaultValue = "0",
      description = "Places on each piece, for the split design (${DEFAULT-VALUE}: none).")
  private int places;

  @picocli.CommandLine.Option(
      names = "--most",
      paramLabel = "READINGS",
      defaultValue = "400",
      description = "Readings at most (${DEFAULT-VALUE}).")
  private int most;

  @picocli.CommandLine.Option(names = "--json", description = "Print JSON.")
  private boolean json;

  @Override
  public Integer call() {
    Assumed assumed = Assumed.usual(expected);
    Check.within("--places", places, 0, 20);
    Check.within("--most", most, 1, 100_000);
    StudySettings settings = StudySettings.usual().with(Criteria.USUAL.withGaugePercent(limit));
    Optional<Option> found = StudyPlanner.fewest(assumed, places == 1 ? 0 : places, most, settings);
    String says = StudyPlanner.says(found.orElse(null), assumed, limit);
    spec.commandLine().getOut().println(json ? JsonText.of(new Answer(found, says)) : says);
    return ExitCode.WELL;
  }

  /** What is printed with {@code --json}. */
  private record Answer(@Nullable Option design, int readings, String says) {
    Answer(Optional<Option> found, String says) {
      this(found.orElse(null), found.map(Option::readings).orElse(0), says);
    }
  }
}
