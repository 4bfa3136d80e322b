package org.chordlog.web.http;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import org.chordlog.measure.Fault;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/** A problem document (RFC 9457). */
public record Problem(
    @JsonPropertyDescription(
            "the kind, where programs may have to tell it: /problems/damaged-record is a record"
                + " that can't be read, now or when asked again, /problems/same-name a name that"
                + " another one has, /problems/doubtful what may be a slip of the pen and has to"
                + " be confirmed; else about:blank")
        String type,
    String title,
    int status,
    Sentence detail,
    @JsonPropertyDescription("one for each field that was refused") List<Fault> faults,
    @JsonPropertyDescription("what was to be changed, as it is now; with status 412 only")
        @JsonInclude(JsonInclude.Include.NON_NULL)
        @Nullable Object present) {
  public static final String MEDIA_TYPE = "application/problem+json";
  static final String NO_KIND = "about:blank";
  static final String DAMAGED_RECORD = "/problems/damaged-record";
  static final String SAME_NAME = "/problems/same-name";
  static final String DOUBTFUL = "/problems/doubtful";

  public Problem {
    faults = List.copyOf(faults);
  }
}
