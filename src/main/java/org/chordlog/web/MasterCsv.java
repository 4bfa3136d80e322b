package org.chordlog.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Face;
import org.chordlog.measure.Master;
import org.chordlog.store.Gauges;
import org.chordlog.verdict.StoredWords;
import org.chordlog.web.http.Faults;
import org.jspecify.annotations.Nullable;

/**
 * Masters as CSV, one a row: name, face (outer or inner), radius and expanded uncertainty (k = 2)
 * as the certificate states them, and by how much an interim check may differ; mm.
 */
final class MasterCsv {
  private static final String NAME = "name";
  private static final String FACE = "face";
  private static final String RADIUS = "radius_mm";
  private static final String UNCERTAINTY = "expanded_uncertainty_mm";
  private static final String LIMIT = "check_limit_mm";
  private static final TableFile.Form FORM =
      new TableFile.Form("masters", List.of(NAME, FACE, RADIUS, UNCERTAINTY, LIMIT), RADIUS);

  private final Gauges gauges;

  private final MasterReach reach;

  MasterCsv(Gauges gauges, MasterReach reach) {
    this.gauges = gauges;
    this.reach = reach;
  }

  String text() {
    return TableFile.text(FORM, gauges.masters().stream().map(MasterCsv::cells).toList());
  }

  private static List<String> cells(Master master) {
    return List.of(
        master.name(),
        master.face().name().toLowerCase(Locale.ROOT),
        Numbers.plain(master.radiusMm()),
        Numbers.plain(master.expandedUncertaintyMm()),
        Numbers.plain(master.checkLimitMm()));
  }

  /** Adds what is new, all or nothing; {@link BadInput} with every fault by line and column. */
  ImportedRows add(String csv, boolean create, String by) {
    Faults faults = new Faults();
    List<Master> known = new ArrayList<>(gauges.masters());
    List<Master> added = new ArrayList<>();
    List<ImportedRows.Row> rows = new ArrayList<>();
    for (TableFile.Row row : TableFile.rows(csv, FORM)) {
      Master master =
          faults.made("line " + row.line() + ", column ", () -> master(row, List.copyOf(known)));
      if (master != null) {
        boolean isNew = known.stream().noneMatch(each -> each.name().equals(master.name()));
        rows.add(new ImportedRows.Row(row.line(), master.name(), isNew, StoredWords.of(master)));
        if (isNew) {
          known.add(master);
          added.add(master);
        }
      }
    }
    faults.refuse();
    if (create) {
      var unused = gauges.importMasters(added, by);
    }
    return ImportedRows.of(rows, create);
  }

  private Master master(TableFile.Row row, List<Master> known) {
    double uncertainty = row.neededLength(UNCERTAINTY);
    Double limit = row.length(LIMIT);
    Master master =
        new Master(
            0,
            row.needed(NAME, "a text"),
            face(row.needed(FACE, "outer or inner")),
            reach.checked(RADIUS, Check.positive(RADIUS, row.neededLength(RADIUS))),
            Check.notNegative(UNCERTAINTY, uncertainty),
            limit == null ? null : (Double) Check.positive(LIMIT, limit));
    known.stream()
        .filter(each -> each.name().equals(master.name()) && !alike(each, master))
        .findFirst()
        .ifPresent(each -> refuse(each));
    return master;
  }

  private static Face face(String text) {
    return switch (text.toLowerCase(Locale.ROOT)) {
      case "outer" -> Face.OUTER;
      case "inner" -> Face.INNER;
      default -> throw new BadInput(FACE, text, "can't carry a bridge", "outer or inner");
    };
  }

  private static boolean alike(Master a, Master b) {
    return a.withId(0).equals(b.withId(0));
  }

  private static void refuse(Master there) {
    @Nullable Double limit = there.checkLimitMm();
    throw new BadInput(
        NAME,
        there.name(),
        "is there already with other values",
        String.format(
            Locale.ROOT,
            "%s, radius %s, uncertainty %s, limit %s; or another name, since what was measured on"
                + " a master rests on its values",
            there.face().name().toLowerCase(Locale.ROOT),
            Numbers.plain(there.radiusMm()),
            Numbers.plain(there.expandedUncertaintyMm()),
            limit == null ? "none" : Numbers.plain(limit)));
  }
}
