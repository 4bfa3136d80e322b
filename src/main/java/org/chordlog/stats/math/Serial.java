package org.chordlog.stats.math;

/**
 * Running lag-1 autocorrelation r1 = Σ(yᵢ − ȳ)(yᵢ₊₁ − ȳ)/Σ(yᵢ − ȳ)² (NIST StRD), shift by first.
 */
public final class Serial {
  private long n;
  private double first;
  private double newest;
  private double sum;
  private double products;

  /** Takes in the next value. */
  public void add(double value) {
    if (n++ == 0) {
      first = value;
    } else {
      products += newest * (value - first);
    }
    newest = value - first;
    sum += newest;
  }

  /** NaN without variation or below three values. */
  public double lagOne(double sumOfSquares) {
    if (n < 3 || sumOfSquares == 0) {
      return Double.NaN;
    }
    double mean = sum / n;
    return (products - mean * (2 * sum - newest) + (n - 1) * mean * mean) / sumOfSquares;
  }

  /** Writes the whole state. */
  public void pack(Packer packer) {
    packer.put(n).put(first).put(newest).put(sum).put(products);
  }

  /** Reads the state that was written. */
  public static Serial unpack(Unpacker from) {
    Serial serial = new Serial();
    serial.n = from.aLong();
    serial.first = from.aDouble();
    serial.newest = from.aDouble();
    serial.sum = from.aDouble();
    serial.products = from.aDouble();
    return serial;
  }
}
