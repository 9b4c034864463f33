package sagbook;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.type;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The direction of the flow, as an allow-list: what is not listed here is forbidden. */
class ArchitectureTest {
  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("sagbook");

  /** Top-level package: what it may use. */
  private static final Map<String, Set<String>> MAY_USE =
      Map.ofEntries(
          Map.entry("model", Set.of("wording")),
          Map.entry("numeric", Set.of()),
          Map.entry("issue", Set.of("wording")),
          Map.entry("wording", Set.of()),
          Map.entry("packfile", Set.of("model", "issue", "wording")),
          Map.entry("align", Set.of("model", "issue", "numeric")),
          Map.entry("logfile", Set.of("model", "issue", "numeric", "packfile", "align", "wording")),
          Map.entry("evidence", Set.of("model", "numeric")),
          Map.entry("estimate", Set.of("model", "numeric", "evidence", "wording")),
          Map.entry("bench", Set.of("model", "wording")),
          Map.entry("account", Set.of("model", "numeric", "evidence", "estimate", "wording")),
          Map.entry("whatif", Set.of("model", "numeric", "evidence", "estimate", "wording")),
          Map.entry(
              "verdict", Set.of("model", "numeric", "evidence", "estimate", "whatif", "wording")),
          Map.entry(
              "record",
              Set.of(
                  "model",
                  "numeric",
                  "issue",
                  "account",
                  "evidence",
                  "estimate",
                  "whatif",
                  "verdict",
                  "wording")),
          Map.entry("season", Set.of("model", "numeric", "record", "wording")),
          Map.entry(
              "report",
              Set.of(
                  "model",
                  "numeric",
                  "issue",
                  "account",
                  "evidence",
                  "estimate",
                  "whatif",
                  "verdict",
                  "record",
                  "season",
                  "wording")),
          Map.entry(
              "pipeline",
              Set.of(
                  "model",
                  "issue",
                  "logfile",
                  "align",
                  "account",
                  "evidence",
                  "estimate",
                  "whatif",
                  "verdict",
                  "record",
                  "wording")),
          Map.entry("simulate", Set.of("model", "wording")),
          Map.entry(
              "cli",
              Set.of(
                  "model",
                  "issue",
                  "packfile",
                  "bench",
                  "logfile",
                  "evidence",
                  "estimate",
                  "whatif",
                  "verdict",
                  "record",
                  "season",
                  "report",
                  "pipeline",
                  "simulate",
                  "wording")));

  /** Estimators: what of the other estimator packages they may use. */
  private static final Map<String, Set<String>> ESTIMATORS_MAY_USE =
      Map.of(
          "response", Set.of(),
          "curve", Set.of(),
          "axis", Set.of("curve"),
          "temperature", Set.of(),
          "resistance", Set.of("response"),
          "capacity", Set.of("axis", "curve"),
          "drain", Set.of("curve"));

  @Test
  void packagesUseOnlyWhatTheFlowAllows() {
    Map<String, Set<String>> found = uses("sagbook.");
    Map<String, Set<String>> forbidden = new TreeMap<>();
    found.forEach(
        (from, to) -> {
          Set<String> extra = new TreeSet<>(to);
          extra.removeAll(MAY_USE.getOrDefault(from, Set.of()));
          if (!extra.isEmpty()) {
            forbidden.put(from, extra);
          }
        });
    assertEquals(Map.of(), forbidden);
  }

  @Test
  void everyPackageHasItsRule() {
    assertEquals(new TreeSet<>(MAY_USE.keySet()), new TreeSet<>(uses("sagbook.").keySet()));
  }

  @Test
  void estimatorsDoNotUseEachOther() {
    Map<String, Set<String>> forbidden = new TreeMap<>();
    uses("sagbook.estimate.")
        .forEach(
            (from, to) -> {
              Set<String> extra = new TreeSet<>(to);
              extra.removeAll(ESTIMATORS_MAY_USE.getOrDefault(from, Set.of()));
              if (!extra.isEmpty()) {
                forbidden.put(from, extra);
              }
            });
    assertEquals(Map.of(), forbidden);
  }

  @Test
  void everyEstimatorPackageHasItsRule() {
    assertEquals(
        new TreeSet<>(ESTIMATORS_MAY_USE.keySet()),
        new TreeSet<>(uses("sagbook.estimate.").keySet()));
  }

  @Test
  void commonsCsvStaysWhereTablesAreReadAndWritten() {
    noClasses()
        .that()
        .resideOutsideOfPackages(
            "sagbook.logfile..", "sagbook.report.table..", "sagbook.record.store..")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("org.apache.commons.csv..")
        .check(CLASSES);
  }

  @Test
  void topLevelPackagesHaveNoCycles() {
    slices().matching("sagbook.(*)..").should().beFreeOfCycles().check(CLASSES);
  }

  @Test
  void onlyTheCommandLinePrintsOrEndsTheProgram() {
    noClasses()
        .that()
        .resideOutsideOfPackage("sagbook.cli..")
        .should()
        .accessField(System.class, "out")
        .orShould()
        .accessField(System.class, "err")
        .orShould()
        .callMethod(System.class, "exit", int.class)
        .check(CLASSES);
  }

  @Test
  void nothingOpensAConnection() {
    noClasses()
        .should()
        .dependOnClassesThat(
            resideInAPackage("java.net..")
                .and(not(type(URI.class)))
                .and(not(type(URISyntaxException.class))))
        .check(CLASSES);
  }

  @Test
  void theMiddleReadsAndWritesNoFiles() {
    noClasses()
        .that()
        .resideInAnyPackage(
            "sagbook.model..",
            "sagbook.numeric..",
            "sagbook.evidence..",
            "sagbook.estimate..",
            "sagbook.account..",
            "sagbook.whatif..",
            "sagbook.verdict..",
            "sagbook.season..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("java.nio.file..", "org.apache.commons.csv..")
        .orShould()
        .dependOnClassesThat()
        .haveFullyQualifiedName("java.io.File")
        .check(CLASSES);
  }

  /** Which sub-packages of a package use which others. */
  private static Map<String, Set<String>> uses(String root) {
    Map<String, Set<String>> all = new TreeMap<>();
    for (JavaClass type : CLASSES) {
      String from = part(type.getPackageName(), root);
      if (from.isEmpty()) {
        continue;
      }
      Set<String> to = all.computeIfAbsent(from, name -> new TreeSet<>());
      type.getDirectDependenciesFromSelf()
          .forEach(
              d -> {
                String target = part(d.getTargetClass().getPackageName(), root);
                if (!target.isEmpty() && !target.equals(from)) {
                  to.add(target);
                }
              });
    }
    return all;
  }

  private static String part(String packageName, String root) {
    if (!packageName.startsWith(root)) {
      return "";
    }
    String rest = packageName.substring(root.length());
    int dot = rest.indexOf('.');
    return dot < 0 ? rest : rest.substring(0, dot);
  }
}
