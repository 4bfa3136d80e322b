package org.chordlog.store;

import java.util.List;
import java.util.Optional;
import org.chordlog.measure.Job;
import org.chordlog.measure.Recorded;
import org.jspecify.annotations.Nullable;

/**
 * What the workshop computers of a plant (its edges) have delivered to one database. Any thread.
 * {@link StoreException} where the database can't be reached.
 */
public interface Plant extends AutoCloseable {
  /** Version of the layout of an edge's records that the plant of this program has. */
  int LAYOUT = 9;

  /** After this time without a word from it an edge is {@link State#SILENT}. */
  int SILENT_SECONDS = 300;

  /**
   * A workshop computer. {@code id} is the identity of its database; {@code incarnation} counts the
   * times that its records began anew, from 1; {@code trouble} is what it last said to be wrong
   * with its records, empty where all is well. {@code delivered} is null before the first delivery.
   */
  record Edge(
      String id,
      String name,
      String site,
      int incarnation,
      Versions versions,
      State state,
      String trouble,
      @Nullable Delivered delivered,
      List<Branch> formerly) {}

  /** Of the program and of the layout of the database at the edge. */
  record Versions(String program, int schema) {}

  /** Whether what an edge has measured is here. */
  enum State {
    /** It was added, and nothing has arrived yet. */
    NEW,
    /** Everything it had when it last spoke. */
    COMPLETE,
    /** It has more than it has delivered. */
    BEHIND,
    /** Nothing was heard of it for {@link #SILENT_SECONDS}. */
    SILENT
  }

  /**
   * Times are UTC microseconds: {@code receivedMicros} of the newest batch and {@code seenMicros}
   * when it last spoke, both by the plant's clock; {@code newestEdgeMicros} of the newest record
   * there is at the edge, by the edge's. {@code backlogRows}: records not delivered when it last
   * spoke; {@code clockAheadMicros}: its clock minus the plant's then.
   */
  record Delivered(
      long lastReadingId,
      long receivedMicros,
      long seenMicros,
      long backlogRows,
      long newestEdgeMicros,
      long clockAheadMicros) {}

  /**
   * A former history of an edge, which ended after that reading because its records began anew
   * (restored from a backup, or copied). What was delivered beyond it is still in the database.
   */
  record Branch(int incarnation, long endedAfterReadingId, long atMicros, String why) {}

  /** What people at the plant may ask of an edge. */
  enum RequestKind {
    ACKNOWLEDGE_ALERT,
    SHELVE_ALERT,
    ASSIGN_ALERT,
    LOGBOOK_ENTRY
  }

  /**
   * {@code body}: a JSON object, whose members the kind says. {@code answer}: null until it came.
   */
  record Request(
      long id,
      String edgeId,
      RequestKind kind,
      String body,
      Recorded made,
      @Nullable Answer answer) {}

  /** {@code refusal}: a sentence why the edge did not do it; empty where it did. */
  record Answer(long atMicros, String refusal) {}

  /** Something that one of the programs on the plant does at a time; any thread. */
  interface Turn extends AutoCloseable {
    /**
     * Whether it is this program's. Who has it keeps it until it is closed or its connection to the
     * database ends; then another program gets it when it asks.
     */
    boolean mine();

    @Override
    void close();
  }

  /**
   * A job with whose it is: the lot in the machine now (empty: none is told), whether readings of
   * its station go to it, and how many it has.
   */
  record FoundJob(String edgeId, Job job, String lot, boolean active, long readings) {}

  /** By site, then by name. */
  List<Edge> edges();

  Optional<Edge> edge(String id);

  /**
   * What that edge has delivered, with the ids it has there. Of it only checkpoints may be written,
   * which are the plant's own; every other change is refused with {@link
   * org.chordlog.measure.BadInput} that names the edge. The same object each time; it is closed
   * with the plant. {@link org.chordlog.measure.BadInput} for an unknown id.
   */
  Store store(String edgeId);

  /**
   * Jobs of all edges, or of one, those that were opened last first, up to {@code limit}; of each
   * edge as its present history has them.
   */
  List<FoundJob> jobs(JobQuery.Filter filter, @Nullable String edgeId, int limit);

  /**
   * What belongs to the plant itself: its people, tokens and sessions, its alerts about silent
   * edges, its record of changes. It has no readings. It may be written.
   */
  Store own();

  /** Leaves it for the edge, which fetches it when it next speaks; with its id. */
  Request ask(String edgeId, RequestKind kind, String body, Recorded by);

  /** Up to {@code limit} requests to that edge with id below {@code beforeId}, descending. */
  List<Request> requests(String edgeId, long beforeId, int limit);

  /** Of what has that name; programs that ask for the same take turns. */
  Turn turn(String of);

  @Override
  void close();
}
