#include "football/vocabulary.hpp"

#include <doctest/doctest.h>

using namespace gapsound;

TEST_CASE("a word is shown for its id and means it, whatever the case") {
  Vocabulary words;
  words.add("SS", "Rover");
  CHECK(words.shown("SS") == "Rover");
  CHECK(words.shown("FS") == "FS");
  CHECK(words.meant("rover") == "SS");
  CHECK(words.meant("SS") == "SS");
}

TEST_CASE("in a sentence only whole words are replaced") {
  Vocabulary words;
  words.add("H", "Joker");
  CHECK(words.told("no H: T carries, He waits") == "no Joker: T carries, He waits");
}
