package org.chordlog.account;

import java.util.Arrays;
import java.util.Collection;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.chordlog.measure.BadInput;

/**
 * What a person is in the shop. Whoever sets up stations and accounts neither measures nor judges;
 * a person who does both has both roles.
 */
public enum Role {
  VIEWER(),
  OPERATOR(Right.MEASURE, Right.JOB),
  GAUGE_KEEPER(Right.MEASURE, Right.GAUGE),
  QUALITY(Right.MEASURE, Right.JOB, Right.JUDGE),
  MAINTENANCE(Right.MACHINE),
  ADMINISTRATOR(Right.CONFIGURE, Right.ADMINISTER);

  private final Set<Right> rights = EnumSet.of(Right.ANYONE, Right.LOOK);

  Role(Right... more) {
    rights.addAll(Arrays.asList(more));
  }

  public boolean may(Right right) {
    return rights.contains(right);
  }

  /** As people write it: gauge keeper. */
  public String words() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** Rights of someone who has all these roles. */
  static Set<Right> rights(Collection<Role> roles) {
    return roles.stream().flatMap(each -> each.rights.stream()).collect(Collectors.toSet());
  }

  /** By name, as gauge-keeper or GAUGE_KEEPER; at least one. */
  static Set<Role> read(Collection<String> names) {
    if (names.isEmpty()) {
      throw new BadInput("roles", "", "is missing", all());
    }
    return names.stream().map(Role::read).collect(Collectors.toSet());
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
