package org.chordlog.account;

import java.util.HashSet;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Who makes a request. {@code session} is the hash of its session, empty for a program; {@code
 * screen} is the name of the shared screen it comes from, empty elsewhere; {@code name} is empty
 * where nobody has said who is at that screen.
 */
public record Caller(String name, Set<Right> rights, String session, String screen) {
  public Caller {
    rights = withAnswers(rights);
  }

  /** Tokens and shared screens that measure answer signals too. */
  private static Set<Right> withAnswers(Set<Right> given) {
    Set<Right> rights = new HashSet<>(given);
    if (given.contains(Right.MEASURE)) {
      rights.add(Right.ANSWER);
    }
    return Set.copyOf(rights);
  }

  public boolean may(Right right) {
    return right == Right.ANYONE || rights.contains(right);
  }

  /** What to say to someone who lacks it. */
  public String refusal(Right right) {
    String who =
        name.isEmpty() ? "Nobody has said who is at this screen" : name + " may not do this";
    String roles =
        Stream.of(Role.values())
            .filter(each -> each.may(right))
            .map(Role::words)
            .collect(Collectors.joining(" or "));
    String here = screen.isEmpty() ? "" : ", on a screen that is not shared";
    boolean personHelps = name.isEmpty() && (right == Right.MEASURE || right == Right.ANSWER);
    return personHelps
        ? who + ": enter a name with its PIN, or read a badge."
        : who + ". To " + right.words() + " takes the role " + roles + here + ".";
  }
}
