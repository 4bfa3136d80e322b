package org.chordlog;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.constructors;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaConstructor;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A long row of values is easily given in the wrong order. What has more than seven is a row of a
 * table or a document (a view, a form, a stored row), made in one place; anything else is made of
 * smaller records. Held by {@link ArrowsTest}, which has read all classes.
 */
final class ConstructorRules {
  private static final int MOST = 7;

  @ArchTest
  static final ArchRule longOnesAreCalledInOneClass =
      constructors()
          .that(
              DescribedPredicate.describe(
                  "take more than seven values",
                  (JavaConstructor made) -> made.getRawParameterTypes().size() > MOST))
          .should(haveOneCaller());

  private static ArchCondition<JavaConstructor> haveOneCaller() {
    return new ArchCondition<>("be called in one class besides their own") {
      @Override
      public void check(JavaConstructor made, ConditionEvents events) {
        Set<String> callers = callers(made);
        if (callers.size() > 1) {
          events.add(
              SimpleConditionEvent.violated(
                  made, "new " + made.getOwner().getName() + " is called in " + callers));
        }
      }
    };
  }

  private static Set<String> callers(JavaConstructor made) {
    JavaClass own = outermost(made.getOwner());
    return made.getCallsOfSelf().stream()
        .map(call -> outermost(call.getOriginOwner()))
        .filter(caller -> !caller.equals(own))
        .map(JavaClass::getSimpleName)
        .collect(Collectors.toSet());
  }

  private static JavaClass outermost(JavaClass inner) {
    return inner.getEnclosingClass().map(ConstructorRules::outermost).orElse(inner);
  }
}
