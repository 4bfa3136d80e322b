package org.chordlog.chart;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;

/** Every picture there is. */
public enum PictureKind {
  MEAN_AND_RANGE("Mean and range", ChartKind.MEAN, ChartKind.RANGE),
  MEAN_AND_DEVIATION("Mean and standard deviation", ChartKind.MEAN, ChartKind.STANDARD_DEVIATION),
  INDIVIDUALS_AND_MOVING_RANGE(
      "Individuals and moving range", ChartKind.INDIVIDUALS, ChartKind.MOVING_RANGE),
  INDIVIDUALS("Individuals", ChartKind.INDIVIDUALS),
  MOVING_RANGE("Moving range", ChartKind.MOVING_RANGE),
  MEAN("Mean", ChartKind.MEAN),
  RANGE("Range", ChartKind.RANGE),
  STANDARD_DEVIATION("Standard deviation", ChartKind.STANDARD_DEVIATION),
  EWMA("EWMA", ChartKind.EWMA),
  CUSUM("CUSUM", ChartKind.CUSUM),
  DISTRIBUTION(
      "Distribution and capability", source -> source.distribution().map(DistributionPicture::of)),
  POSITIONS("Positions compared", source -> source.positions().map(PositionsPicture::of)),
  DRIFT("Machine over its jobs", source -> source.drift().map(DriftPicture::of)),
  CORRECTIONS(
      "Corrections and what they did", source -> source.corrections().map(CorrectionPicture::of)),
  STUDY_READINGS(
      "Readings by operator", source -> source.study().flatMap(StudyReadingsPicture::of)),
  STUDY_COMPONENTS(
      "Where the scatter comes from", source -> source.study().flatMap(StudyComponentsPicture::of)),
  STUDY_BIAS("Bias on masters", source -> source.study().flatMap(StudyBiasPicture::of)),
  PROFILES("Radius along pieces", source -> source.line().flatMap(ProfilePicture::of)),
  ROLLER_SPECTRUM("Ripple by wavelength", source -> source.line().flatMap(SpectrumPicture::of)),
  ROLLER_RIPPLES(
      "Ripple of each roller over pieces", source -> source.line().flatMap(RipplePicture::of));

  private final String title;

  @SuppressWarnings("ImmutableEnumChecker") // functions without state
  private final Function<ChartSource, Optional<Drawing>> draw;

  PictureKind(String title, ChartKind... kinds) {
    this(title, source -> stacked(source, List.of(kinds)));
  }

  PictureKind(String title, Function<ChartSource, Optional<Drawing>> draw) {
    this.title = title;
    this.draw = draw;
  }

  /** The picture of one chart alone. */
  public static PictureKind of(ChartKind kind) {
    return switch (kind) {
      case INDIVIDUALS -> INDIVIDUALS;
      case MOVING_RANGE -> MOVING_RANGE;
      case MEAN -> MEAN;
      case RANGE -> RANGE;
      case STANDARD_DEVIATION -> STANDARD_DEVIATION;
      case EWMA -> EWMA;
      case CUSUM -> CUSUM;
    };
  }

  public String title() {
    return title;
  }

  /** The drawing, or empty where the source has not what it shows. */
  public Optional<Drawing> draw(ChartSource source) {
    return draw.apply(source);
  }

  private static Optional<Drawing> stacked(ChartSource source, List<ChartKind> kinds) {
    List<ChartSnapshot> charts =
        kinds.stream().map(source::chart).flatMap(Optional::stream).toList();
    return charts.size() < kinds.size()
        ? Optional.empty()
        : Optional.of(ControlPicture.of(charts, source.edge()));
  }
}
