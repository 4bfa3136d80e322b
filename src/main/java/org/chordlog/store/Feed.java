package org.chordlog.store;

import java.util.Optional;
import java.util.OptionalLong;
import org.chordlog.measure.Change;

/**
 * What another database must hear of to have the same records: every row that is not a reading once
 * with its newest change, then readings in the order of their ids. Any thread.
 */
public interface Feed {
  /**
   * Which history this is: the store's {@link Store#identity}, and how often it was begun anew
   * (from 1).
   */
  record Edge(String uuid, int incarnation) {}

  Edge edge();

  /** Version of the layout that columns are of. */
  int schemaVersion();

  /**
   * What follows a place, up to that many rows and about that many bytes (one reading at least).
   * Readings come only where no changed fact is left, so that nothing names what did not come
   * before it.
   */
  FeedPage page(FeedPlace after, int mostRows, long mostBytes);

  /** What follows a place, counted only. */
  FeedPage.Rest rest(FeedPlace after);

  /** The newest change and the newest reading. */
  FeedPlace newest();

  /** Hash of that entry of the chain, 64 hexadecimal digits; empty where there is none. */
  Optional<String> sealHash(long seq);

  /**
   * A random number beside the newest change of a row; where two databases have the same number of
   * changes but another mark, their histories differ. Empty where the row changed again since.
   */
  OptionalLong mark(long revision);

  /**
   * The history from here on is another one: the incarnation becomes higher than that and than its
   * own, in one commit with the entry in the record of changes. Returns the new one.
   */
  int beginIncarnation(int above, Change change);
}
