package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.Objects;
import java.util.stream.Stream;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.FootKind;
import org.chordlog.web.http.Faults;
import org.chordlog.web.http.Needed;
import org.jspecify.annotations.Nullable;

/** What a bridge is made or changed from; {@code why} is needed to change one. */
record BridgeForm(
    @Needed @Nullable String name,
    @Needed @Nullable Double spanMm,
    @JsonPropertyDescription("standard uncertainty") @Needed @Nullable Double spanUncertaintyMm,
    @JsonPropertyDescription("0 for an edge") @Needed @Nullable Double footRadiusMm,
    @JsonPropertyDescription("standard uncertainty") @Nullable Double footRadiusUncertaintyMm,
    @JsonPropertyDescription("± angle out of the bend plane") @Nullable Double skewLimitDegrees,
    @JsonPropertyDescription("how the feet touch the piece; null where it is not known")
        @Nullable FootKind footKind,
    @Nullable String why) {
  Bridge bridge() {
    Faults faults = new Faults();
    faults.needed("name", name, "a text");
    Stream.of("spanMm", "spanUncertaintyMm", "footRadiusMm")
        .forEach(field -> faults.needed(field, value(field), Faults.A_LENGTH));
    faults.refuse();
    Bridge made =
        faults.made(
            "",
            () ->
                new Bridge(
                        0,
                        Objects.requireNonNull(name),
                        new Bridge.Span(
                            Objects.requireNonNull(spanMm),
                            Objects.requireNonNull(spanUncertaintyMm)),
                        new Bridge.Feet(
                            Objects.requireNonNull(footRadiusMm),
                            Objects.requireNonNullElse(footRadiusUncertaintyMm, 0.0),
                            footKind),
                        Objects.requireNonNullElse(skewLimitDegrees, 0.0))
                    .possible());
    faults.refuse();
    return Objects.requireNonNull(made);
  }

  private @Nullable Double value(String field) {
    return switch (field) {
      case "spanMm" -> spanMm;
      case "spanUncertaintyMm" -> spanUncertaintyMm;
      default -> footRadiusMm;
    };
  }
}
