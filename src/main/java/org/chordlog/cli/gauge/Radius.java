package org.chordlog.cli.gauge;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.CsvOptions;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.JsonText;
import org.chordlog.cli.common.OutputFile;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Length;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.radius.MonteCarlo;
import org.chordlog.radius.RadiusModel;
import org.chordlog.report.DepthCard;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Depth to radius: one depth, a column of a CSV file, or a printable card. */
@Command(
    name = "radius",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Converts depths to radii with their uncertainty (95.45 %%).",
      "Depths are positive on an outer (convex) face, negative on an inner (concave) one.",
      "Lengths L are in --unit; a length may name that unit (12.5mm, 0.5in), another is refused.",
      "Exit code 1 if a radius is out of tolerance, or a depth of the file can't be converted."
    },
    footer = {
      "",
      "Measure only with the rollers stopped and the drive locked out;",
      "the machine's manual and local rules come first."
    })
public final class Radius implements Callable<Integer> {
  /** One of the three things to convert. */
  static final class What {
    @Option(names = "--depth", required = true, paramLabel = "L", description = "One depth.")
    private @Nullable String depth;

    @Option(
        names = "--csv",
        required = true,
        paramLabel = "FILE",
        description = "A CSV file with a header line; see --column.")
    private @Nullable Path csv;

    @Option(
        names = "--card",
        required = true,
        paramLabel = "FILE",
        description = "Write a depth-to-radius card as PDF; see --from, --to.")
    private @Nullable Path card;
  }

  @Spec private CommandSpec spec;

  @ArgGroup(multiplicity = "1")
  private What what;

  @Option(names = "--span", required = true, paramLabel = "L", description = "Span of the bridge.")
  private String span;

  @Mixin private GaugeOptions gauge;

  @Option(
      names = "--column",
      paramLabel = "COLUMN",
      defaultValue = "depth",
      description = "Column of the CSV file with the depths (${DEFAULT-VALUE}).")
  private String column;

  @Option(names = "--from", paramLabel = "L", description = "Least radius on the card.")
  private @Nullable String from;

  @Option(names = "--to", paramLabel = "L", description = "Largest radius on the card.")
  private @Nullable String to;

  @Mixin private LimitOptions limits = new LimitOptions();
  @Mixin private CsvOptions csvOptions = new CsvOptions();

  @Option(names = "--scatter", paramLabel = "L", description = "Standard deviation of samples (0).")
  private @Nullable String scatter;

  @Option(
      names = "--samples",
      paramLabel = "N",
      defaultValue = "1",
      description = "How many samples the depth is the mean of (${DEFAULT-VALUE}).")
  private int samples;

  @Option(names = "--budget", description = "Print the uncertainty budget line by line.")
  private boolean budget;

  @Option(names = "--monte-carlo", description = "Check by drawing the inputs (JCGM 101).")
  private boolean monteCarlo;

  @Option(
      names = "--trials",
      paramLabel = "N",
      defaultValue = "1000000",
      description = "Draws of the Monte Carlo, 10000 to 10000000 (${DEFAULT-VALUE}).")
  private int trials;

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "Its seed (${DEFAULT-VALUE}).")
  private long seed;

  @Option(names = "--json", description = "Print JSON; lengths in mm.")
  private boolean json;

  @Override
  public Integer call() {
    if (scatter != null && samples < 2) {
      throw new BadInput("--samples", samples, "can't have a scatter", "2 or more with --scatter");
    }
    try {
      return convert();
    } catch (BadInput refusal) {
      throw gauge.lengths.inUnit(refusal);
    }
  }

  private int convert() {
    RadiusModel model = RadiusModel.of(gauge.setUp(span));
    PrintWriter out = spec.commandLine().getOut();
    if (what.csv != null) {
      return column(model, what.csv, out);
    }
    if (what.card != null) {
      return card(model, what.card, out);
    }
    return one(model, String.valueOf(what.depth), out);
  }

  private int one(RadiusModel model, String depth, PrintWriter out) {
    long depthNm = Length.nm(gauge.lengths.mm("--depth", depth));
    long scatterNm = scatterNm();
    RadiusEstimate e = model.estimate(depthNm, scatterNm, samples);
    RadiusAnswer answer =
        new RadiusAnswer(
            Length.mm(depthNm),
            gauge.specified(),
            e,
            model.decide(e, limits.specification(gauge)),
            gauge.hasSection() && depthNm != 0 ? model.skewSentence(depthNm) : null,
            budget || json ? model.budget(depthNm, scatterNm, samples) : null,
            monteCarlo ? MonteCarlo.run(model, depthNm, scatterNm, samples, trials, seed) : null);
    out.print(json ? JsonText.of(answer) + "\n" : answer.text(gauge.lengths, budget));
    out.flush();
    return answer.decision() == Decision.DOES_NOT_CONFORM ? ExitCode.FAULT : ExitCode.WELL;
  }

  /** Rows that can't be converted are reported with their line; the others go on. */
  private int column(RadiusModel model, Path csv, PrintWriter out) {
    RadiusColumn converter =
        new RadiusColumn(model, limits.specification(gauge), gauge.lengths, scatterNm(), samples);
    List<RadiusColumn.Row> rows = converter.read(csv, csvOptions, column);
    if (json) {
      out.println(JsonText.of(rows));
    } else {
      converter.print(rows, out);
    }
    out.flush();
    return rows.stream().allMatch(RadiusColumn.Row::isWell) ? ExitCode.WELL : ExitCode.FAULT;
  }

  private long scatterNm() {
    return Length.nm(gauge.lengths.mm("--scatter", scatter, 0));
  }

  private String given(String option, @Nullable String text) {
    if (text == null) {
      throw new ParameterException(spec.commandLine(), "A card needs " + option + ".");
    }
    return text;
  }

  private int card(RadiusModel model, Path file, PrintWriter out) {
    DepthCard card =
        new RadiusCard(model, gauge.lengths, gauge.sectionText())
            .card(
                gauge.lengths.mm("--from", given("--from", from)),
                gauge.lengths.mm("--to", given("--to", to)));
    OutputFile.write("--card", file, card::write);
    out.println(json ? JsonText.of(card) : file + ": " + card.rows().size() + " rows");
    out.flush();
    return ExitCode.WELL;
  }
}
