#define DOCTEST_CONFIG_IMPLEMENT
#include <doctest/doctest.h>

#include <algorithm>
#include <string_view>

// Cases named "long: ..." run only when they are asked for by name.
int main(int argc, char** argv) {
  doctest::Context context(argc, argv);
  const bool asked = std::any_of(argv, argv + argc, [](const char* word) {
    return std::string_view(word).find("=long:") != std::string_view::npos;
  });
  if (!asked) context.addFilter("test-case-exclude", "long:*");
  return context.run();
}
