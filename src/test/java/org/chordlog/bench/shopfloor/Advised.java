package org.chordlog.bench.shopfloor;

import java.util.List;
import org.chordlog.correction.Advice;
import org.chordlog.correction.Advice.AmountUnknown;
import org.chordlog.correction.Advice.Correct;
import org.chordlog.correction.Aim;
import org.chordlog.correction.CorrectionSnapshot.Learned;
import org.chordlog.correction.Corrector;
import org.chordlog.correction.GainPrior;
import org.chordlog.correction.LevelEstimate;
import org.chordlog.correction.MachineScale;
import org.chordlog.correction.MachineScale.Tighter;
import org.chordlog.correction.PieceReading;
import org.chordlog.correction.Told;
import org.chordlog.correction.Tuning;
import org.chordlog.simulator.DemoBend;

/** Follows the advice of the program itself, and records what it does as the shop records. */
public final class Advised implements Policy {
  /**
   * What is known at first: gain relative to the true one and its relative uncertainty (0: nothing
   * is known of unit and sign); whether lots have names; the rule of thumb's spread while no amount
   * is named; lost motion as stated to the program, mm.
   */
  public record Known(
      double gain, double uncertainty, boolean lotNames, double thumb, double lostMotion) {
    public static Known usual() {
      return new Known(1, 0.3, true, 0, 0);
    }

    public Known withGain(double factor, double relative) {
      return new Known(factor, relative, lotNames, thumb, lostMotion);
    }

    public Known withoutGain(double thumbSpread) {
      return new Known(0, 0, lotNames, thumbSpread, lostMotion);
    }

    public Known withoutLotNames() {
      return new Known(gain, uncertainty, false, thumb, lostMotion);
    }

    public Known withLostMotion(double mm) {
      return new Known(gain, uncertainty, lotNames, thumb, mm);
    }

    MachineScale scale(Shop shop) {
      double unit = shop.scale().unitMm();
      double perUnit = gain * Shop.GAIN * unit / 1000 / DemoBend.TARGET_MM;
      GainPrior prior =
          gain == 0 ? GainPrior.unknown() : new GainPrior(perUnit, uncertainty * Math.abs(perUnit));
      return new MachineScale(
          "dial",
          "units",
          0,
          Tighter.UNKNOWN,
          lostMotion / Math.abs(unit),
          shop.scale().move() / Math.abs(unit),
          prior);
    }
  }

  private final Shop shop;
  private final Known known;
  private final Judgement judgement;
  private final Corrector corrector;
  private Advice advice;

  public Advised(Shop shop, Known known, Tuning tuning, Judgement judgement) {
    this.shop = shop;
    this.known = known;
    this.judgement = judgement;
    corrector = new Corrector(known.scale(shop), tuning);
    Aim aim = Aim.symmetric(DemoBend.TARGET_MM, DemoBend.TOLERANCE_MM);
    corrector.tell(new Told.JobStart(1, aim, "", "tube", lotName(0), Shop.PIECES));
    advice = corrector.advice();
  }

  private String lotName(int lot) {
    return known.lotNames() ? "lot " + lot : "";
  }

  @Override
  public double lot(int name) {
    corrector.tell(new Told.Lot(lotName(name)));
    advice = corrector.advice();
    return advice instanceof Correct correct ? correct.move().amount() : 0;
  }

  @Override
  public double measured(Seen piece) {
    PieceReading reading = PieceReading.radius(piece.radiusMm(), shop.pieces().reading());
    corrector.tell(new Told.Piece(piece.piece() + 1, List.of(reading)));
    advice = corrector.advice();
    if (advice instanceof AmountUnknown unknown) {
      double by = -unknown.level().permil() / (Shop.GAIN * shop.scale().unitMm());
      return by * Math.exp(known.thumb() * piece.thumb());
    }
    return advice instanceof Correct correct ? correct.move().amount() : 0;
  }

  @Override
  public void moved(double before, double amount, boolean recorded) {
    if (recorded) {
      corrector.tell(Told.Correction.between(before, before + amount));
    }
  }

  @Override
  public void outcome(double before, double after) {
    LevelEstimate level = advice.level();
    if (level != null) {
      judgement.level((before - level.permil()) / level.standardUncertaintyPermil());
    }
    if (advice instanceof Correct correct) {
      judgement.promise(correct.prospect().chance(), Math.abs(after) < Math.abs(before));
    }
  }

  /** At the end of the job. */
  void end() {
    Learned learned = corrector.snapshot().learned();
    double truth = Shop.GAIN * shop.scale().unitMm() / 1000 / DemoBend.TARGET_MM;
    judgement.gain(learned.gain() == null ? 0 : learned.gain().perMmPerUnit() / truth);
  }
}
