package org.chordlog.notify.rule;

/** What happens to an alert: what the service finds, and what people do. */
enum AlertInput {
  /** What it is about is so, long enough to be told. */
  APPEARS,
  /** It is so, and got worse than was told. */
  WORSENS,
  /** It is no longer so, long enough to be believed. */
  DISAPPEARS,
  /** It is told as an alert of another kind from now on. */
  REPLACED,
  /** The time on the shelf is over. */
  SHELF_ENDS,
  /** The machine was set up anew or repaired. */
  REPAIRED,
  ACKNOWLEDGE,
  SHELVE,
  UNSHELVE,
  ASSIGN,
  TAKE_OUT_OF_SERVICE,
  PUT_BACK_IN_SERVICE
}
