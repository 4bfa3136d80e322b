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
import org.chordlog.verdict.AlertWords;

/** What the file of alerts says, as it is understood at that moment. */
record AlertsText(AlertSettings settings, Instant now) {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("EEEE, HH:mm", Locale.ENGLISH);

  private static final String WEBHOOKS = "webhooks";

  /** Its key for programs, and what people call it. */
  private record Entry(String key, String words, Object value) {}

  List<String> lines() {
    return entries().stream().map(each -> each.words() + ": " + text(each)).toList();
  }

  /** The same for programs. */
  Map<String, Object> values() {
    Map<String, Object> all = new LinkedHashMap<>();
    entries().forEach(each -> all.put(each.key(), each.value()));
    return all;
  }

  private List<Entry> entries() {
    Roster roster = settings.roster();
    String time = TIME.format(now.atZone(roster.zone())) + " " + roster.zone();
    List<Entry> all = new ArrayList<>();
    all.add(new Entry("site", "Site", settings.site().name()));
    all.add(new Entry("pages", "Pages", settings.site().link("")));
    all.add(new Entry("now", "Now", time));
    all.add(new Entry("toldNow", "Told now", toldNow()));
    for (AlertAudience each : AlertAudience.values()) {
      all.add(new Entry(key(each), AlertWords.of(each), people(each)));
    }
    List<String> last = names(roster.groups().stream().filter(Group::last).toList());
    all.add(new Entry("lastToBeTold", "Last to be told", last));
    String mail = settings.mail() == null ? "off" : settings.mail().place();
    all.add(new Entry("mail", "Mail", mail));
    List<String> webhooks = settings.webhooks().stream().map(Webhook::name).toList();
    all.add(new Entry(WEBHOOKS, "Webhooks", webhooks));
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

  private static String text(Entry entry) {
    if (entry.value() instanceof List<?> list) {
      return list.isEmpty()
          ? (entry.key().equals(WEBHOOKS) ? "none" : "nobody")
          : list.stream().map(String::valueOf).collect(Collectors.joining(", "));
    }
    return String.valueOf(entry.value());
  }

  private static String key(AlertAudience audience) {
    return audience == AlertAudience.GAUGE_KEEPER
        ? "gaugeKeeper"
        : audience.name().toLowerCase(Locale.ROOT);
  }
}
