package org.chordlog.study;

/** Where a part of the variance of readings comes from, by its symbol in the trade. */
public enum Source {
  REPEATABILITY("EV", true, "repeatability"),
  OPERATOR("AV", true, "operators (reproducibility)"),
  INTERACTION("IA", true, "interaction of operator and piece"),
  PLACE_INTERACTION("IAplace", true, "interaction of operator and place"),
  PIECE("PVpiece", false, "between pieces"),
  PLACE("PVplace", false, "between places on a piece");

  private final String symbol;
  private final boolean gauge;
  private final String words;

  Source(String symbol, boolean gauge, String words) {
    this.symbol = symbol;
    this.gauge = gauge;
    this.words = words;
  }

  /** As manuals of gauge studies write it. */
  public String symbol() {
    return symbol;
  }

  /** True for the gauge's share, false for the product's. */
  public boolean gauge() {
    return gauge;
  }

  /** In plain English. */
  public String words() {
    return words;
  }
}
