package org.chordlog.bench.shopfloor;

/** Policies to compare with; all but the first know the machine's gain. */
public final class Policies {
  private Policies() {}

  public static Policy none() {
    return piece -> 0;
  }

  /** Takes out the whole error of each reading (Deming's funnel, rule 2). */
  public static Policy chasing() {
    return piece -> -piece.permil() / Shop.GAIN;
  }

  /** Subgroups of five; beyond three sigma of their mean that mean is taken out. */
  public static Policy shewhart(Shop shop) {
    double limit = 3 * Math.hypot(Shop.SCATTER, shop.readingPermil()) / Math.sqrt(5);
    return new Policy() {
      private double sum;
      private int count;

      @Override
      public double measured(Seen piece) {
        sum += piece.permil();
        if (++count < 5) {
          return 0;
        }
        double mean = sum / count;
        sum = 0;
        count = 0;
        return Math.abs(mean) > limit ? -mean / Shop.GAIN : 0;
      }
    };
  }

  /** Bounded adjustment: an exponentially weighted mean, taken out beyond a deadband. */
  public static Policy ewma(double weight, double deadband) {
    return new Policy() {
      private double mean;

      @Override
      public double measured(Seen piece) {
        mean += weight * (piece.permil() - mean);
        double now = mean;
        mean = Math.abs(now) > deadband ? 0 : now;
        return Math.abs(now) > deadband ? -now / Shop.GAIN : 0;
      }
    };
  }

  /** Is told the true level after each piece and moves without error: no feedback does better. */
  public static Policy clairvoyant() {
    return new Policy() {
      @Override
      public double measured(Seen piece) {
        return -piece.trueLevelPermil() / Shop.GAIN;
      }

      @Override
      public boolean exact() {
        return true;
      }
    };
  }

  /** A Kalman filter that knows gain, scatter, drift and spread of lots; deadband in permil. */
  public static Policy allKnown(Shop shop, double deadband) {
    return new AllKnown(shop, deadband);
  }

  private static final class AllKnown implements Policy {
    private static final double WANDER = 0.02;
    private final double deadband;
    private final double reading;
    private final double lotStep;
    private final double move;
    private double level;
    private double variance;

    AllKnown(Shop shop, double deadband) {
      this.deadband = deadband;
      double u = shop.readingPermil();
      reading = Shop.SCATTER * Shop.SCATTER + u * u;
      double lots = shop.lots().yieldSd() * Shop.PER_MPA;
      lotStep = 2 * lots * lots;
      double setUp = shop.levels().setUp() * Shop.GAIN;
      variance = setUp * setUp + lots * lots + 1e-9;
      double error = shop.scale().move() * Shop.GAIN;
      move = error * error;
    }

    @Override
    public double lot(int name) {
      variance += lotStep;
      return 0;
    }

    @Override
    public double measured(Seen piece) {
      variance += piece.piece() > 0 ? WANDER * reading : 0;
      double share = variance / (variance + reading);
      level += share * (piece.permil() - level);
      variance *= 1 - share;
      if (Math.abs(level) <= deadband) {
        return 0;
      }
      double amount = -level / Shop.GAIN;
      level = 0;
      variance += move;
      return amount;
    }
  }
}
