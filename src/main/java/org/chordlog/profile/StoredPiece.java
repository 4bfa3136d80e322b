package org.chordlog.profile;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.Specification;
import org.chordlog.radius.RadiusModel;
import org.jspecify.annotations.Nullable;

/**
 * Pieces to what is stored of them, and back to the same digits: the profile, what it was evaluated
 * with beside the set-up of its reading, and what came of it.
 */
public record StoredPiece(Profile profile, EvaluationSettings settings, PieceOutcome outcome) {
  /** The profiles of a piece: one for each pass, the last of them that of the reading. */
  public static List<PassedProfile> of(PieceRun run, EvaluationSettings settings) {
    List<PassedProfile> stored = new ArrayList<>();
    for (Profile pass : run.passes()) {
      Part whole = Part.whole(pass.facts().touchMm());
      stored.add(new PassedProfile(stored.size() + 1, pass.packed(), basis(settings, whole)));
    }
    stored.add(
        new PassedProfile(stored.size() + 1, run.profile().packed(), basis(settings, run.part())));
    return List.copyOf(stored);
  }

  private static PassedProfile.Basis basis(EvaluationSettings settings, Part part) {
    return new PassedProfile.Basis(
        settings.source(),
        settings.lengthFace(),
        settings.lengths(),
        settings.decideBy(),
        new PassedProfile.Extent(
            part.fromMm(), part.toMm(), part.openStart(), part.openEnd(), part.stretch()));
  }

  /** The reading's piece once more; {@code stored} holds its passes in their order. */
  public static StoredPiece evaluated(
      List<PassedProfile> stored, RadiusModel model, @Nullable Specification specification) {
    PassedProfile last = stored.get(stored.size() - 1);
    List<Profile> passes =
        stored.subList(0, stored.size() - 1).stream()
            .map(pass -> Profile.unpacked(pass.packed()))
            .toList();
    Profile profile = Profile.unpacked(last.packed());
    PieceRun run = new PieceRun(part(last), profile, passes, PieceRun.Seen.UNKNOWN, null);
    EvaluationSettings settings = settings(last, model, specification);
    return new StoredPiece(profile, settings, new PieceEvaluation(settings).of(run));
  }

  private static EvaluationSettings settings(
      PassedProfile stored, RadiusModel model, @Nullable Specification specification) {
    PassedProfile.Basis basis = stored.basis();
    return new EvaluationSettings(
        model, basis.source(), basis.lengthFace(), basis.known(), specification, basis.decideBy());
  }

  private static Part part(PassedProfile stored) {
    PassedProfile.Extent extent = stored.basis().extent();
    return new Part(
        extent.fromMm(), extent.toMm(), extent.openStart(), extent.openEnd(), extent.stretch());
  }
}
