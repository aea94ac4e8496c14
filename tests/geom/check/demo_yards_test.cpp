#include <catch2/catch.hpp>

#include "geom/check/check.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/io/site_file.hpp"
#include "geom/site/finding_words.hpp"
#include "tests/geom/kept.hpp"
#include "tests/scenes/demo_yards.hpp"

using namespace yardwright;

namespace {

constexpr Question answered[] = {Question::reach, Question::turn, Question::drain, Question::clear, Question::pace};

Site committed(const std::string& file) {
  const auto site = load_site(std::string{YARDWRIGHT_SOURCE_DIR} + "/assets/yards/" + file);
  REQUIRE(site.has_value());
  return *site;
}

}  // namespace

TEST_CASE("The demo yards in assets are the scenes that they are written from") {
  // Mend with: build/tests/write_demo_yards assets/yards
  CHECK(committed("old-yard.yard") == scenes::old_yard());
  CHECK(committed("new-yard.yard") == scenes::new_yard());
}

TEST_CASE("In the old yard every question finds something that fails") {
  const Answers answers = check(scenes::old_yard(), shipped_catalogs());
  for (const Question question : answered) {
    INFO(names_of(question)[static_cast<std::size_t>(question)]);
    CHECK(worst(findings_of(answers, question)) == Verdict::fail);
  }
}

TEST_CASE("In the new yard nothing fails and nothing wants caution") {
  const Answers answers = check(scenes::new_yard(), shipped_catalogs());
  for (const Finding& finding : all_findings(answers)) {
    INFO(sentence(finding, UnitSystem::metric));
    CHECK(finding.verdict >= Verdict::not_checked);
  }
}

TEST_CASE("Every failing finding of the old yard that offers a mend passes once it is applied") {
  const Site site = scenes::old_yard();
  for (const Finding& finding : all_findings(check(site, shipped_catalogs()))) {
    if (finding.verdict != Verdict::fail || finding.mends.empty()) continue;
    INFO(sentence(finding, UnitSystem::us));
    const Answers mended = check(apply(site, finding.mends.front().edits), shipped_catalogs());
    CHECK(is_kept(findings_of(mended, finding.question), finding));
  }
}
