package org.chordlog.profile;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Decision;
import org.chordlog.measure.LengthSource;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Sentence;
import org.chordlog.profile.Refused.Reason;
import org.chordlog.radius.RadiusModel;
import org.jspecify.annotations.Nullable;

/**
 * Evaluates profiles: the same profile and settings give the same digits, whether it has just run
 * through or was unpacked years later.
 */
public final class PieceEvaluation {
  private static final double TOLD = 1.3;
  private static final double SPEED_MISFIT = 0.05;

  private final EvaluationSettings settings;

  public PieceEvaluation(EvaluationSettings settings) {
    this.settings = settings;
  }

  /** A piece with what its passes say of it. */
  public PieceOutcome of(PieceRun run) {
    return run.fault() == null
        ? withPasses(run, of(run.profile(), run.part()))
        : new PieceOutcome.NotMeasured(run.part(), run.fault());
  }

  /** One part of a profile. */
  public PieceOutcome of(Profile profile, Part part) {
    try {
      checkLengths(profile, part);
      return new PieceOutcome.Measured(part, result(profile, part));
    } catch (NoReading refusal) {
      return new PieceOutcome.NotMeasured(part, refusal.why());
    }
  }

  /** The passes of a piece before its last, each as if it were a piece of its own. */
  public List<PieceOutcome> passes(PieceRun run) {
    return run.passes().stream().map(pass -> of(pass, Part.whole(pass.facts().touchMm()))).toList();
  }

  private PieceOutcome withPasses(PieceRun run, PieceOutcome last) {
    List<PieceOutcome> passes = passes(run);
    if (passes.isEmpty()
        || !(last instanceof PieceOutcome.Measured now)
        || !(passes.get(passes.size() - 1) instanceof PieceOutcome.Measured before)) {
      return last;
    }
    PieceResult result = now.result();
    List<PieceMark> marks = new ArrayList<>(result.marks());
    PieceMarks.addNoChange(marks, before.result(), result);
    return new PieceOutcome.Measured(
        now.part(),
        new PieceResult(
            result.zone(),
            result.mean(),
            result.uniformity(),
            result.windowMm(),
            result.places(),
            result.inside(),
            marks));
  }

  private void checkLengths(Profile profile, Part part) {
    Double piece = settings.lengths().pieceMm();
    if (settings.source() == LengthSource.NONE) {
      throw new NoReading(
          Reason.NO_LENGTH, Sentence.plain("No length is known.").and(PieceMarks.byTime(profile)));
    }
    if (settings.source() == LengthSource.SPEED && part.stretch() == 0) {
      checkFeed(part, piece);
    }
    if (piece != null && part.stretch() == 0 && part.lengthMm() > TOLD * piece) {
      throw new NoReading(
          Reason.PIECES_NOT_TOLD,
          Sentence.of(
              "%s ran through without a joint to be seen; a piece is %s long.",
              Quantity.fixed(part.lengthMm(), 0), Quantity.fixed(piece, 0)));
    }
  }

  private static void checkFeed(Part part, @Nullable Double piece) {
    if (piece == null) {
      throw new NoReading(
          Reason.NO_LENGTH,
          Sentence.plain(
              "With a stated feed the length of a piece must be stated too, to tell a stop."));
    }
    if (Math.abs(part.lengthMm() / piece - 1) > SPEED_MISFIT) {
      throw new NoReading(
          Reason.NO_LENGTH,
          Sentence.of(
              "By the stated feed %s ran through, but a piece is %s long: the feed stopped, or is"
                  + " another.",
              Quantity.fixed(part.lengthMm(), 0), Quantity.fixed(piece, 0)));
    }
  }

  private PieceResult result(Profile profile, Part part) {
    Zone zone = ZoneFinder.find(profile, part, settings);
    RadiusModel model = settings.model();
    Curve curve = Curve.of(profile, model, zone.fromMm(), zone.toMm());
    checkBins(profile, curve);
    Spots spots = Spots.of(curve, profile, model);
    double width = profile.facts().widthMm();
    Windows windows = Windows.of(curve, zone, settings.halfSpanMm(), width, spots);
    try {
      return result(profile, part, zone, curve, spots, windows);
    } catch (BadInput refusal) {
      throw new NoReading(Reason.OUTSIDE_TRAVEL, refusal.said());
    }
  }

  private PieceResult result(
      Profile profile, Part part, Zone zone, Curve curve, Spots spots, Windows windows) {
    MeanBend mean = MeanBend.of(curve, windows, settings.model());
    List<LocalRadius> places = places(windows);
    return new PieceResult(
        zone,
        mean,
        Uniformity.of(windows, mean.bendPerMm(), settings.model().spanMm()),
        windows.lengthMm(),
        places,
        LengthInside.of(decide(mean.radius()), places, windows.lengthMm(), settings.decideBy()),
        new PieceMarks(profile, part, settings).of(zone, curve, spots, windows, mean));
  }

  private void checkBins(Profile profile, Curve curve) {
    for (int bin : curve.bin) {
      if ((profile.flags(bin) & Profile.AT_END_OF_TRAVEL) != 0) {
        throw new NoReading(
            Reason.OUTSIDE_TRAVEL,
            Sentence.of(
                "The plunger was at the end of its travel at %s.",
                Quantity.fixed(profile.placeMm(bin), 0)));
      }
    }
  }

  private List<LocalRadius> places(Windows windows) {
    RadiusModel model = settings.model();
    List<LocalRadius> places = new ArrayList<>();
    for (int i = 0; i < windows.size(); i++) {
      long depthNm = model.depthNmOfBend(windows.bendPerMm[i]);
      double scatter = windows.scatterPerMm() / model.bendByDepth(depthNm);
      RadiusEstimate radius = model.estimateOfMean(depthNm, scatter * scatter, windows.degrees());
      places.add(new LocalRadius(windows.placeMm[i], radius, decide(radius), windows.marked[i]));
    }
    return places;
  }

  private Decision decide(RadiusEstimate radius) {
    return settings.specification() == null
        ? Decision.NO_LIMITS
        : settings.model().decide(radius, settings.specification());
  }
}
