package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import org.chordlog.measure.Sentence;

/** What a file of masters or calibrations holds, and how many of its rows were added. */
record ImportedRows(
    List<Row> rows,
    @JsonPropertyDescription("rows that were added; 0 if it was only looked at") int added) {
  /** A row of the file. */
  record Row(
      long line,
      String name,
      @JsonPropertyDescription("false: the same is there already, and stays as it is")
          boolean isNew,
      @JsonPropertyDescription("what is stored of it, with units") Sentence stored) {}

  static ImportedRows of(List<Row> rows, boolean create) {
    return new ImportedRows(rows, create ? (int) rows.stream().filter(Row::isNew).count() : 0);
  }
}
