package org.chordlog.verdict;

import org.chordlog.measure.Capital;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.study.StudyVerdict;

/** What a gauge study, its state and its verdict are called wherever a person reads of them. */
public final class StudyWords {
  private StudyWords() {}

  /** What the study is called. */
  public static String of(GaugeStudy.Kind kind) {
    return switch (kind) {
      case CROSSED -> "Pieces and operators";
      case SPLIT -> "Pieces, marked places and operators";
      case NESTED -> "Operators, each with pieces of their own";
      case LOTS -> "Operators, each repeat another piece";
      case ONE_OPERATOR -> "Pieces, one operator";
      case PLACING -> "Placed by eye against placed on a mark";
      case BIAS -> "Bias on one master";
      case LINEARITY -> "Bias on several masters";
      case STABILITY -> "One master over days";
      case TYPE1 -> "One master against the tolerance";
    };
  }

  /** What the study is for, and what it takes. */
  public static String purpose(GaugeStudy.Kind kind) {
    return switch (kind) {
      case CROSSED ->
          "What gauge and operators add to the scatter. Every operator measures every piece, at"
              + " one mark on each.";
      case SPLIT ->
          "The same with several marks on each piece: what varies along a piece is not taken for"
              + " the gauge.";
      case NESTED ->
          "For pieces that spring, relax or get warm in other hands: no piece is measured by two"
              + " people.";
      case LOTS ->
          "For what can be measured only once: each repeat is another piece, bent one after the"
              + " other at one setting. The result is the most that the gauge can be.";
      case ONE_OPERATOR -> "How well one person repeats. Says nothing of other people.";
      case PLACING ->
          "What finding the place by eye adds: the same person measures each piece by eye and on"
              + " its mark.";
      case BIAS -> "How far one master is read beside its value. Ten repeats or more.";
      case LINEARITY ->
          "How far several masters are read beside their values: tells an error of the span from"
              + " one of the zero.";
      case STABILITY ->
          "Whether the gauge stays the same: the same master every day, each day as often. The"
              + " study may take weeks; set zero each day.";
      case TYPE1 ->
          "Whether scatter and bias on one master are small against the job's tolerance. 25 repeats"
              + " or more, best 50.";
    };
  }

  /** What its parts are called. */
  public static String parts(GaugeStudy.Kind kind) {
    return switch (kind) {
      case CROSSED, SPLIT, NESTED, ONE_OPERATOR, PLACING -> "Pieces";
      case LOTS -> "Lots";
      case BIAS, LINEARITY, TYPE1 -> "Masters";
      case STABILITY -> "Days";
    };
  }

  /** What one spot is that is measured again and again, as an axis or a column is headed. */
  public static String spot(GaugeStudy.Kind kind) {
    return switch (kind) {
      case CROSSED, NESTED, ONE_OPERATOR -> "Piece";
      case SPLIT -> "Piece, place";
      case PLACING -> "Piece, how it is placed";
      case LOTS -> "Lot";
      case BIAS, LINEARITY, TYPE1 -> "Master";
      case STABILITY -> "Day";
    };
  }

  /** One of its parts, as whoever measures it is told. */
  public static String part(GaugeStudy.Kind kind, String name) {
    return switch (kind) {
      case CROSSED, SPLIT, NESTED, ONE_OPERATOR, PLACING -> "Piece " + name;
      case LOTS -> "Another piece of lot " + name;
      case BIAS, LINEARITY, TYPE1 -> "Master " + name;
      case STABILITY -> "Day " + name;
    };
  }

  /** How one measurement of it is taken. */
  public static String handling(GaugeStudy.Kind kind, String place) {
    return switch (kind) {
      case CROSSED, SPLIT, NESTED, ONE_OPERATOR ->
          "Put the bridge down at the mark, hold it still, then lift it.";
      case LOTS ->
          "Take a piece that was not measured yet. Put the bridge down at its place, hold it still,"
              + " then lift it.";
      case PLACING ->
          place.equals(GaugeStudy.BY_EYE)
              ? "Cover or turn away the mark. Find the place by eye, put the bridge down, hold it"
                  + " still, then lift it."
              : "Put the bridge down exactly at the mark, hold it still, then lift it.";
      case BIAS, LINEARITY, STABILITY, TYPE1 ->
          "Stand the bridge on the master, hold it still, then lift it.";
    };
  }

  /** How far the study is. */
  public static String of(GaugeStudy.State state) {
    return switch (state) {
      case PAUSED -> "Paused";
      case RUNNING -> "Running";
      case DONE -> "Done";
      case ABANDONED -> "Given up";
    };
  }

  /** How much its state asks of a reader. */
  public static Tone tone(GaugeStudy.State state) {
    return switch (state) {
      case PAUSED, ABANDONED -> Tone.QUIET;
      case RUNNING -> Tone.OPEN;
      case DONE -> Tone.GOOD;
    };
  }

  /** What the study came to. */
  public static String of(StudyVerdict verdict) {
    String words = verdict.words();
    return Capital.of(words);
  }

  /** How much its verdict asks of a reader. */
  public static Tone tone(StudyVerdict verdict) {
    return switch (verdict) {
      case PASSES -> Tone.GOOD;
      case UNDECIDED -> Tone.OPEN;
      case FAILS -> Tone.BAD;
    };
  }
}
