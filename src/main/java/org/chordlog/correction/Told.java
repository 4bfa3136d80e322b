package org.chordlog.correction;

import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.jspecify.annotations.Nullable;

/** What a machine's filter is told, in the order in which it happened. */
public sealed interface Told {
  /** Calls the hearer's method for what happened. */
  void tell(Hearer hearer);

  /** One method for each kind, so that none can be forgotten. */
  interface Hearer {
    /** A job began on the machine. */
    void jobStarted(JobStart event);

    /** The machine was set up. */
    void setUp(SetUp event);

    /** Another lot of material is in the machine. */
    void lotChanged(Lot event);

    /** The rollers were moved. */
    void corrected(Correction event);

    /** The job has other limits. */
    void targetChanged(TargetChange event);

    /** The scale of the rollers was described anew. */
    void scaleChanged(ScaleChange event);

    /** A piece was measured. */
    void measured(Piece event);
  }

  /**
   * A job begins on the machine, which is a set-up too. What is learned of a part's start and of
   * lots is found again by {@code part}, {@code section} and {@code lot}; each may be empty. {@code
   * pieces}: how many are to be bent, null if not known.
   */
  record JobStart(
      long job, Aim aim, String part, String section, String lot, @Nullable Integer pieces)
      implements Told {
    public JobStart {
      if (pieces != null) {
        Check.within("pieces", pieces, 1, Integer.MAX_VALUE);
      }
    }

    JobStart withLot(String other) {
      return new JobStart(job, aim, part, section, other, pieces);
    }

    JobStart withAim(Aim other) {
      return new JobStart(job, other, part, section, lot, pieces);
    }

    @Override
    public void tell(Hearer hearer) {
      hearer.jobStarted(this);
    }
  }

  /** The rollers were set up anew; the number on the scale then, null if not read. */
  record SetUp(@Nullable Double setting) implements Told {
    public SetUp {
      finite("setting", setting);
    }

    @Override
    public void tell(Hearer hearer) {
      hearer.setUp(this);
    }
  }

  /**
   * Another material lot; an empty name is a lot that nobody will recognise. {@code offset}: what
   * its certificate says against the lot before, if anything.
   */
  record Lot(String name, @Nullable Offset offset) implements Told {
    /** Change of curvature, 1/mm, as {@link YieldOffset} gives it. */
    public record Offset(double perMm, double standardUncertaintyPerMm) {
      public Offset {
        Check.finite("perMm", perMm);
        Check.notNegative("standardUncertaintyPerMm", standardUncertaintyPerMm);
      }
    }

    public Lot(String name) {
      this(name, null);
    }

    @Override
    public void tell(Hearer hearer) {
      hearer.lotChanged(this);
    }
  }

  /**
   * The rollers were moved: by {@code amount}, null if nobody read how far; {@code before}: the
   * number on the scale before, null on a scale without absolute numbers.
   */
  record Correction(@Nullable Double before, @Nullable Double amount) implements Told {
    public Correction {
      finite("before", before);
      finite("amount", amount);
      if (before != null && amount == null) {
        throw new BadInput(
            "after", "none", "is missing beside a setting before", "both settings, or neither");
      }
    }

    /** Both numbers read on the scale. */
    public static Correction between(double before, double after) {
      Check.finite("before", before);
      return new Correction(before, Check.finite("after", after) - before);
    }

    /** On a scale without absolute numbers. */
    public static Correction by(double amount) {
      return new Correction(null, amount);
    }

    public static Correction withoutAmount() {
      return new Correction(null, null);
    }

    @Override
    public void tell(Hearer hearer) {
      hearer.corrected(this);
    }
  }

  /** Another target or other limits in the middle of a job, without the rollers being moved. */
  record TargetChange(Aim aim) implements Told {
    @Override
    public void tell(Hearer hearer) {
      hearer.targetChanged(this);
    }
  }

  /** The machine's scale was described anew: its gain has to be learned again. */
  record ScaleChange(MachineScale scale) implements Told {
    @Override
    public void tell(Hearer hearer) {
      hearer.scaleChanged(this);
    }
  }

  /**
   * A piece with everything measured on it. Numbers rise within a job; only the newest one may come
   * again, when it was rolled once more.
   */
  record Piece(int number, List<PieceReading> readings) implements Told {
    public Piece {
      Check.within("piece", number, 1, Integer.MAX_VALUE);
      readings = List.copyOf(readings);
      if (readings.isEmpty()) {
        throw new BadInput("piece", number, "has neither a radius nor a flat", "a reading or more");
      }
    }

    /** The last one it was measured in. */
    int pass() {
      return readings.stream().mapToInt(PieceReading::pass).max().orElse(1);
    }

    @Override
    public void tell(Hearer hearer) {
      hearer.measured(this);
    }
  }

  private static void finite(String field, @Nullable Double value) {
    if (value != null) {
      Check.finite(field, value);
    }
  }
}
