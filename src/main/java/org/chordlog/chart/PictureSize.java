package org.chordlog.chart;

import org.chordlog.measure.Check;

/** Width and height of a picture, px. */
public record PictureSize(int widthPx, int heightPx) {
  public PictureSize {
    Check.within("widthPx", widthPx, 240, 4000);
    Check.within("heightPx", heightPx, 160, 4000);
  }
}
