package org.chordlog.profile;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntUnaryOperator;
import org.chordlog.measure.BadInput;

/** A profile in few bytes: column by column, depths as differences, deflated. */
final class ProfilePacking {
  private static final int FORM = 1;

  private ProfilePacking() {}

  static byte[] pack(Profile profile) {
    Deflated.Writer out = new Deflated.Writer();
    out.put(FORM);
    facts(out, profile.facts());
    out.put(profile.firstBin());
    out.put(profile.bins());
    column(out, profile, profile::count, false);
    differences(out, profile);
    column(out, profile, profile::place, true);
    column(out, profile, profile::flags, false);
    return out.bytes();
  }

  @SuppressWarnings("EnumOrdinal") // the order of the kinds is part of the form
  private static void facts(Deflated.Writer out, ProfileFacts facts) {
    out.put(facts.touchNm());
    out.put(facts.widthNm());
    out.put(facts.quantumNm());
    out.put(facts.feedNmPerSecond());
    out.put(facts.pitchNm());
    out.put(facts.events().size());
    for (ProfileEvent event : facts.events()) {
      out.put(event.kind().code);
      out.put(event.placeNm());
      out.put(event.amount());
    }
  }

  private static void column(
      Deflated.Writer out, Profile profile, IntUnaryOperator field, boolean filledOnly) {
    for (int i = 0; i < profile.bins(); i++) {
      if (!filledOnly || profile.count(i) > 0) {
        out.put(field.applyAsInt(i));
      }
    }
  }

  private static void differences(Deflated.Writer out, Profile profile) {
    int before = 0;
    for (int i = 0; i < profile.bins(); i++) {
      if (profile.count(i) > 0) {
        out.put((long) profile.depth(i) - before);
        before = profile.depth(i);
      }
    }
  }

  static Profile unpack(byte[] packed) {
    Deflated.Reader in = new Deflated.Reader(packed);
    if (in.next() != FORM) {
      throw new BadInput("profile", packed.length + " bytes", "are no packed profile", "form 1");
    }
    ProfileFacts facts = facts(in);
    int firstBin = (int) in.next();
    int bins = in.size();
    int[] counts = column(in, bins);
    int[] depths = depths(in, counts);
    int[] places = filled(in, counts);
    return new Profile(facts, firstBin, counts, depths, places, column(in, bins));
  }

  private static ProfileFacts facts(Deflated.Reader in) {
    long touch = in.next();
    long width = in.next();
    long quantum = in.next();
    long feed = in.next();
    long pitch = in.next();
    return new ProfileFacts(touch, width, quantum, feed, pitch, events(in));
  }

  @SuppressWarnings("EnumOrdinal") // the order of the kinds is part of the form
  private static List<ProfileEvent> events(Deflated.Reader in) {
    List<ProfileEvent> events = new ArrayList<>();
    for (int left = in.size(); left > 0; left--) {
      events.add(new ProfileEvent(ProfileEvent.Kind.coded(in.next()), in.next(), in.next()));
    }
    return events;
  }

  private static int[] column(Deflated.Reader in, int bins) {
    int[] column = new int[bins];
    for (int i = 0; i < bins; i++) {
      column[i] = (int) in.next();
    }
    return column;
  }

  private static int[] filled(Deflated.Reader in, int[] counts) {
    int[] column = new int[counts.length];
    for (int i = 0; i < column.length; i++) {
      column[i] = counts[i] > 0 ? (int) in.next() : 0;
    }
    return column;
  }

  private static int[] depths(Deflated.Reader in, int[] counts) {
    int[] depths = filled(in, counts);
    int before = 0;
    for (int i = 0; i < depths.length; i++) {
      if (counts[i] > 0) {
        before += depths[i];
        depths[i] = before;
      }
    }
    return depths;
  }
}
