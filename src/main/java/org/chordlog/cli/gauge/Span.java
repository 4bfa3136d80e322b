package org.chordlog.cli.gauge;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.cli.common.JsonText;
import org.chordlog.cli.common.LengthOptions;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Sentence;
import org.chordlog.radius.SpanAdvice;
import org.chordlog.radius.SpanOption;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Which bridge to use for a radius. */
@Command(
    name = "span",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Tells which of the bridges at hand suits a radius and its tolerance.",
      "Recommended is the largest tolerance / U. Exit code 1 when no bridge can reach the radius."
    })
public final class Span implements Callable<Integer> {
  private static final double TRAVEL_MM = 25;
  private static final String SPANS = "50;100;200;300;500";
  private static final String INCH_SPANS = "2;4;8;12;20";

  @Spec private CommandSpec spec;

  @Option(names = "--radius", required = true, paramLabel = "L", description = "Radius asked for.")
  private String radius;

  @Option(
      names = "--tolerance",
      required = true,
      paramLabel = "L",
      description = "Its tolerance, ± this.")
  private String tolerance;

  @ArgGroup(multiplicity = "0..1")
  private @Nullable AtHand atHand;

  /** Where the bridges come from. */
  static final class AtHand {
    @Option(
        names = "--spans",
        paramLabel = "L",
        split = ";",
        description =
            "Spans at hand, in --unit, with semicolons ("
                + SPANS
                + "; with --unit inch "
                + INCH_SPANS
                + ").")
    private @Nullable List<String> spans;

    @Option(
        names = "--data",
        paramLabel = "DIR",
        description = "The bridges in use of a data directory, each with its feet and skew.")
    private @Nullable Path data;
  }

  @Option(
      names = "--piece-length",
      paramLabel = "L",
      description = "Bent length along the face the bridge stands on (no bound).")
  private @Nullable String pieceLength;

  @Mixin private GaugeOptions gauge;

  @Option(names = "--json", description = "Print JSON; lengths in mm.")
  private boolean json;

  @Override
  public Integer call() {
    List<SpanOption> options = advice().of(bridges());
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.println(JsonText.of(options.stream().map(SpanJson::of).toList()));
    } else {
      print(options, out);
    }
    out.flush();
    return options.stream().anyMatch(SpanOption::reachable) ? ExitCode.WELL : ExitCode.FAULT;
  }

  private SpanAdvice advice() {
    LengthOptions lengths = gauge.lengths;
    return new SpanAdvice(
        gauge.indicator(TRAVEL_MM),
        gauge.section(),
        gauge.measured(),
        gauge.specified(),
        lengths.mm("--radius", radius),
        lengths.mm("--tolerance", tolerance),
        pieceLength == null ? null : lengths.mm("--piece-length", pieceLength));
  }

  private List<Bridge> bridges() {
    if (atHand != null && atHand.data != null) {
      return kept(atHand.data);
    }
    String usual = gauge.lengths.metric() ? SPANS : INCH_SPANS;
    List<String> spans =
        atHand == null || atHand.spans == null ? List.of(usual.split(";")) : atHand.spans;
    return spans.stream().map(text -> gauge.bridge(gauge.lengths.mm("--spans", text))).toList();
  }

  private static List<Bridge> kept(Path data) {
    try (Store store = Stores.openForReading(data)) {
      List<Bridge> bridges = store.gauges().bridges();
      if (bridges.isEmpty()) {
        throw new BadInput("--data", data, "holds no bridge", "a directory with one or more");
      }
      return bridges;
    }
  }

  private void print(List<SpanOption> options, PrintWriter out) {
    out.printf(Locale.ROOT, "%10s %10s %10s %12s%n", "span", "depth", "U", "tolerance/U");
    options.forEach(option -> out.println(line(option)));
    out.println("All lengths in " + (gauge.lengths.metric() ? "mm." : "inches."));
  }

  private String line(SpanOption option) {
    Double ratio = option.toleranceOverU();
    Double depthMm = option.depthMm();
    return String.format(
            Locale.ROOT,
            "%10s %10s %10s %12s  %s",
            gauge.lengths.stated(option.bridge().spanMm()),
            depthMm == null ? "" : gauge.lengths.text(depthMm, 3),
            expanded(option),
            ratio == null ? "" : String.format(Locale.ROOT, "%.1f", ratio),
            words(option))
        .stripTrailing();
  }

  private static boolean ratioSuffices(SpanOption option) {
    Double ratio = option.toleranceOverU();
    return ratio != null && ratio > 1;
  }

  private String expanded(SpanOption option) {
    Double mm = option.expandedUncertaintyMm();
    return mm == null ? "" : gauge.lengths.byUncertainty(mm, mm);
  }

  private String words(SpanOption option) {
    List<String> words = new ArrayList<>();
    if (option.bridge().id() != 0) {
      words.add(option.bridge().name());
    }
    if (option.recommended()) {
      words.add(ratioSuffices(option) ? "recommended" : "the best of these");
    }
    words.addAll(said(option.remarks()));
    if (!option.reachable()) {
      words.add("no: " + String.join("; ", said(option.reasons())));
    }
    return String.join("; ", words);
  }

  private List<String> said(List<Sentence> sentences) {
    return sentences.stream().map(each -> each.in(gauge.lengths.lengths())).toList();
  }
}
