package org.chordlog.account;

/** What a request needs; {@code words} go on after "may". */
public enum Right {
  /** Nothing: pages without data, signing in, whether the process lives. */
  ANYONE("be seen by anyone"),
  /** All that reads. */
  LOOK("look at everything"),
  /** Takes, undoes and repeats readings, zero, place, corrections, lots. */
  MEASURE("measure"),
  /** Records the cause of a signal and what was done; whoever may measure may do this too. */
  ANSWER("record the cause of a signal"),
  /** Opens and changes jobs, chooses the job of a station, moves pieces to the job they are of. */
  JOB("open and change jobs"),
  /** Leaves readings out and takes them in again, closes and reopens jobs. */
  JUDGE("exclude readings and close jobs"),
  /** Masters, calibrations, checks, bridges, studies. */
  GAUGE("look after the gauges"),
  /** Scales, rollers and log books of machines. */
  MACHINE("look after the machines"),
  /** Acknowledges alerts, says whose they are, puts aside those that concern the role. */
  ALERT("answer alerts"),
  /** Stations and their ports. */
  CONFIGURE("set up stations"),
  /** Accounts, tokens and shared screens. */
  ADMINISTER("look after accounts");

  private final String words;

  Right(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
