package sagbook.record;

import java.time.Instant;

/**
 * A log file that went into a check.
 *
 * @param file name as given, with forward slashes
 * @param sha256 of its bytes as they lay on disk, lower-case hexadecimal
 * @param rows data rows read
 * @param first time of its first row
 * @param last time of its last row
 */
public record InputFile(String file, String sha256, long rows, Instant first, Instant last) {}
