package org.chordlog.cli.service;

import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.chordlog.measure.alert.AlertAudience;
import org.chordlog.notify.channel.Webhook;
import org.chordlog.notify.people.Group;
import org.chordlog.notify.people.Person;
import org.chordlog.notify.people.Roster;
import org.chordlog.notify.settings.AlertSettings;

/** What the file of alerts says, as it is understood at that moment. */
record AlertsText(AlertSettings settings, Instant now) {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("EEEE, HH:mm", Locale.ENGLISH);

  List<String> lines() {
    List<String> lines = new ArrayList<>();
    values().forEach((what, value) -> lines.add(named(what) + ": " + text(value)));
    return lines;
  }

  /** The same for programs. */
  Map<String, Object> values() {
    Roster roster = settings.roster();
    Map<String, Object> all = new LinkedHashMap<>();
    all.put("site", settings.site().name());
    all.put("pages", settings.site().link(""));
    all.put("now", TIME.format(now.atZone(roster.zone())) + " " + roster.zone());
    all.put("toldNow", toldNow());
    for (AlertAudience each : AlertAudience.values()) {
      all.put(lower(each), people(each));
    }
    all.put("lastToBeTold", names(roster.groups().stream().filter(Group::last).toList()));
    all.put("mail", settings.mail() == null ? "off" : settings.mail().place());
    all.put("webhooks", settings.webhooks().stream().map(Webhook::name).toList());
    return all;
  }

  private List<String> toldNow() {
    return settings.roster().everybody().stream()
        .filter(each -> settings.roster().reachable(each, now))
        .map(Person::name)
        .toList();
  }

  private List<String> people(AlertAudience audience) {
    return names(
        settings.roster().groups().stream()
            .filter(each -> each.audiences().contains(audience))
            .toList());
  }

  private static List<String> names(List<Group> groups) {
    return groups.stream()
        .flatMap(each -> each.people().stream())
        .map(Person::name)
        .distinct()
        .toList();
  }

  private static String text(Object value) {
    if (value instanceof List<?> list) {
      return list.isEmpty()
          ? "nobody"
          : list.stream().map(String::valueOf).collect(Collectors.joining(", "));
    }
    return String.valueOf(value);
  }

  /** "toldNow" to "Told now". */
  private static String named(String key) {
    String words = key.replaceAll("([A-Z])", " $1").replace('_', ' ').toLowerCase(Locale.ROOT);
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  private static String lower(AlertAudience audience) {
    return audience == AlertAudience.GAUGE_KEEPER
        ? "gaugeKeeper"
        : audience.name().toLowerCase(Locale.ROOT);
  }
}
