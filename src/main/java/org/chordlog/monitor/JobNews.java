package org.chordlog.monitor;

import java.util.function.LongConsumer;
import org.chordlog.station.Announcement;

/** Tells of each announcement that changes a job's statistics, by the job's id. */
record JobNews(LongConsumer changed) implements Announcement.Hearer {
  @Override
  public void live(Announcement.Live live) {}

  @Override
  public void state(Announcement.State state) {}

  @Override
  public void taken(Announcement.Taken taken) {
    changed.accept(taken.reading().jobId());
  }

  @Override
  public void refused(Announcement.Refused refused) {}

  @Override
  public void excluded(Announcement.Excluded excluded) {
    changed.accept(excluded.jobId());
  }

  @Override
  public void happened(Announcement.Happened happened) {
    changed.accept(happened.event().jobId());
  }

  @Override
  public void zeroed(Announcement.Zeroed zeroed) {}
}
