package org.chordlog.web.http;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.github.victools.jsonschema.generator.CustomDefinition;
import com.github.victools.jsonschema.generator.FieldScope;
import com.github.victools.jsonschema.generator.Option;
import com.github.victools.jsonschema.generator.OptionPreset;
import com.github.victools.jsonschema.generator.SchemaBuilder;
import com.github.victools.jsonschema.generator.SchemaGenerationContext;
import com.github.victools.jsonschema.generator.SchemaGenerator;
import com.github.victools.jsonschema.generator.SchemaGeneratorConfigBuilder;
import com.github.victools.jsonschema.generator.SchemaVersion;
import com.github.victools.jsonschema.generator.impl.DefinitionKey;
import com.github.victools.jsonschema.generator.naming.DefaultSchemaDefinitionNamingStrategy;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/**
 * JSON schemas of the records that go in and out (JSON Schema 2020-12, as OpenAPI 3.1 takes it).
 */
final class Schemas {
  static final String HOME = "components/schemas";
  private final SchemaBuilder builder;

  Schemas() {
    SchemaGeneratorConfigBuilder config =
        new SchemaGeneratorConfigBuilder(
                Json.shared(), SchemaVersion.DRAFT_2020_12, OptionPreset.PLAIN_JSON)
            .with(
                Option.DEFINITIONS_FOR_ALL_OBJECTS,
                Option.FLATTENED_ENUMS,
                Option.MAP_VALUES_AS_ADDITIONAL_PROPERTIES,
                Option.FORBIDDEN_ADDITIONAL_PROPERTIES_BY_DEFAULT)
            .without(Option.SCHEMA_VERSION_INDICATOR, Option.FLATTENED_ENUMS_FROM_TOSTRING);
    config
        .forFields()
        .withNullableCheck(Schemas::nullable)
        .withRequiredCheck(field -> !nullable(field))
        .withDescriptionResolver(Schemas::description);
    config
        .forTypesInGeneral()
        .withDefinitionNamingStrategy(new Names())
        .withCustomDefinitionProvider(
            (type, context) ->
                type.getErasedType() == Sentence.class
                    ? new CustomDefinition(
                        Json.shared().createObjectNode().put("type", "string"),
                        CustomDefinition.INLINE_DEFINITION,
                        CustomDefinition.EXCLUDING_ATTRIBUTES)
                    : null);
    builder = new SchemaGenerator(config.build()).buildMultipleSchemaDefinitions();
  }

  /** A reference to the schema of that record. */
  ObjectNode reference(Class<?> type) {
    return builder.createSchemaReference(type);
  }

  /** All schemas referred to so far; asked for last. */
  ObjectNode all() {
    return builder.collectDefinitions(HOME);
  }

  private static boolean nullable(FieldScope field) {
    return !field.isFakeContainerItemScope()
        && field.getAnnotation(Needed.class) == null
        && (field.getRawMember().getAnnotatedType().isAnnotationPresent(Nullable.class)
            || open(field));
  }

  /** A double that is infinite or not a number is written as null. */
  private static boolean open(FieldScope field) {
    JsonPropertyDescription said = field.getAnnotation(JsonPropertyDescription.class);
    return field.getType().getErasedType() == double.class
        && said != null
        && said.value().contains("null");
  }

  private static @Nullable String description(FieldScope field) {
    JsonPropertyDescription said = field.getAnnotation(JsonPropertyDescription.class);
    return said == null || field.isFakeContainerItemScope() ? null : said.value();
  }

  /** Letters, digits and underscores, as a component may be called (OpenAPI 3.1.1, 4.8.7.2). */
  private static final class Names extends DefaultSchemaDefinitionNamingStrategy {
    @Override
    public String getDefinitionNameForKey(DefinitionKey key, SchemaGenerationContext context) {
      return super.getDefinitionNameForKey(key, context)
          .replaceAll("\\W+", "_")
          .replaceAll("_$", "");
    }
  }
}
