package sagbook.model;

import java.util.List;

/**
 * One of several parallel strings.
 *
 * @param name shown in results
 * @param filePatterns file-name patterns ({@code *} and {@code ?}) that say which logs are its own
 */
public record BankDescription(String name, List<String> filePatterns) {
  public BankDescription {
    filePatterns = List.copyOf(filePatterns);
  }
}
