package org.dentary.platform;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.KeyDeserializer;
import com.fasterxml.jackson.databind.deser.std.StdScalarDeserializer;
import com.fasterxml.jackson.databind.deser.std.StringDeserializer;
import com.fasterxml.jackson.databind.module.SimpleModule;
import java.io.IOException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.function.Function;

/**
 * Texts, days and times of a JSON body as they were written or not at all: no time taken for a day, no list for a missing
 * day, no character that a text cannot hold and that would be stored as another.
 */
final class StrictValues extends SimpleModule {
    private static final long serialVersionUID = 1;

    StrictValues() {
        super("strict-values");
        addDeserializer(String.class, new Text());
        addKeyDeserializer(String.class, new Name());
        addDeserializer(LocalDate.class, new Moment<>(LocalDate.class, CalendarText::day));
        addDeserializer(OffsetDateTime.class, new Moment<>(OffsetDateTime.class, CalendarText::time));
    }

    /** Whether a text is one: no NUL, no half of a surrogate pair. */
    private static boolean isText(String text) {
        for (int i = 0; i < text.length(); i++) {
            char one = text.charAt(i);
            if (one == 0) {
                return false;
            }
            if (Character.isSurrogate(one)) {
                if (!Character.isHighSurrogate(one)
                        || i + 1 == text.length()
                        || !Character.isLowSurrogate(text.charAt(i + 1))) {
                    return false;
                }
                i++;
            }
        }
        return true;
    }

    private static final class Text extends StringDeserializer {
        private static final long serialVersionUID = 1;

        @Override
        public String deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            String text = super.deserialize(parser, context);
            return text == null || isText(text)
                    ? text
                    : (String) context.handleWeirdStringValue(String.class, text, "");
        }
    }

    private static final class Name extends KeyDeserializer {
        @Override
        public Object deserializeKey(String name, DeserializationContext context) throws IOException {
            return isText(name) ? name : context.handleWeirdKey(String.class, name, "");
        }
    }

    private static final class Moment<T> extends StdScalarDeserializer<T> {
        private static final long serialVersionUID = 1;
        private final transient Function<CharSequence, T> reading;

        Moment(Class<T> kind, Function<CharSequence, T> reading) {
            super(kind);
            this.reading = reading;
        }

        @Override
        @SuppressWarnings("unchecked")
        public T deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            if (!parser.hasToken(JsonToken.VALUE_STRING)) {
                return (T) context.handleUnexpectedToken(handledType(), parser);
            }
            try {
                return reading.apply(parser.getText());
            } catch (DateTimeParseException noSuchMoment) {
                return (T) context.handleWeirdStringValue(handledType(), parser.getText(), "");
            }
        }
    }
}
