package sagbook.logfile;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The values of one JSON object, named by their way down: {@code {"cells":[{"v":3.3}]}} gives
 * "cells 1 v". Positions in lists count from 1.
 */
final class JsonFields {
  private static final JsonFactory FACTORY = new JsonFactory();
  private static final int MOST_DEPTH = 8;

  private JsonFields() {}

  static boolean looksLikeObject(String line) {
    String bare = line.strip();
    return bare.startsWith("{") && bare.endsWith("}") && bare.contains(":");
  }

  /** The values by name, in their order; empty when the text is no JSON object. */
  static Map<String, String> read(char[] text, int from, int to) throws IOException {
    Map<String, String> values = new LinkedHashMap<>();
    try (JsonParser parser = FACTORY.createParser(text, from, to - from)) {
      if (parser.nextToken() != JsonToken.START_OBJECT) {
        return Map.of();
      }
      readObject(parser, values);
      return parser.nextToken() == null ? values : Map.of();
    } catch (JsonProcessingException e) {
      return Map.of();
    }
  }

  private static void readObject(JsonParser parser, Map<String, String> values) throws IOException {
    Deque<String> names = new ArrayDeque<>();
    Deque<Integer> positions = new ArrayDeque<>();
    names.addLast("");
    positions.addLast(-1);
    String name = "";
    while (!names.isEmpty()) {
      JsonToken token = parser.nextToken();
      if (token == null) {
        values.clear();
        return;
      }
      if (token == JsonToken.FIELD_NAME) {
        name = parser.currentName();
        continue;
      }
      if (token == JsonToken.END_OBJECT || token == JsonToken.END_ARRAY) {
        names.removeLast();
        positions.removeLast();
        continue;
      }
      int position = positions.removeLast();
      positions.addLast(position < 0 ? position : position + 1);
      String own = position < 0 ? name : Integer.toString(position + 1);
      String path = names.getLast().isEmpty() ? own : names.getLast() + " " + own;
      if (token == JsonToken.START_OBJECT || token == JsonToken.START_ARRAY) {
        names.addLast(path);
        positions.addLast(token == JsonToken.START_ARRAY ? 0 : -1);
        if (names.size() > MOST_DEPTH) {
          values.clear();
          return;
        }
      } else if (values.size() < Fields.MOST_FIELDS) {
        values.putIfAbsent(path, token == JsonToken.VALUE_NULL ? "" : parser.getText());
      }
    }
  }
}
