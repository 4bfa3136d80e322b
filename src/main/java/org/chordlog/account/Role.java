package org.chordlog.account;

import java.util.Arrays;
import java.util.Collection;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.chordlog.measure.BadInput;

/**
 * What a person is in the shop. Whoever sets up stations and accounts neither measures nor judges;
 * a person who does both has both roles.
 */
public enum Role {
  VIEWER,
  OPERATOR,
  GAUGE_KEEPER,
  QUALITY,
  MAINTENANCE,
  ADMINISTRATOR;

  public boolean may(Right right) {
    return right == Right.ANYONE || right == Right.LOOK || own().contains(right);
  }

  private Set<Right> own() {
    return switch (this) {
      case VIEWER -> Set.of();
      case OPERATOR -> Set.of(Right.MEASURE, Right.ANSWER, Right.JOB, Right.ALERT);
      case GAUGE_KEEPER -> Set.of(Right.MEASURE, Right.ANSWER, Right.GAUGE, Right.ALERT);
      case QUALITY -> Set.of(Right.MEASURE, Right.ANSWER, Right.JOB, Right.JUDGE, Right.ALERT);
      case MAINTENANCE -> Set.of(Right.ANSWER, Right.MACHINE, Right.ALERT);
      case ADMINISTRATOR -> Set.of(Right.CONFIGURE, Right.ADMINISTER, Right.ALERT);
    };
  }

  /** As people write it: gauge keeper. */
  public String words() {
    return switch (this) {
      case VIEWER -> "viewer";
      case OPERATOR -> "operator";
      case GAUGE_KEEPER -> "gauge keeper";
      case QUALITY -> "quality";
      case MAINTENANCE -> "maintenance";
      case ADMINISTRATOR -> "administrator";
    };
  }

  /** What someone in this role does here. */
  public String task() {
    return switch (this) {
      case VIEWER -> "looks";
      case OPERATOR -> "measures, opens and changes jobs";
      case GAUGE_KEEPER -> "measures, masters, calibrations, studies";
      case QUALITY -> "as operator, excludes readings, closes jobs";
      case MAINTENANCE -> "scales, rollers and log books of machines";
      case ADMINISTRATOR -> "stations and accounts, does not measure";
    };
  }

  /** Rights of someone who has all these roles. */
  static Set<Right> rights(Collection<Role> roles) {
    return Arrays.stream(Right.values())
        .filter(right -> roles.stream().anyMatch(each -> each.may(right)))
        .collect(Collectors.toSet());
  }

  /** By name, as gauge-keeper or GAUGE_KEEPER; at least one. */
  static Set<Role> read(Collection<String> names) {
    if (names.isEmpty()) {
      throw new BadInput("roles", "", "is missing", all());
    }
    return names.stream().map(Role::read).collect(Collectors.toSet());
  }

  /** The names of those roles, each as {@link #name()}; {@link BadInput} for another. */
  public static Set<String> known(Collection<String> names) {
    return names(read(names));
  }

  private static Role read(String name) {
    String wanted = name.strip().replace('-', '_').replace(' ', '_').toUpperCase(Locale.ROOT);
    return Arrays.stream(values())
        .filter(each -> each.name().equals(wanted))
        .findFirst()
        .orElseThrow(() -> new BadInput("roles", name, "is not a role", all()));
  }

  private static String all() {
    return Arrays.stream(values())
        .map(each -> each.words().replace(' ', '-'))
        .collect(Collectors.joining(", "));
  }

  static Set<String> names(Set<Role> roles) {
    return roles.stream().map(Enum::name).collect(Collectors.toSet());
  }
}
