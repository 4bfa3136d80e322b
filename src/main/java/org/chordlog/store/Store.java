package org.chordlog.store;

import java.util.List;
import java.util.Optional;

/**
 * Everything that is stored. What a method returned, and what a future completed with, is committed
 * and survives a kill or a power cut. Reads see every commit that was acknowledged before they
 * began, never hold up writes, and may come from any thread.
 *
 * <p>Every store keeps these rules, which {@code StoreContract} in the tests checks:
 *
 * <ul>
 *   <li>Ids of one kind of record become visible in ascending order: once a reader has seen an id,
 *       no smaller one of that kind ever appears. Pages that ask for "above the last id seen" miss
 *       nothing.
 *   <li>A method that writes does so in one commit, together with the entry in {@link Changes}
 *       where its contract names one.
 *   <li>{@link org.chordlog.measure.BadInput} is thrown where the caller names an id that does not
 *       exist or a record breaks a rule; nothing is written then, and trying again does not help.
 *       {@link StoreException} is thrown where the disk or the database fails, or the store is
 *       closed or open for reading only; the same call may succeed later.
 *   <li>Texts are compared and sorted by their Unicode code points, unless a method says otherwise.
 * </ul>
 */
public interface Store extends AutoCloseable {
  /** Names this database among all; a copy or a restored backup has the same. */
  String identity();

  /**
   * Changes when ids may begin anew: after a restore, or where records were lost. Who remembers an
   * id from before looks again at everything.
   */
  String epoch();

  /** The newest entry of the chain of hashes over the records. */
  SealTip seal();

  Readings readings();

  Jobs jobs();

  Gauges gauges();

  Traces traces();

  Changes changes();

  Incidents incidents();

  Checkpoints checkpoints();

  SignalAnswers signalAnswers();

  Machines machines();

  Logbooks logbooks();

  Studies studies();

  Accounts accounts();

  Outbox outbox();

  Alerts alerts();

  AnsweredRequests answeredRequests();

  /** What a plant is told; empty where this store is not the one that its records are made in. */
  default Optional<Feed> feed() {
    return Optional.empty();
  }

  /** Damaged records that were met since the store was opened. */
  List<UnreadableRecord> unreadable();

  StoreHealth health();

  /**
   * Commits what is queued, waits for reads under way, then frees the data. Closing again does
   * nothing.
   */
  @Override
  void close();
}
