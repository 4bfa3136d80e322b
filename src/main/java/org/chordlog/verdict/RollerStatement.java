package org.chordlog.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.chordlog.measure.Capital;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Roller;
import org.chordlog.measure.Sentence;
import org.chordlog.profile.RollerRipple;
import org.chordlog.profile.RollerSight;
import org.chordlog.profile.RollerTrend;
import org.chordlog.profile.RollerVerdict;
import org.chordlog.profile.RollerVerdict.Finding;
import org.jspecify.annotations.Nullable;

/**
 * Does a roller of the machine run out? From the ripple along its newest pieces, pooled, once and
 * {@code twice} a turn, and from how it went from piece to piece.
 */
public record RollerStatement(
    @Nullable RollerVerdict verdict, @Nullable RollerVerdict twice, List<RollerTrend> trends) {
  static final String CAUTION =
      " Touch or adjust rollers only when they are stopped and the drive is locked out.";
  private static final String PROVE =
      "Turn the roller half round against the others and bend again: only a ripple of its own moves"
          + " with it.";

  private static final String PROVE_OVAL =
      "Turn the roller a quarter turn against the others and bend again: only a ripple of its own"
          + " moves with it, and after half a turn it is as before.";

  /** Without waves twice a turn. */
  public RollerStatement(@Nullable RollerVerdict verdict, List<RollerTrend> trends) {
    this(verdict, null, trends);
  }

  /** Which roller makes the ripple, or that none is told. */
  public Statement statement() {
    if (verdict == null) {
      return Statement.of(
          Tone.QUIET,
          "Rollers not judged",
          "It takes recorded rollers and a piece that ran through the gauge.");
    }
    if (verdict.unfit() != null) {
      return new Statement(
          Tone.QUIET,
          "Rollers can't be told apart",
          Sentence.of("On the newest piece, %s.", verdict.unfit()),
          Sentence.EMPTY);
    }
    if (verdict.finding() instanceof Finding.Named named) {
      return named(verdict, named.roller());
    }
    if (verdict.finding() instanceof Finding.OneOfTwo two) {
      return oneOfTwo(verdict, two);
    }
    return twice != null && twice.finding() instanceof Finding.Named oval
        ? outOfRound(twice, oval.roller())
        : withoutRipple(verdict);
  }

  /** What is known of each of those rollers, in their order. */
  public List<RollerFigures> figures(List<Roller> rollers) {
    return rollers.stream()
        .map(roller -> RollerFigures.of(roller, verdict, trend(roller.name())))
        .toList();
  }

  private Statement named(RollerVerdict seen, Roller roller) {
    RollerTrend trend = trend(roller.name());
    String rising =
        trend == null || !trend.beyond()
            ? ""
            : " It has been above its limit for " + Counted.of(trend.beyondFor(), "piece") + ".";
    return new Statement(
        Tone.OPEN,
        Capital.of(roller.name()) + " makes a ripple",
        Sentence.of("%s%s%s", ripple(seen, roller), pieces(seen), rising).and(kind(roller)),
        Sentence.plain(PROVE + CAUTION));
  }

  /**
   * Of a roller that makes a ripple once a turn: whether it, or another, makes one twice a turn.
   */
  private Sentence kind(Roller roller) {
    if (twice == null || !(twice.finding() instanceof Finding.Named oval)) {
      return Sentence.plain("Once a turn: it runs eccentric, or its shaft is bent.");
    }
    return oval.roller().equals(roller)
        ? Sentence.of(
            "Once a turn: it runs eccentric, or its shaft is bent; twice a turn as well (%s): it is"
                + " out of round.",
            ripple(twice, roller))
        : Sentence.of(
            "Once a turn: it runs eccentric, or its shaft is bent. %s makes a ripple twice a turn"
                + " (%s): it is out of round.",
            Capital.of(oval.roller().name()), ripple(twice, oval.roller()));
  }

  private static Statement outOfRound(RollerVerdict seen, Roller roller) {
    return new Statement(
        Tone.OPEN,
        Capital.of(roller.name()) + " is out of round",
        Sentence.of("A ripple twice a turn: %s%s", ripple(seen, roller), pieces(seen)),
        Sentence.plain(PROVE_OVAL + CAUTION));
  }

  private static Statement oneOfTwo(RollerVerdict seen, Finding.OneOfTwo two) {
    Double needed = two.neededMm();
    Sentence apart =
        needed == null
            ? Sentence.plain("No length tells the two apart.")
            : Sentence.of(
                "It takes %s evaluated to tell the two apart.", Quantity.fixed(needed, 0));
    return new Statement(
        Tone.OPEN,
        Capital.of(two.first().name()) + " or " + two.second().name() + " makes a ripple",
        Sentence.of("%s%s", ripple(seen, two.first()), pieces(seen)).and(apart),
        Sentence.plain(PROVE + CAUTION));
  }

  private Statement withoutRipple(RollerVerdict seen) {
    for (RollerTrend trend : trends) {
      if (trend.beyond()) {
        return new Statement(
            Tone.OPEN,
            "The ripple of " + trend.roller() + " is rising",
            String.format(
                Locale.ROOT,
                "Above its limit for %s, now %.2f ± %.2f %% of curvature.",
                Counted.of(trend.beyondFor(), "piece"),
                trend.amplitudePercent(),
                2 * trend.uncertaintyPercent()),
            "Look at this roller the next time the machine is stopped." + CAUTION);
      }
    }
    return new Statement(
        Tone.GOOD,
        "No roller makes a ripple",
        Sentence.of("None stands out from neighbouring wavelengths%s", pieces(seen))
            .and(unseen(seen)),
        Sentence.EMPTY);
  }

  private static Sentence ripple(RollerVerdict seen, Roller roller) {
    RollerRipple ripple = seen.ripple(roller);
    return ripple == null
        ? Sentence.plain("A ripple")
        : Sentence.of(
            "%.2f ± %.2f %% of curvature, every %s",
            ripple.amplitudePercent(),
            2 * ripple.uncertaintyPercent(),
            Quantity.fixed(ripple.wavelengthMm(), 0));
  }

  private static String pieces(RollerVerdict seen) {
    return seen.pieces() == 1 ? ", on the newest piece." : ", over " + seen.pieces() + " pieces.";
  }

  /** What this bridge can't see is said, so that no ripple is not taken for none at all. */
  private static Sentence unseen(RollerVerdict seen) {
    List<Sentence> all = new ArrayList<>();
    for (RollerSight sight : seen.sights()) {
      if (sight.unseen() != null) {
        all.add(Sentence.of("Not seen: %s, %s.", sight.roller().name(), sight.unseen()));
      }
    }
    return Sentence.joined(" ", all);
  }

  private @Nullable RollerTrend trend(String name) {
    return trends.stream().filter(each -> each.roller().equals(name)).findFirst().orElse(null);
  }
}
