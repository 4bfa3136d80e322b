package org.chordlog.profile;

import java.util.Comparator;
import java.util.List;
import org.chordlog.measure.Roller;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/**
 * The ripple of one piece: how strongly its profile waves at the frequencies of each roller, and at
 * neighbouring ones that are no roller's. Immutable.
 */
public final class RippleScan {
  /** A roller with the lines at frequencies across its band. */
  record Band(RollerSight sight, List<Harmonic.Line> lines) {
    Harmonic.Line strongest() {
      return lines.stream().max(Comparator.comparingDouble(Harmonic.Line::drop)).orElseThrow();
    }

    double lowPerMm() {
      return lines.get(0).perMm();
    }

    double highPerMm() {
      return lines.get(lines.size() - 1).perMm();
    }
  }

  /**
   * The lines of the windows' means relative to the mean curvature, with the length, the windows'
   * pitch and number.
   */
  record Lines(
      List<Band> bands,
      List<Harmonic.Line> neighbours,
      double halfSpanMm,
      double lengthMm,
      double pitchMm,
      int windows) {
    Lines withBands(List<Band> others) {
      return new Lines(others, neighbours, halfSpanMm, lengthMm, pitchMm, windows);
    }
  }

  private static final Sentence DOUBTFUL = Sentence.plain("the length is not relied on");

  private final List<RollerSight> sights;
  private final @Nullable Lines lines;
  private final List<Band> apart;
  private final @Nullable Sentence unfit;

  /** {@code apart}: the bands, each without what stronger waves of others leave in it. */
  RippleScan(
      List<RollerSight> sights, @Nullable Lines lines, List<Band> apart, @Nullable Sentence unfit) {
    this.sights = List.copyOf(sights);
    this.lines = lines;
    this.apart = List.copyOf(apart);
    this.unfit = unfit;
  }

  static RippleScan unfit(List<RollerSight> sights, Sentence why) {
    return new RippleScan(sights, null, List.of(), why);
  }

  /** Of an evaluated piece; rollers that can't be seen are said to be so, with the reason. */
  public static RippleScan of(
      Profile profile, PieceResult result, EvaluationSettings settings, List<Roller> rollers) {
    List<RollerSight> sights = sights(profile, result, settings, rollers);
    return doubtful(result)
        ? unfit(sights, DOUBTFUL)
        : RippleSeries.of(profile, result.zone(), settings, sights).scan(sights, List.of());
  }

  /**
   * The same for two waves a turn, as a roller makes that is out of round; what rollers make once a
   * turn is taken out before.
   */
  public static RippleScan ofTwoWavesATurn(
      Profile profile, PieceResult result, EvaluationSettings settings, List<Roller> rollers) {
    List<RollerSight> sights =
        RollerSight.ofTwoWavesATurn(
            rollers,
            settings.model().setUp(),
            settings.lengthFace(),
            1 / result.mean().bendPerMm(),
            profile.facts().pitchMm());
    return doubtful(result)
        ? unfit(sights, DOUBTFUL)
        : RippleSeries.of(profile, result.zone(), settings, sights)
            .scan(sights, sights(profile, result, settings, rollers));
  }

  private static List<RollerSight> sights(
      Profile profile, PieceResult result, EvaluationSettings settings, List<Roller> rollers) {
    return RollerSight.of(
        rollers,
        settings.model().setUp(),
        settings.lengthFace(),
        1 / result.mean().bendPerMm(),
        profile.facts().pitchMm());
  }

  private static boolean doubtful(PieceResult result) {
    return result.marks().stream().anyMatch(m -> m.kind() == PieceMark.Kind.LENGTH_DOUBTFUL);
  }

  /** What can be seen of each roller. */
  public List<RollerSight> sights() {
    return sights;
  }

  /** Why no roller can be named on this piece, null if one can. */
  public @Nullable Sentence unfit() {
    return unfit;
  }

  /** What this piece adds to the chart of each roller that can be seen; none when it is unfit. */
  public List<RipplePoint> points() {
    return lines == null ? List.of() : RollerSearch.points(lines.withBands(apart));
  }

  @Nullable Lines lines() {
    return lines;
  }
}
