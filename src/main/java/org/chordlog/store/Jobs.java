package org.chordlog.store;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.SpecificationRevision;

/**
 * Jobs and what happened in them. Ids that do not exist throw BadInput where something is written.
 */
public interface Jobs {
  /**
   * Stores a new job under a new id; its specification is revision 1. With it goes an entry "job
   * ID" in {@link Changes}.
   */
  Job add(Job job, String by);

  /** Stores new jobs as {@link #add(Job, String)} does, all or none; in the order given. */
  List<Job> addAll(List<Job> jobs, String by);

  /**
   * Replaces the job of that id. A specification that differs becomes the next revision, any other
   * change keeps it; the revision of the argument is ignored. With it goes an entry "job ID" in
   * {@link Changes} that holds the reason.
   */
  Job update(Job job, String by, String why);

  /**
   * The same, where the job is still {@code before}; {@link org.chordlog.measure.Stale} where it
   * was changed since, and nothing is written.
   */
  Job update(Job job, Job before, String by, String why);

  /** {@link DamagedRecordException} where it is there and can't be read. */
  Optional<Job> find(long id);

  /** The same for what goes on without it: none where it can't be read. */
  default Optional<Job> readable(long id) {
    try {
      return find(id);
    } catch (DamagedRecordException left) {
      return Optional.empty();
    }
  }

  /** The revisions of a job's specification, the first one first; none for an unknown job. */
  List<SpecificationRevision> revisions(long jobId);

  /** Up to {@code limit} jobs with id below {@code beforeId}, descending. */
  List<Job> list(long beforeId, int limit);

  List<Job> search(JobQuery query);

  /** The job that a station's readings go to, if one is selected. */
  Optional<Job> activeOn(String station);

  /** Selects the job that a station's readings go to, in place of the one before. */
  void activate(String station, long jobId);

  /** Records an event; it is never changed or removed. */
  JobEvent add(JobEvent event);

  /** Events of a job by id, those taken back too. */
  List<JobEvent> eventsOfJob(long jobId);

  /** The same, with id above {@code afterId}. */
  List<JobEvent> eventsOfJob(long jobId, long afterId);

  /** Events on a machine by id, those taken back too. */
  List<JobEvent> eventsOfMachine(String machine);

  /** The same, with id above {@code afterId}. */
  List<JobEvent> eventsOfMachine(String machine, long afterId);

  /**
   * The material lot that a job works on: of its newest event that names one and was not taken
   * back, else as the job says; empty where neither names one.
   */
  Optional<String> materialLot(long jobId);

  /**
   * Takes an event back; the event stays, and whoever lists events tells by {@link
   * #withdrawalsOfJob} which of them no longer count. Throws {@link org.chordlog.measure.BadInput}
   * when the event does not exist or was taken back before.
   */
  EventWithdrawal add(EventWithdrawal withdrawal);

  /** Records an event and takes back the one that it replaces: both, or none. */
  JobEvent add(JobEvent event, EventWithdrawal ofWrong);

  /** Withdrawals of a job's events with id above {@code afterId}, ascending. */
  List<EventWithdrawal> withdrawalsOfJob(long jobId, long afterId);

  /** Numbers of a job's events that were taken back. */
  default Set<Long> takenBack(long jobId) {
    return EventWithdrawal.events(withdrawalsOfJob(jobId, 0));
  }

  /** A job's events by id, without those taken back. */
  default List<JobEvent> countingOfJob(long jobId) {
    return EventWithdrawal.counting(eventsOfJob(jobId), withdrawalsOfJob(jobId, 0));
  }

  /** Withdrawals of the events on a machine with id above {@code afterId}, ascending. */
  List<EventWithdrawal> withdrawalsOfMachine(String machine, long afterId);
}
