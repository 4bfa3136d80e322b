package org.chordlog.store;

import java.util.List;
import java.util.Optional;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Specification;

/** Jobs and what happened in them. */
public interface Jobs {
  /** Keeps a new job; the id is given. */
  Job add(Job job, String by);

  /** Replaces a job; the change is recorded with its reason. */
  Job update(Job job, String by, String why);

  Optional<Job> find(long id);

  /** A job's specification from a time on, UTC µs. */
  record Specified(long sinceMicros, Specification specification) {}

  /** What was specified for a job, the oldest first, after the record of changes. */
  List<Specified> specifications(long jobId);

  /** All jobs, the newest first, from {@code beforeId} down. */
  List<Job> list(long beforeId, int limit);

  List<Job> search(JobQuery query);

  /** The job that a station's readings go to, if one is selected. */
  Optional<Job> activeOn(String station);

  void activate(String station, long jobId);

  JobEvent add(JobEvent event);

  List<JobEvent> eventsOfJob(long jobId);

  /** Events of a job with id above {@code afterId}, ascending. */
  List<JobEvent> eventsOfJob(long jobId, long afterId);

  List<JobEvent> eventsOfMachine(String machine);

  /** Events on a machine with id above {@code afterId}, ascending. */
  List<JobEvent> eventsOfMachine(String machine, long afterId);
}
