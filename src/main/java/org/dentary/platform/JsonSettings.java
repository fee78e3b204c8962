package org.dentary.platform;

import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.cfg.CoercionAction;
import com.fasterxml.jackson.databind.cfg.CoercionInputShape;
import com.fasterxml.jackson.databind.type.LogicalType;
import io.quarkus.jackson.ObjectMapperCustomizer;
import jakarta.inject.Singleton;
import java.util.List;
import java.util.Set;

/** JSON is read strictly: no duplicate fields, no text for numbers, no numbers for codes, no null among a list, offsets kept as given. */
@Singleton
class JsonSettings implements ObjectMapperCustomizer {
    /** After all others, for of two readers of a kind of value the one that came last is asked. */
    @Override
    public int priority() {
        return MINIMUM_PRIORITY;
    }

    @Override
    public void customize(ObjectMapper json) {
        json.enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES);
        json.enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);
        json.enable(DeserializationFeature.FAIL_ON_NUMBERS_FOR_ENUMS);
        json.enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES);
        json.disable(DeserializationFeature.ADJUST_DATES_TO_CONTEXT_TIME_ZONE);
        json.disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT);
        json.disable(MapperFeature.ALLOW_COERCION_OF_SCALARS);
        json.getFactory().enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION.mappedFeature());
        json.getFactory().disable(JsonParser.Feature.INCLUDE_SOURCE_IN_LOCATION);
        json.coercionConfigDefaults().setCoercion(CoercionInputShape.EmptyString, CoercionAction.Fail);
        json.coercionConfigFor(LogicalType.Textual)
                .setCoercion(CoercionInputShape.Integer, CoercionAction.Fail)
                .setCoercion(CoercionInputShape.Float, CoercionAction.Fail)
                .setCoercion(CoercionInputShape.Boolean, CoercionAction.Fail);
        for (Class<?> many : List.of(List.class, Set.class)) {
            json.configOverride(many).setSetterInfo(JsonSetter.Value.forContentNulls(Nulls.FAIL));
        }
        json.registerModule(new StrictValues());
    }
}
