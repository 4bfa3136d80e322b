package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.chordlog.measure.Lengths;
import org.junit.jupiter.api.Test;

/** What the record of changes says of a job, as people read it. */
final class JobChangeTest {
  private static final String BEFORE =
      """
      {"name":"Rail_A","machine":"PB-3","measuredFace":"OUTER","state":"OPEN",
       "section":{"kind":"ROUND_TUBE","outsideDiameterMm":60.3,"wallMm":3.2},
       "plan":{"positions":["Start","end"],"subgroups":{"kind":"PIECE","size":2}}}""";

  private static List<String> said(String from, String to) {
    return JobChange.parts(from, to).stream()
        .map(each -> each.what() + ": " + each.from() + " > " + each.to())
        .toList();
  }

  @Test
  void namesStayAsTheyWereWritten() {
    assertEquals(
        List.of("Order: Rail_A > Rail_B", "Machine: PB-3 > PB-4"),
        said(BEFORE, BEFORE.replace("Rail_A", "Rail_B").replace("PB-3", "PB-4")));
  }

  @Test
  void constantsAreSaidInTheWordsOfTheVocabulary() {
    String after =
        BEFORE
            .replace("\"OUTER\"", "\"INNER\"")
            .replace("\"kind\":\"PIECE\",\"size\":2", "\"kind\":\"CONSECUTIVE\",\"size\":5")
            .replace("\"ROUND_TUBE\"", "\"PROFILE\"")
            .replace(
                "\"outsideDiameterMm\":60.3,\"wallMm\":3.2",
                "\"heightMm\":80.0,\"centroidFromOuterMm\":23.5");
    assertEquals(
        List.of(
            "Section: Round tube, outside diameter 60.3 mm, wall 3.2 mm"
                + " > Other profile, height 80 mm, centroid from the outer face 23.5 mm",
            "Face measured: outer face > inner face",
            "Positions and grouping: at Start, end; a subgroup is all positions of a piece"
                + " > at Start, end; a subgroup is 5 consecutive readings at a position"),
        said(BEFORE, after));
  }

  @Test
  void detailsOfTheOrderAreSaid() {
    String after =
        BEFORE.replace(
            "\"state\"",
            "\"customer\":\"Muster GmbH\",\"developedLengthMm\":1778.0,"
                + "\"developedAngleDegrees\":90.5,\"state\"");
    assertEquals(
        List.of(
            "Customer:  > Muster GmbH",
            "Developed length:  > 1778 mm",
            "Developed angle:  > 90.5°"),
        said(BEFORE, after));
  }

  @Test
  void lengthsAreSaidInTheUnitOfTheReader() {
    String after = BEFORE.replace("60.3", "25.4");
    assertEquals(
        "Round tube, outside diameter 1 in, wall 0.126 in",
        JobChange.parts(BEFORE, after).get(0).to().in(Lengths.INCH));
  }
}
