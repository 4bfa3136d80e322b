package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.measure.Face;

/** The radius that something measured on a bent piece shows. */
record ShownRadiusView(
    ClosingFeature feature,
    double measuredMm,
    @JsonPropertyDescription("on the centreline") double radiusMm,
    double standardUncertaintyMm,
    @JsonPropertyDescription("target on the centreline") double targetMm,
    @JsonPropertyDescription("the face that the job specifies") Face face,
    @JsonPropertyDescription("the radius on that face") double specifiedRadiusMm) {}
