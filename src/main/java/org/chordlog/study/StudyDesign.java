package org.chordlog.study;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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

  /**
   * The same where each operator measures parts of their own: the first share of the parts belongs
   * to the first operator, and so on.
   */
  public List<Step> stepsOfOwnParts(long seed) {
    RandomGenerator random = new Well19937c(seed);
    Map<String, List<String>> shares = shares();
    List<Step> steps = new ArrayList<>();
    for (int repeat = 1; repeat <= repeats; repeat++) {
      for (String operator : shuffled(operators, random)) {
        for (String part : shuffled(shares.getOrDefault(operator, List.of()), random)) {
          steps.add(new Step(steps.size() + 1L, repeat, operator, part, ""));
        }
      }
    }
    return List.copyOf(steps);
  }

  /** Parts by operator, in order; {@link BadInput} where they can't be shared evenly. */
  private Map<String, List<String>> shares() {
    int each = parts.size() / operators.size();
    if (each < 2 || each * operators.size() < parts.size()) {
      String allowed = "two or more for each operator, as many for every one";
      String wrong = "can't be shared among " + operators.size() + " operators";
      throw new BadInput("parts", parts.size(), wrong, allowed);
    }
    Map<String, List<String>> shares = new LinkedHashMap<>();
    for (String operator : operators) {
      int from = each * shares.size();
      shares.put(operator, parts.subList(from, from + each));
    }
    return shares;
  }

  /** All repeats of a part before the next one, in the order given, by the first operator. */
  public List<Step> stepsInTurn() {
    List<Step> steps = new ArrayList<>();
    for (String part : parts) {
      for (int repeat = 1; repeat <= repeats; repeat++) {
        steps.add(new Step(steps.size() + 1L, repeat, operators.get(0), part, ""));
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
