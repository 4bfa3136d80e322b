package org.chordlog.decode;

/** What the text of a sign group means where it is not + or -. */
public enum SignMeaning {
  PLUS,
  MINUS
}
