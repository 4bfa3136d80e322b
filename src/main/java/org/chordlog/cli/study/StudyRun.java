package org.chordlog.cli.study;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.chordlog.cli.study.StudyTable.Names;
import org.chordlog.measure.BadInput;
import org.chordlog.radius.Chord;
import org.chordlog.study.BiasStudy;
import org.chordlog.study.Contribution;
import org.chordlog.study.CrossedStudy;
import org.chordlog.study.FigureUnit;
import org.chordlog.study.LinearityStudy;
import org.chordlog.study.MeasuringProcess;
import org.chordlog.study.NestedStudy;
import org.chordlog.study.OneOperatorStudy;
import org.chordlog.study.PlacingStudy;
import org.chordlog.study.ProcessCapability;
import org.chordlog.study.RangeStudy;
import org.chordlog.study.SplitStudy;
import org.chordlog.study.SplitStudy.Places;
import org.chordlog.study.StabilityStudy;
import org.chordlog.study.StudyKind;
import org.chordlog.study.StudyReading;
import org.chordlog.study.StudyResult;
import org.chordlog.study.StudySettings;
import org.chordlog.study.TypeOneStudy;

/** Hands the columns of a file to the study that was asked for. */
final class StudyRun {
  private static final String VALUE = "value";
  private final StudyTable table;
  private final StudyInputs inputs;
  private final KindOptions options;
  private final StudySettings settings;

  StudyRun(StudyTable table, StudyInputs inputs, KindOptions options) {
    this.table = table;
    this.inputs = inputs;
    this.options = options;
    settings = inputs.settings();
  }

  /** {@link BadInput} that names row and column. */
  StudyResult result(StudyKind kind) {
    try {
      return found(kind);
    } catch (BadInput refused) {
      Names names = kind == StudyKind.STABILITY ? Names.STABILITY : Names.USUAL;
      throw new StudyRows(table, names).located(refused);
    }
  }

  private StudyResult found(StudyKind kind) {
    return switch (kind) {
      case CROSSED -> CrossedStudy.of(readings(), settings);
      case RANGE -> RangeStudy.of(readings(), settings);
      case NESTED -> NestedStudy.of(readings(), options.otherPieces(), settings);
      case SPLIT -> split();
      case ONE_OPERATOR -> OneOperatorStudy.of(readings(), settings);
      case BIAS -> BiasStudy.of(values(), inputs.master(), settings);
      case LINEARITY -> linearity();
      case STABILITY ->
          StabilityStudy.of(
              table.readings(Names.STABILITY, false, values()), inputs.masterIfGiven(), settings);
      case TYPE1 -> typeOne();
      case PLACING -> placing();
      case PROCESS -> process();
    };
  }

  private double[] values() {
    return inputs.study(table.numbers(VALUE));
  }

  private List<StudyReading> readings() {
    return table.readings(Names.USUAL, false, values());
  }

  private StudyResult split() {
    Places places = options.marks() ? Places.MARKS : Places.AS_NAMED;
    return SplitStudy.of(table.readings(Names.USUAL, true, values()), places, settings);
  }

  private StudyResult linearity() {
    double[] references = table.numbers("reference");
    Double span = options.spanMm();
    if (span == null) {
      return LinearityStudy.of(inputs.study(references), values(), settings).result(null);
    }
    double[] depths =
        Arrays.stream(references)
            .map(radius -> Chord.depthMm(1 / radius, span, options.footRadiusMm()))
            .toArray();
    return LinearityStudy.of(
            depths, table.numbers(VALUE), settings.with(FigureUnit.as(inputs.unit())))
        .result(span);
  }

  private StudyResult typeOne() {
    double width = StudyInputs.width(settings.tolerance());
    TypeOneStudy.Inputs of =
        new TypeOneStudy.Inputs(
            width,
            inputs.master().value(),
            inputs.resolution(),
            options.sharePercent(),
            options.deviations());
    return TypeOneStudy.of(values(), of, settings);
  }

  private StudyResult placing() {
    List<StudyReading> all = readings();
    return PlacingStudy.of(placed(all, "eye"), placed(all, "marks"), settings);
  }

  private List<StudyReading> placed(List<StudyReading> all, String how) {
    List<StudyReading> found =
        IntStream.range(0, all.size())
            .filter(row -> table.text(row, "placing").equalsIgnoreCase(how))
            .mapToObj(all::get)
            .toList();
    if (found.isEmpty()) {
      throw new BadInput("column placing", "no row", "says " + how, "rows with eye and with marks");
    }
    return found;
  }

  private StudyResult process() {
    MeasuringProcess process = MeasuringProcess.empty();
    for (int row = 0; row < table.rows(); row++) {
      Contribution of = contribution(row);
      process = process.with(of, table.number(row, "u"), table.degreesOfFreedom(row));
    }
    return ProcessCapability.of(process, StudyInputs.width(settings.tolerance()), settings);
  }

  private Contribution contribution(int row) {
    String text = table.text(row, "contribution");
    String symbol = text.toUpperCase(Locale.ROOT).replaceFirst("^U_", "");
    return Arrays.stream(Contribution.values())
        .filter(each -> each.name().equals(symbol))
        .findFirst()
        .orElseThrow(
            () ->
                new BadInput(
                    "column contribution",
                    text,
                    "is not a contribution",
                    Arrays.stream(Contribution.values())
                        .map(Contribution::name)
                        .collect(Collectors.joining(", "))));
  }
}
