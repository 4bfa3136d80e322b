package org.chordlog.correction;

import org.chordlog.correction.LotShifts.Shift;
import org.chordlog.correction.PartStarts.Place;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/** What is remembered of a machine from job to job: shifts between lots, and starts of parts. */
final class MachineMemory {
  /** Lots are never believed to differ less surely than that, in half tolerances. */
  private static final double LEAST_LOT = 0.05;

  /** A start is learned once the level is known so well, in half tolerances. */
  private static final double LEVEL_KNOWN = 0.5;

  private static final int PIECES_OF_START = 8;

  private final LotShifts lots = new LotShifts();
  private final PartStarts starts = new PartStarts();
  private @Nullable LotWatch watch;
  private @Nullable StartSetting foretold;

  /** Pieces since the set-up whose start is still to be learned, −1 if it is not. */
  private int piecesOfStart = -1;

  @Nullable StartSetting start(Place place) {
    return starts.find(place, lots);
  }

  void setUp(Place place) {
    watch = null;
    foretold = start(place);
    piecesOfStart = 0;
  }

  /** The target moved, or nobody knows how far the rollers did: what was begun tells nothing. */
  void interrupted() {
    watch = null;
    piecesOfStart = -1;
  }

  /** A move of the rollers that is known. */
  void moved(double amount) {
    LotWatch open = watch;
    watch = open == null ? null : open.movedBy(amount);
  }

  /** Moves at an unknown time: the step between the lots can't be told any more. */
  void movedUnseen() {
    watch = null;
  }

  /** What is known of the step to another lot, or null. */
  @Nullable Shift lotChanged(Place before, String to, boolean anyPiece) {
    watch = anyPiece ? LotWatch.begin(before.lot(), before.belief()) : null;
    return lots.find(before.section(), before.lot(), to);
  }

  /** After a piece; {@code setting} NaN while the number on the scale is not known. */
  void piece(Place place, double setting) {
    LotWatch open = watch == null ? null : watch.piece();
    Shift found =
        open == null ? null : open.found(place.belief(), place.aim(), place.section(), place.lot());
    watch = found == null ? open : null;
    if (found != null) {
      lots.learn(found, square(place.aim().perMm(LEAST_LOT * place.aim().halfTolerance())));
    }
    piecesOfStart += piecesOfStart < 0 ? 0 : 1;
    if (piecesOfStart >= PIECES_OF_START) {
      learnStart(place, setting);
    }
  }

  /** A job ends: a start that had few pieces is learned if the level is known. */
  void finish(Place place, double setting) {
    double known = LEVEL_KNOWN * place.aim().halfTolerance();
    if (piecesOfStart > 0 && place.belief().levelVariance() < known * known) {
      learnStart(place, setting);
    }
  }

  private void learnStart(Place place, double setting) {
    if (!Double.isNaN(setting) && !place.belief().blind()) {
      starts.learn(setting - place.settingOf(place.belief().level()), foretold, place, lots);
      piecesOfStart = -1;
    }
  }

  void scaleChanged() {
    starts.clear();
    interrupted();
  }

  private static double square(double value) {
    return value * value;
  }

  void write(Packer to) {
    lots.write(to);
    starts.write(to);
    to.put(watch != null);
    if (watch != null) {
      watch.write(to);
    }
    to.put(piecesOfStart).put(foretold != null);
    if (foretold != null) {
      to.put(foretold.setting()).put(foretold.standardUncertaintyPermil());
      to.put(foretold.basis().name());
    }
  }

  void read(Unpacker from) {
    lots.read(from);
    starts.read(from);
    watch = from.aBoolean() ? LotWatch.read(from) : null;
    piecesOfStart = from.anInt();
    foretold = from.aBoolean() ? foretold(from) : null;
  }

  private static StartSetting foretold(Unpacker from) {
    return new StartSetting(
        from.aDouble(), from.aDouble(), StartSetting.Basis.valueOf(from.text()));
  }
}
