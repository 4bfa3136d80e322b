package org.chordlog.profile;

import java.util.List;
import org.chordlog.measure.Check;

/**
 * What is stored beside the bins of a profile: how far the plunger touched, width of a bin, step of
 * the stored depths, mean feed and spacing of the values while moving, and what happened to the
 * feed.
 */
public record ProfileFacts(
    long touchNm,
    long widthNm,
    long quantumNm,
    long feedNmPerSecond,
    long pitchNm,
    List<ProfileEvent> events) {
  public ProfileFacts {
    Check.within("touchNm", touchNm, 0, Long.MAX_VALUE);
    Check.within("widthNm", widthNm, 1, Integer.MAX_VALUE);
    Check.within("quantumNm", quantumNm, 1, Integer.MAX_VALUE);
    Check.within("feedNmPerSecond", feedNmPerSecond, 0, Long.MAX_VALUE);
    Check.within("pitchNm", pitchNm, 0, Long.MAX_VALUE);
    events = List.copyOf(events);
  }

  double touchMm() {
    return touchNm / 1e6;
  }

  double widthMm() {
    return widthNm / 1e6;
  }

  double feedMmPerSecond() {
    return feedNmPerSecond / 1e6;
  }

  double pitchMm() {
    return pitchNm / 1e6;
  }
}
