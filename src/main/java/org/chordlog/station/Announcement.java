package org.chordlog.station;

import org.chordlog.capture.Capture;
import org.chordlog.capture.CaptureOutcome;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.Zero;
import org.jspecify.annotations.Nullable;

/** What a station tells the rest of the service. */
public sealed interface Announcement {
  String station();

  /** Calls the method of {@code hearer} for this kind of announcement. */
  void tell(Hearer hearer);

  /** One method a kind, so that a new kind does not compile until everyone has dealt with it. */
  interface Hearer {
    void live(Live live);

    void state(State state);

    void taken(Taken taken);

    void refused(Refused refused);

    void excluded(Excluded excluded);

    void happened(Happened happened);

    void zeroed(Zeroed zeroed);
  }

  /**
   * The newest value as the indicator shows it, at most ten a second, two where it stands in free
   * air or on a piece that is measured; no depth before a zero, and no radius where no bend can be
   * told from a flat.
   */
  record Live(
      String station,
      long wallMicros,
      long valueNm,
      @Nullable Long depthNm,
      @Nullable Double radiusMm,
      boolean flat,
      Capture.Phase phase)
      implements Announcement {
    @Override
    public void tell(Hearer hearer) {
      hearer.live(this);
    }
  }

  /** The link, what the indicator says of itself, or what is worked on has changed. */
  record State(String station, StationStatus status) implements Announcement {
    @Override
    public void tell(Hearer hearer) {
      hearer.state(this);
    }
  }

  /** A reading that is committed. */
  record Taken(String station, Reading reading) implements Announcement {
    @Override
    public void tell(Hearer hearer) {
      hearer.taken(this);
    }
  }

  /** A capture that was refused. */
  record Refused(String station, CaptureOutcome.Rejected rejection) implements Announcement {
    @Override
    public void tell(Hearer hearer) {
      hearer.refused(this);
    }
  }

  /** A reading of that job was taken out of the statistics, or put back; stored already. */
  record Excluded(String station, long jobId, Exclusion exclusion) implements Announcement {
    @Override
    public void tell(Hearer hearer) {
      hearer.excluded(this);
    }
  }

  /** An event of a job that is stored already. */
  record Happened(String station, JobEvent event) implements Announcement {
    @Override
    public void tell(Hearer hearer) {
      hearer.happened(this);
    }
  }

  /** A zero that is stored already. */
  /** {@code doubt}: what free air says against it; null where nothing. */
  record Zeroed(String station, Zero zero, @Nullable Sentence doubt) implements Announcement {
    @Override
    public void tell(Hearer hearer) {
      hearer.zeroed(this);
    }
  }
}
