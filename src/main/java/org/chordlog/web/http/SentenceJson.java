package org.chordlog.web.http;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import org.chordlog.measure.Lengths;
import org.chordlog.measure.Sentence;

/** A sentence is written as a text, with its lengths in the unit that the writer was given. */
final class SentenceJson extends StdSerializer<Sentence> {
  private static final long serialVersionUID = 1L;

  SentenceJson() {
    super(Sentence.class);
  }

  /** A writer of sentences in that unit. */
  static ObjectWriter in(Lengths lengths, ObjectWriter writer) {
    return writer.withAttribute(Lengths.class, lengths);
  }

  @Override
  public void serialize(Sentence value, JsonGenerator out, SerializerProvider provider)
      throws IOException {
    Object asked = provider.getAttribute(Lengths.class);
    out.writeString(value.in(asked instanceof Lengths lengths ? lengths : Lengths.MM));
  }
}
