package org.chordlog.harness;

import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a class file names: the classes of its constant pool, and those in the descriptors of its
 * fields and methods (The Java Virtual Machine Specification, Java SE 17, section 4.4).
 */
final class References {
  private static final int UTF8 = 1;
  private static final int LONG = 5;
  private static final int DOUBLE = 6;
  private static final int CLASS = 7;
  private static final Pattern IN_DESCRIPTOR = Pattern.compile("L([\\w$/-]+);");
  private static final Pattern DESCRIPTOR = Pattern.compile("[(\\[BCDFIJSZVL].*[;)BCDFIJSZV]");

  private References() {}

  /** The files of the classes that a class file names. */
  static Set<String> of(byte[] classFile) throws IOException {
    DataInputStream in = new DataInputStream(new ByteArrayInputStream(classFile));
    in.skipNBytes(8);
    int count = in.readUnsignedShort();
    String[] texts = new String[count];
    List<Integer> classes = new ArrayList<>();
    for (int i = 1; i < count; i++) {
      int tag = in.readUnsignedByte();
      if (tag == UTF8) {
        texts[i] = in.readUTF();
      } else if (tag == CLASS) {
        classes.add(in.readUnsignedShort());
      } else {
        in.skipNBytes(length(tag));
      }
      i += tag == LONG || tag == DOUBLE ? 1 : 0;
    }
    return names(texts, classes);
  }

  private static int length(int tag) {
    return switch (tag) {
      case 8, 16, 19, 20 -> 2;
      case 15 -> 3;
      case 3, 4, 9, 10, 11, 12, 17, 18 -> 4;
      case LONG, DOUBLE -> 8;
      default -> throw new IllegalArgumentException("constant of kind " + tag);
    };
  }

  private static Set<String> names(String[] texts, List<Integer> classes) {
    Set<String> names = new HashSet<>();
    classes.forEach(each -> names.add(texts[each].replaceFirst("^\\[+L(.*);$", "$1") + ".class"));
    for (String text : texts) {
      if (text != null && DESCRIPTOR.matcher(text).matches()) {
        Matcher inside = IN_DESCRIPTOR.matcher(text);
        while (inside.find()) {
          names.add(inside.group(1) + ".class");
        }
      }
    }
    return names;
  }
}
