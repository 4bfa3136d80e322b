package org.chordlog.chart;

import java.util.List;

/** A drawn chart and the places of its points. */
public record ChartPicture(String svg, PictureSize size, List<PointPlace> places) {
  public ChartPicture {
    places = List.copyOf(places);
  }
}
