package org.chordlog.web;

import org.chordlog.chart.PictureSize;
import org.chordlog.chart.Theme;
import org.chordlog.chart.ViewUnit;

/** How a viewer wants a chart. */
record Look(PictureSize size, Theme theme, ViewUnit unit) {
  static Look of(Call call) {
    return new Look(
        new PictureSize(
            (int) call.query("width", 1_000, 240, 4_000),
            (int) call.query("height", 560, 160, 4_000)),
        call.choice("theme", Theme.class).orElse(Theme.PAGE),
        call.choice("unit", ViewUnit.class).orElse(ViewUnit.MM));
  }

  static Route.Draft asked(Route.Draft draft) {
    return draft
        .query("width", "integer", "px, 240 to 4000, 1000 if left out")
        .query("height", "integer", "px, 160 to 4000, 560 if left out")
        .query("theme", "string", "page (colours of the page's custom properties), light, dark")
        .query("unit", "string", "of lengths on axes, limits, labels and points: mm, inch");
  }
}
