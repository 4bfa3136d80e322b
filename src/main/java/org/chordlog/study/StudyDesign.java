package org.chordlog.study;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;

/** Who measures what how often; {@code places} is empty where a part is one place. */
public record StudyDesign(
    List<String> parts, List<String> places, List<String> operators, int repeats) {
  public StudyDesign {
    parts = names("parts", parts);
    places = places.isEmpty() ? List.of() : names("places", places);
    operators = names("operators", operators);
    Check.within("repeats", repeats, 1, 100);
  }

  private static List<String> names(String field, List<String> given) {
    if (given.isEmpty() || given.stream().anyMatch(String::isBlank)) {
      throw new BadInput(field, given, "has an empty name or none", "one name or more");
    }
    if (given.stream().distinct().count() < given.size()) {
      throw new BadInput(field, given, "has a name twice", "each name once");
    }
    return List.copyOf(given);
  }

  /** One step: the {@code order}-th thing to do, from 1. */
  public record Step(long order, int repeat, String operator, String part, String place) {
    /** The reading that this step asks for. */
    public StudyReading reading(double value) {
      return new StudyReading(part, place, operator, repeat, order, value);
    }
  }

  /**
   * All steps in an order drawn from the seed: round by round, in each round operator by operator
   * in random turn, each with all parts and places in a random order of their own.
   */
  public List<Step> steps(long seed) {
    RandomGenerator random = new Well19937c(seed);
    List<Step> steps = new ArrayList<>();
    for (int repeat = 1; repeat <= repeats; repeat++) {
      for (String operator : shuffled(operators, random)) {
        for (Spot spot : shuffled(spots(), random)) {
          steps.add(new Step(steps.size() + 1L, repeat, operator, spot.part(), spot.place()));
        }
      }
    }
    return List.copyOf(steps);
  }

  private record Spot(String part, String place) {}

  private List<Spot> spots() {
    List<String> named = places.isEmpty() ? List.of("") : places;
    List<Spot> spots = new ArrayList<>();
    parts.forEach(part -> named.forEach(place -> spots.add(new Spot(part, place))));
    return spots;
  }

  /** Fisher and Yates (1938), as Durstenfeld (1964) has it. */
  private static <T> List<T> shuffled(List<T> of, RandomGenerator random) {
    List<T> mixed = new ArrayList<>(of);
    for (int i = mixed.size() - 1; i > 0; i--) {
      int j = random.nextInt(i + 1);
      T swapped = mixed.get(i);
      mixed.set(i, mixed.get(j));
      mixed.set(j, swapped);
    }
    return mixed;
  }
}
