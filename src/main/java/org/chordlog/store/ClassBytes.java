package org.chordlog.store;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;

/**
 * A class file (Java Virtual Machine Specification 17, chapter 4) without the attributes that only
 * a debugger reads, so that a comment added above a method leaves it the same.
 */
final class ClassBytes {
  private static final Set<String> DEBUGGING =
      Set.of("LineNumberTable", "LocalVariableTable", "LocalVariableTypeTable", "SourceFile");
  private static final int LONG = 5;
  private static final int DOUBLE = 6;

  private final DataInputStream in;
  private final Map<Integer, String> texts;

  private ClassBytes(DataInputStream in, Map<Integer, String> texts) {
    this.in = in;
    this.texts = texts;
  }

  static byte[] withoutDebugging(byte[] file) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(file.length);
    ClassBytes reader =
        new ClassBytes(new DataInputStream(new ByteArrayInputStream(file)), new HashMap<>());
    reader.copy(new DataOutputStream(bytes));
    return bytes.toByteArray();
  }

  private void copy(DataOutputStream to) throws IOException {
    to.write(in.readNBytes(8)); // magic, versions
    constants(to);
    to.write(in.readNBytes(6)); // access, this, super
    to.write(in.readNBytes(2 * count(to))); // interfaces
    members(to); // fields
    members(to); // methods
    attributes(to);
  }

  private int count(DataOutputStream to) throws IOException {
    int count = in.readUnsignedShort();
    to.writeShort(count);
    return count;
  }

  private void constants(DataOutputStream to) throws IOException {
    int count = count(to);
    for (int i = 1; i < count; i++) {
      int tag = in.readUnsignedByte();
      to.writeByte(tag);
      if (tag == 1) {
        byte[] text = in.readNBytes(count(to));
        texts.put(i, new String(text, StandardCharsets.UTF_8));
        to.write(text);
      } else {
        to.write(in.readNBytes(bytesOf(tag)));
        i += tag == LONG || tag == DOUBLE ? 1 : 0; // takes two places
      }
    }
  }

  /** Section 4.4. */
  private static int bytesOf(int tag) throws IOException {
    return switch (tag) {
      case 3, 4, 9, 10, 11, 12, 17, 18 -> 4;
      case LONG, DOUBLE -> 8;
      case 7, 8, 16, 19, 20 -> 2;
      case 15 -> 3;
      default -> throw new IOException("a constant of kind " + tag + " is not known");
    };
  }

  private void members(DataOutputStream to) throws IOException {
    int count = count(to);
    for (int i = 0; i < count; i++) {
      to.write(in.readNBytes(6)); // access, name, descriptor
      attributes(to);
    }
  }

  private void attributes(DataOutputStream to) throws IOException {
    int count = in.readUnsignedShort();
    for (int i = 0; i < count; i++) {
      int name = in.readUnsignedShort();
      byte[] body = in.readNBytes(in.readInt());
      String said = texts.getOrDefault(name, "");
      if (!DEBUGGING.contains(said)) {
        byte[] kept = said.equals("Code") ? code(body) : body;
        to.writeShort(name);
        to.writeInt(kept.length);
        to.write(kept);
      }
    }
  }

  /** Section 4.7.3. */
  private byte[] code(byte[] body) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(body.length);
    DataOutputStream to = new DataOutputStream(bytes);
    ClassBytes inner = new ClassBytes(new DataInputStream(new ByteArrayInputStream(body)), texts);
    to.write(inner.in.readNBytes(4)); // stack, locals
    int length = inner.in.readInt();
    to.writeInt(length);
    to.write(inner.in.readNBytes(length));
    to.write(inner.in.readNBytes(8 * inner.count(to))); // exceptions
    inner.attributes(to);
    return bytes.toByteArray();
  }
}
