package org.chordlog.study;

/** Contributions to the uncertainty of a measuring process, by the symbols of ISO 22514-7. */
public enum Contribution {
  RE("resolution"),
  CAL("calibration of the master"),
  BI("bias"),
  LIN("linearity"),
  EVR("repeatability on the master"),
  EVO("repeatability on pieces"),
  AV("operators"),
  IA("interaction of operator and piece"),
  STAB("stability over days"),
  T("temperature"),
  OBJ("the piece itself: form, placing"),
  GV("differences between gauges"),
  REST("anything else"),
  MPE("maximum permissible error of the gauge, in place of its own contributions");

  private final String words;

  Contribution(String words) {
    this.words = words;
  }

  /** What contributes, in plain English. */
  public String words() {
    return words;
  }
}
