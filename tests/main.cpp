#define DOCTEST_CONFIG_IMPLEMENT
#include <doctest/doctest.h>

#include <algorithm>
#include <string_view>

namespace {

bool nothing_ran = false;

/// A test that was asked for by a name nobody has must not pass.
struct Ran : doctest::IReporter {
  explicit Ran(const doctest::ContextOptions&) {}
  void test_run_end(const doctest::TestRunStats& run) override {
    nothing_ran = run.numTestCasesPassingFilters == 0;
  }
  void report_query(const doctest::QueryData&) override {}
  void test_run_start() override {}
  void test_case_start(const doctest::TestCaseData&) override {}
  void test_case_reenter(const doctest::TestCaseData&) override {}
  void test_case_end(const doctest::CurrentTestCaseStats&) override {}
  void test_case_exception(const doctest::TestCaseException&) override {}
  void subcase_start(const doctest::SubcaseSignature&) override {}
  void subcase_end() override {}
  void log_assert(const doctest::AssertData&) override {}
  void log_message(const doctest::MessageData&) override {}
  void test_case_skipped(const doctest::TestCaseData&) override {}
};
REGISTER_LISTENER("ran", 1, Ran);

}  // namespace

// Cases named "long: ..." run only when they are asked for by name.
int main(int argc, char** argv) {
  doctest::Context context(argc, argv);
  const bool asked = std::any_of(argv, argv + argc, [](const char* word) {
    return std::string_view(word).find("=long:") != std::string_view::npos;
  });
  if (!asked) context.addFilter("test-case-exclude", "long:*");
  const int result = context.run();
  return nothing_ran && !context.shouldExit() ? 1 : result;
}
