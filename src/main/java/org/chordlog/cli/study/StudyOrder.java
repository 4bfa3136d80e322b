package org.chordlog.cli.study;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.JsonText;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.study.StudyDesign;
import org.chordlog.study.StudyDesign.Step;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The order in which a study is measured, as a form to be filled in. */
@Command(
    name = "order",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Draws the order in which a study is measured and prints it as CSV with an empty column"
          + " value.",
      "The same seed gives the same order."
    })
final class StudyOrder implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(
      names = {"--pieces", "--parts"},
      paramLabel = "N",
      required = true,
      description = "Count of pieces.")
  private int parts;

  @Option(
      names = "--operators",
      paramLabel = "NAMES",
      required = true,
      split = ",",
      description = "Their names, with commas between.")
  private List<String> operators;

  @Option(
      names = "--repeats",
      paramLabel = "N",
      required = true,
      description = "Repeats of each cell.")
  private int repeats;

  @Option(
      names = "--places",
      paramLabel = "NAMES",
      split = ",",
      description = "Names of the places on each piece, for the split design.")
  private List<String> places = List.of();

  @Option(
      names = {"--own-pieces", "--own-parts"},
      description = "Nested: pieces are shared among the operators, in order.")
  private boolean ownParts;

  @Option(
      names = "--seed",
      paramLabel = "N",
      required = true,
      description = "Where the draw starts.")
  private long seed;

  @Option(names = "--json", description = "Print JSON.")
  private boolean json;

  @Override
  public Integer call() {
    Check.within("--pieces", parts, 1, 1000);
    List<String> names = IntStream.rangeClosed(1, parts).mapToObj(String::valueOf).toList();
    if (ownParts && !places.isEmpty()) {
      throw new BadInput("--own-pieces", places, "is given beside places", "one of the two");
    }
    StudyDesign design = new StudyDesign(names, places, operators, repeats);
    List<Step> steps = ownParts ? design.stepsOfOwnParts(seed) : design.steps(seed);
    spec.commandLine().getOut().println(json ? JsonText.of(steps) : csv(steps));
    return ExitCode.WELL;
  }

  private String csv(List<Step> steps) {
    StringBuilder csv = new StringBuilder("order,operator,part,");
    csv.append(places.isEmpty() ? "" : "place,").append("repeat,value");
    for (Step step : steps) {
      csv.append(System.lineSeparator())
          .append(step.order())
          .append(',')
          .append(step.operator())
          .append(',')
          .append(step.part())
          .append(',')
          .append(places.isEmpty() ? "" : step.place() + ",")
          .append(step.repeat())
          .append(',');
    }
    return csv.toString();
  }
}
