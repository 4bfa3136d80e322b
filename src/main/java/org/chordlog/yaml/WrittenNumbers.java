package org.chordlog.yaml;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.BigIntegerNode;
import com.fasterxml.jackson.databind.node.DoubleNode;
import com.fasterxml.jackson.databind.node.IntNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.LongNode;
import com.fasterxml.jackson.databind.node.NumericNode;
import com.fasterxml.jackson.databind.node.TreeTraversingParser;
import com.fasterxml.jackson.databind.node.ValueNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigInteger;

/**
 * Makes numbers that remember how they were written: YAML reads {@code 010} as 8 and {@code 1e3} as
 * 1000.0, which is right for a number and wrong for a name.
 */
final class WrittenNumbers extends JsonNodeFactory {
  private static final long serialVersionUID = 1L;
  private final transient JsonParser parser;

  /** {@code parser} reads the text and stands at the number that is made. */
  WrittenNumbers(JsonParser parser) {
    this.parser = parser;
  }

  /** Reads a tree of such numbers; where a text is asked for, it gives them as written. */
  static JsonParser reader(JsonNode tree, ObjectMapper codec) {
    return new Reader(tree, codec);
  }

  @Override
  public NumericNode numberNode(int value) {
    return new WrittenInt(value, written());
  }

  @Override
  public NumericNode numberNode(long value) {
    return new WrittenLong(value, written());
  }

  @Override
  public ValueNode numberNode(BigInteger value) {
    return new WrittenBig(value, written());
  }

  @Override
  public NumericNode numberNode(double value) {
    return new WrittenDouble(value, written());
  }

  private String written() {
    try {
      return parser.getText();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static final class Reader extends TreeTraversingParser {
    Reader(JsonNode tree, ObjectMapper codec) {
      super(tree, codec);
    }

    @Override
    public String getText() {
      JsonNode node = currentNode();
      return node != null && node.isNumber() ? node.asText() : super.getText();
    }
  }

  private static final class WrittenInt extends IntNode {
    private static final long serialVersionUID = 1L;
    private final String written;

    WrittenInt(int value, String written) {
      super(value);
      this.written = written;
    }

    @Override
    public String asText() {
      return written;
    }
  }

  private static final class WrittenLong extends LongNode {
    private static final long serialVersionUID = 1L;
    private final String written;

    WrittenLong(long value, String written) {
      super(value);
      this.written = written;
    }

    @Override
    public String asText() {
      return written;
    }
  }

  private static final class WrittenBig extends BigIntegerNode {
    private static final long serialVersionUID = 1L;
    private final String written;

    WrittenBig(BigInteger value, String written) {
      super(value);
      this.written = written;
    }

    @Override
    public String asText() {
      return written;
    }
  }

  private static final class WrittenDouble extends DoubleNode {
    private static final long serialVersionUID = 1L;
    private final String written;

    WrittenDouble(double value, String written) {
      super(value);
      this.written = written;
    }

    @Override
    public String asText() {
      return written;
    }
  }
}
