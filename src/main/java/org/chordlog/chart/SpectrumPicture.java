package org.chordlog.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;

/** How strongly pieces wave at each wavelength, with the bands of the rollers named above. */
final class SpectrumPicture {
  private final LineSnapshot.Spectrum spectrum;
  private final String unit;
  private final ValueScale scale;

  private SpectrumPicture(LineSnapshot.Spectrum spectrum, String unit) {
    this.spectrum = spectrum;
    this.unit = unit;
    List<Double> values = new ArrayList<>(List.of(0.0));
    spectrum.waves().forEach(each -> values.add(each.amplitudePercent()));
    scale = ValueScale.of(values);
  }

  static Optional<Drawing> of(LineSnapshot line) {
    LineSnapshot.Spectrum spectrum = line.spectrum();
    return spectrum == null || spectrum.waves().isEmpty()
        ? Optional.empty()
        : Optional.of(new SpectrumPicture(spectrum, line.unit()).drawing());
  }

  private Drawing drawing() {
    XYPlot plot = new XYPlot();
    ChartStyle.style(plot);
    plot.setRangeAxis(ChartStyle.valueAxis("Ripple, % of curvature", scale));
    XyData line = new XyData(spectrum.waves().size());
    spectrum.waves().forEach(each -> line.add(each.wavelength(), each.amplitudePercent()));
    new Layers(plot).line(line.dataset(), Ink.CENTRE, ChartStyle.BOLD);
    List<SideLabels.Label> names = new ArrayList<>();
    for (LineSnapshot.RollerBand band : spectrum.bands()) {
      plot.addDomainMarker(
          new IntervalMarker(band.from(), band.to(), Ink.EVENT.tint()), Layer.BACKGROUND);
      names.add(new SideLabels.Label((band.from() + band.to()) / 2, band.roller(), Ink.EVENT));
    }
    List<LineSnapshot.Wave> waves = spectrum.waves();
    return Drawing.of(
        ChartStyle.axis(
            "Wavelength along the piece, " + unit, 0, waves.get(waves.size() - 1).wavelength()),
        List.of(new Panel(plot, targets(), List.of(new TopLabels(names)))),
        described(),
        new Layout(2 * ChartStyle.TOP_MARGIN_PX, ChartStyle.BOTTOM_MARGIN_PX, 16));
  }

  private List<Target> targets() {
    List<Target> targets = new ArrayList<>();
    for (LineSnapshot.Wave wave : spectrum.waves()) {
      targets.add(
          new Target(
              wave.wavelength(), wave.amplitudePercent(), "Every " + label(wave) + roller(wave)));
    }
    return targets;
  }

  private String label(LineSnapshot.Wave wave) {
    return "%s %s: %s %%"
        .formatted(
            ChartWords.number(wave.wavelength(), "mm".equals(unit) ? 0 : 1),
            unit,
            ChartWords.number(wave.amplitudePercent(), scale.decimals()));
  }

  private String roller(LineSnapshot.Wave wave) {
    return spectrum.bands().stream()
        .filter(band -> wave.wavelength() >= band.from() && wave.wavelength() <= band.to())
        .map(band -> ", where " + band.roller() + " would show")
        .reduce("", String::concat);
  }

  private String described() {
    LineSnapshot.Wave most =
        spectrum.waves().stream()
            .max(Comparator.comparingDouble(LineSnapshot.Wave::amplitudePercent))
            .orElseThrow();
    return "Ripple by wavelength over %s %s, as the bridge shows it; the strongest is %s%s."
        .formatted(
            spectrum.pieces(),
            spectrum.pieces() == 1 ? "piece" : "pieces",
            label(most),
            roller(most));
  }
}
