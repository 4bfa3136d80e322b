package org.chordlog.cli.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.chordlog.cli.study.StudyTable.Names;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Fault;

/** Where in its file something is that a study refuses: rows and column beside what it is. */
final class StudyRows {
  private static final Set<String> COLUMNS = Set.of("part", "operator", "value", "repeat", "place");
  private final StudyTable table;

  /** What the file calls parts and operators. */
  private final Names names;

  StudyRows(StudyTable table, Names names) {
    this.table = table;
    this.names = names;
  }

  BadInput located(BadInput refused) {
    List<Fault> faults = new ArrayList<>();
    for (Fault each : refused.faults()) {
      faults.add(new Fault(field(each.field()), each.value(), each.problem(), each.allowed()));
    }
    return new BadInput(faults);
  }

  private String field(String field) {
    if (COLUMNS.contains(field)) {
      return rows(allRows()) + ", column " + called(field);
    }
    if (field.startsWith("piece ") || field.startsWith("operator ")) {
      List<Integer> found = allRows().stream().filter(row -> isOf(row, field)).toList();
      String where = found.isEmpty() ? "no row" : rows(found);
      return where + ", column repeat, for " + field;
    }
    return field;
  }

  private String called(String column) {
    return column.equals("part")
        ? names.part()
        : column.equals("operator") ? names.operator() : column;
  }

  private List<Integer> allRows() {
    List<Integer> rows = new ArrayList<>();
    for (int row = 0; row < table.rows(); row++) {
      rows.add(row);
    }
    return rows;
  }

  /** As the study words a cell: piece 3, place end, operator B; or operator B alone. */
  private boolean isOf(int row, String cell) {
    String part = "piece " + table.text(row, names.part());
    String operator = "operator " + table.textOrNone(row, names.operator());
    String place = table.has("place") ? "place " + table.textOrNone(row, "place") : "";
    return List.of(cell.split(", ")).stream()
        .allMatch(word -> word.equals(part) || word.equals(operator) || word.equals(place));
  }

  private String rows(List<Integer> rows) {
    if (rows.size() > 4) {
      return "rows " + table.line(rows.get(0)) + " to " + table.line(rows.get(rows.size() - 1));
    }
    String numbers =
        rows.stream().map(row -> String.valueOf(table.line(row))).collect(Collectors.joining(", "));
    return (rows.size() == 1 ? "row " : "rows ") + numbers;
  }
}
