package org.chordlog.measure;

import java.util.Set;

/**
 * One captured measurement on a piece, as kept for ever. {@code id} is the order of commit over all
 * stations, {@code station} with {@code stationSequence} its identity. {@code depthNm} is the
 * captured value less the zero; {@code rawHex} the bytes of the last frame as sent.
 */
public record Reading(
    long id,
    String station,
    long stationSequence,
    long jobId,
    int piece,
    String position,
    CapturedDepth captured,
    long depthNm,
    long setUpId,
    RadiusEstimate radius,
    Decision decision,
    Set<Mark> marks,
    ClockState clock,
    String rawHex,
    Circumstances circumstances) {
  public Reading {
    Check.text("station", station);
    Check.text("position", position);
    Check.within("piece", piece, 1, Integer.MAX_VALUE);
    marks = Set.copyOf(marks);
  }

  /** Without recorded circumstances. */
  public Reading(
      long id,
      String station,
      long stationSequence,
      long jobId,
      int piece,
      String position,
      CapturedDepth captured,
      long depthNm,
      long setUpId,
      RadiusEstimate radius,
      Decision decision,
      Set<Mark> marks,
      ClockState clock,
      String rawHex) {
    this(
        id,
        station,
        stationSequence,
        jobId,
        piece,
        position,
        captured,
        depthNm,
        setUpId,
        radius,
        decision,
        marks,
        clock,
        rawHex,
        Circumstances.UNRECORDED);
  }

  public Reading withId(long newId) {
    return copy(newId, circumstances);
  }

  public Reading withCircumstances(Circumstances changed) {
    return copy(id, changed);
  }

  private Reading copy(long newId, Circumstances changed) {
    return new Reading(
        newId,
        station,
        stationSequence,
        jobId,
        piece,
        position,
        captured,
        depthNm,
        setUpId,
        radius,
        decision,
        marks,
        clock,
        rawHex,
        changed);
  }

  public long wallMicros() {
    return captured.wallMicros();
  }
}
