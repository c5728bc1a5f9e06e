#include "teach/strip.hpp"

#include <doctest/doctest.h>

#include "teach/caution.hpp"
#include "words.hpp"

using namespace gapsound;

namespace {

int fieldsOn(const DisplayList& page) {
  int fields = 0;
  for (const Panel& panel : page.panels) fields += count<Disc>(panel, StyleId::ball);
  return fields;
}

}  // namespace

TEST_CASE("a strip has six to eight frames in order of time, from the snap to the end") {
  const Tape tape = made_up::tape();
  const auto frames = momentsForStrip(tape);
  CHECK(frames.size() >= 6);
  CHECK(frames.size() <= 8);
  for (std::size_t i = 1; i < frames.size(); ++i) CHECK(frames[i].t > frames[i - 1].t);
  CHECK(frames.front().t == 0.0);
  CHECK(frames.back().t == doctest::Approx(lengthOf(tape)));
}

TEST_CASE("a rep with nothing to tell still makes a strip") {
  Tape tape = made_up::tape();
  tape.record.events.clear();
  tape.record.handoff_tick = tape.record.line_tick = tape.record.first_contact_tick = -1;
  CHECK(momentsForStrip(tape).size() >= 6);
}

TEST_CASE("evenly spaced frames reach from the snap to the end") {
  const auto frames = evenFrames(made_up::tape(), 12);
  REQUIRE(frames.size() == 12);
  CHECK(frames[0].t == 0.0);
  CHECK(frames[11].t == doctest::Approx(4.0));
  CHECK(frames[6].t - frames[5].t == doctest::Approx(4.0 / 11.0));
}

TEST_CASE("every frame is on the page with its time and words, and the page carries the caution") {
  const Tape tape = made_up::tape();
  const std::vector<StripFrame> frames{{0.0, "snap"}, {1.2, "hand-off"}, {2.4, "at the line"}, {4.0, "down"}};
  for (const StripLook& look : {handoutStrip(), judgingStrip()}) {
    const DisplayList page = stripPage(tape, frames, look);
    CHECK(fieldsOn(page) == 4);
    CHECK(says(page, "1.20 s"));
    CHECK(says(page, "hand-off"));
    CHECK(says(page, "Power right"));
    CHECK(says(page, cautionText()));
  }
}

TEST_CASE("pictures of a strip lie on the page and not on each other") {
  const DisplayList page = stripPage(made_up::tape(), evenFrames(made_up::tape(), 8), handoutStrip());
  std::vector<PageRect> boxes;
  for (const Panel& panel : page.panels) {
    if (count<Disc>(panel, StyleId::ball) > 0) boxes.push_back(panel.clip);
  }
  REQUIRE(boxes.size() == 8);
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    CHECK(boxes[i].x >= 0.0);
    CHECK(boxes[i].right() <= page.width);
    CHECK(boxes[i].bottom() <= page.height);
    for (std::size_t k = 0; k < i; ++k) CHECK_FALSE(overlap(boxes[i], boxes[k]));
  }
}

TEST_CASE("long words under a picture are set smaller, not cut off or run into the next") {
  const std::vector<StripFrame> frames(
      8, StripFrame{1.0, "FS came forward into the cutback window; W was late"});
  const DisplayList page = stripPage(made_up::tape(), frames, handoutStrip());
  const Panel& words = page.panels.front();
  const double cell = page.panels[1].clip.width;
  for (const Label& label : all<Label>(words, StyleId::text)) {
    if (label.text != frames[0].words) continue;
    CHECK(boxOf(words, label).width < cell);
    CHECK(boxOf(words, label).right() <= page.width);
    CHECK(label.size > 8.0);
  }
}

TEST_CASE("the caution speaks of contact, the drill, who overrules and what a simulation is not") {
  const std::string caution = cautionText();
  for (const char* word : {"shoulder", "head", "contact level", "rule book", "medical", "verdict"}) {
    INFO(word);
    CHECK(caution.find(word) != std::string::npos);
  }
}
