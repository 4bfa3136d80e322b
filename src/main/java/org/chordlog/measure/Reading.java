package org.chordlog.measure;

import java.util.Set;

/**
 * One captured measurement on a piece, never changed once stored. {@code id} is the order of commit
 * over all stations; its source identifies it.
 */
public record Reading(
    long id,
    Source source,
    Place place,
    Measured measured,
    Result result,
    Circumstances circumstances) {
  /** The station, its running number there, the state of its clock, and the last frame's bytes. */
  public record Source(String station, long sequence, ClockState clock, String rawHex) {
    public Source {
      Check.text("station", station);
    }
  }

  /** Where it was taken: a job's piece, and the position along that piece. */
  public record Place(long jobId, int piece, String position) {
    public Place {
      Check.text("position", position);
      Check.within("piece", piece, 1, Integer.MAX_VALUE);
    }
  }

  /** The captured value, and the depth: that value less the zero of the set-up named. */
  public record Measured(CapturedDepth captured, long depthNm, long setUpId) {}

  /** What was computed from the depth, and what makes it doubtful. */
  public record Result(RadiusEstimate radius, Decision decision, Set<Mark> marks) {
    public Result {
      marks = Set.copyOf(marks);
    }
  }

  /** The same reading under another id. */
  public Reading withId(long newId) {
    return new Reading(newId, source, place, measured, result, circumstances);
  }

  /** The same reading under another running number of its station. */
  public Reading withSequence(long sequence) {
    Source numbered = new Source(station(), sequence, clock(), rawHex());
    return new Reading(id, numbered, place, measured, result, circumstances);
  }

  /** The same reading in other circumstances. */
  public Reading withCircumstances(Circumstances changed) {
    return new Reading(id, source, place, measured, result, changed);
  }

  public String station() {
    return source.station();
  }

  public long stationSequence() {
    return source.sequence();
  }

  public ClockState clock() {
    return source.clock();
  }

  public String rawHex() {
    return source.rawHex();
  }

  public long jobId() {
    return place.jobId();
  }

  public int piece() {
    return place.piece();
  }

  public String position() {
    return place.position();
  }

  public CapturedDepth captured() {
    return measured.captured();
  }

  public long depthNm() {
    return measured.depthNm();
  }

  public long setUpId() {
    return measured.setUpId();
  }

  public RadiusEstimate radius() {
    return result.radius();
  }

  public Decision decision() {
    return result.decision();
  }

  public Set<Mark> marks() {
    return result.marks();
  }

  public long wallMicros() {
    return captured().wallMicros();
  }
}
