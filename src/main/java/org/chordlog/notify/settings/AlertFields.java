package org.chordlog.notify.settings;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.URI;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.LengthUnit;
import org.chordlog.measure.Lengths;
import org.chordlog.notify.channel.MailServer;
import org.chordlog.notify.channel.Webhook;
import org.chordlog.notify.people.Escalation;
import org.chordlog.notify.people.Group;
import org.chordlog.notify.people.Hours;
import org.chordlog.notify.people.Person;
import org.chordlog.notify.people.Roster;
import org.chordlog.notify.settings.AlertSettings.Daily;
import org.chordlog.notify.settings.AlertSettings.Site;
import org.chordlog.yaml.FieldBinder;
import org.jspecify.annotations.Nullable;

/** The keys of the file of alerts, and what they make; every fault goes to the binder. */
final class AlertFields {
  static final List<String> KEYS =
      List.of(
          "site",
          "pages",
          "unit",
          "timeZone",
          "shifts",
          "quietHours",
          "people",
          "groups",
          "escalation",
          "daily",
          "mail",
          "webhooks");

  private final FieldBinder binder;
  private final JsonNode root;
  private final Path folder;

  /** Files named in it are beside {@code folder}. */
  AlertFields(FieldBinder binder, JsonNode root, Path folder) {
    this.binder = binder;
    this.root = root;
    this.folder = folder;
  }

  /** Null where the binder has a fault. */
  @Nullable AlertSettings settings() {
    root.fieldNames().forEachRemaining(this::refuseUnknown);
    @Nullable Site site = site();
    @Nullable ZoneId zone = zone();
    PeopleFields told = new PeopleFields(binder, root);
    Map<String, Person> people = told.people(told.shifts());
    List<Group> groups = told.groups(people);
    @Nullable MailServer mail = mail();
    List<Webhook> webhooks = webhooks();
    @Nullable Hours quiet = told.quiet();
    Escalation escalation = told.escalation();
    Daily daily = told.daily(people);
    if (!root.hasNonNull("mail") && !people.isEmpty()) {
      missing("mail", "the server that mails to people are given to");
    }
    if (people.isEmpty() && webhooks.isEmpty() && !root.hasNonNull("people")) {
      missing("people", "people with mail, or webhooks");
    }
    return site == null || zone == null
        ? null
        : new AlertSettings(
            site, new Roster(groups, zone, quiet, escalation), daily, mail, webhooks);
  }

  private void refuseUnknown(String key) {
    if (!KEYS.contains(key)) {
      binder.add(key, root.get(key), "has no such key", String.join(", ", KEYS));
    }
  }

  private void missing(String path, String allowed) {
    binder.add(path, "", "is missing", allowed);
  }

  private @Nullable String text(String key, String allowed) {
    if (!root.hasNonNull(key)) {
      missing(key, allowed);
    }
    return binder.bind(key, root.get(key), String.class);
  }

  private @Nullable Site site() {
    @Nullable String name = text("site", "the name of the shop, which messages begin with");
    @Nullable String pages =
        text("pages", "the address of the pages, as https://chordlog.example/");
    @Nullable LengthUnit unit = binder.bind("unit", root.get("unit"), LengthUnit.class);
    return name == null || pages == null
        ? null
        : binder.under(
            "",
            () ->
                new Site(
                    KeyValues.oneLine("site", name),
                    address(pages),
                    new Lengths(unit == null ? LengthUnit.MM : unit)));
  }

  private static URI address(String pages) {
    if (!pages.matches("https?://[^\\s/?#@]+(/[^\\s?#]*)?")) {
      throw new BadInput(
          "pages", pages, "is not the address of pages", "as https://chordlog.example/");
    }
    return URI.create(pages.endsWith("/") ? pages : pages + "/");
  }

  private @Nullable ZoneId zone() {
    @Nullable String name = text("timeZone", "a name as Europe/London");
    try {
      return name == null ? null : ZoneId.of(name);
    } catch (DateTimeException e) {
      binder.add("timeZone", name, "is not a time zone", "a name as Europe/London or UTC");
      return null;
    }
  }

  private @Nullable MailServer mail() {
    @Nullable MailFields fields = binder.bind("mail", root.get("mail"), MailFields.class);
    return fields == null ? null : binder.under("mail", () -> fields.server(folder));
  }

  private List<Webhook> webhooks() {
    Map<String, Webhook> names = new LinkedHashMap<>();
    return new PartList(binder, root)
        .each(
            "webhooks",
            WebhookFields.class,
            fields -> {
              PartList.unique(names, fields.name());
              Webhook made = fields.webhook(folder);
              names.put(made.name(), made);
              return made;
            });
  }
}
