#include "app/document.hpp"

#include <doctest/doctest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

#include "app/state_folder.hpp"
#include "io/scenario_file.hpp"

using namespace gapsound;
namespace fs = std::filesystem;

namespace {

const std::string kLook = std::string(GAPSOUND_ROOT) + "/scenarios/counter-right-guard-and-h.json";

Scenario titled(const Document& document, const std::string& title) {
  Scenario next = document.scenario();
  next.title = title;
  return next;
}

struct Folder {
  fs::path path = fs::temp_directory_path() / ("gapsound-state-" + std::to_string(getpid()));
  Folder() { fs::remove_all(path); }
  ~Folder() { fs::remove_all(path); }
};

/// A process that leaves unsaved work behind and is gone.
void crashWith(const StateFolder& folder, const std::string& file, const std::string& text) {
  const pid_t child = fork();
  if (child == 0) {
    folder.keepUnsaved(file, text);
    _exit(0);
  }
  waitpid(child, nullptr, 0);
}

}  // namespace

TEST_CASE("undo goes back through every change and redo comes forward again") {
  Document document = Document::read(kLook);
  const std::string first = document.text();
  for (int i = 0; i < 200; ++i) document.change(titled(document, "step " + std::to_string(i)), "a step");
  document.choose(9);
  for (int i = 0; i < 201; ++i) {
    REQUIRE(document.canUndo());
    document.undo();
  }
  CHECK_FALSE(document.canUndo());
  CHECK(document.text() == first);
  CHECK(document.seed() == 1);
  while (document.canRedo()) document.redo();
  CHECK(document.scenario().title == "step 199");
  CHECK(document.seed() == 9);
}

TEST_CASE("a change after undo drops what was undone") {
  Document document = Document::read(kLook);
  document.change(titled(document, "a"), "a");
  document.change(titled(document, "b"), "b");
  document.undo();
  document.change(titled(document, "c"), "c");
  CHECK_FALSE(document.canRedo());
  CHECK(document.undoWords() == "c");
  document.undo();
  CHECK(document.scenario().title == "a");
}

TEST_CASE("one gesture is one step, two gestures are two") {
  Document document = Document::read(kLook);
  for (const char* title : {"x1", "x2", "x3"}) document.change(titled(document, title), "drag", "drag SS");
  document.endGesture();
  for (const char* title : {"y1", "y2"}) document.change(titled(document, title), "drag", "drag SS");
  document.undo();
  CHECK(document.scenario().title == "x3");
  document.undo();
  CHECK_FALSE(document.canUndo());
}

TEST_CASE("it is unsaved while it differs from its file, and saving writes what reads back the same") {
  const Folder folder;
  fs::create_directories(folder.path);
  Document document = Document::read(kLook);
  CHECK_FALSE(document.unsaved());
  document.change(titled(document, "mine"), "title");
  CHECK(document.unsaved());
  document.undo();
  CHECK_FALSE(document.unsaved());
  document.redo();
  const std::string file = (folder.path / "mine.json").string();
  document.saveAs(file);
  CHECK_FALSE(document.unsaved());
  CHECK(document.file() == file);
  CHECK(toJson(readScenario(file)) == document.text());
  CHECK_THROWS(document.saveAs("/no/such/folder/mine.json"));
  CHECK(document.file() == file);
}

TEST_CASE("work left by a window that went down is found once, that of a running one is left alone") {
  const Folder folder;
  const StateFolder state(folder.path.string());
  CHECK_FALSE(state.recover());
  state.keepUnsaved("own.json", "{}");
  CHECK_FALSE(state.recover());
  crashWith(state, "theirs.json", "line one\nline two\n");
  CHECK_FALSE(state.recover("another.json"));
  const auto lost = state.recover("theirs.json");
  REQUIRE(lost);
  CHECK(lost->file == "theirs.json");
  CHECK(lost->text == "line one\nline two\n");
  CHECK_FALSE(state.recover());
  state.dropUnsaved();
  CHECK(fs::is_empty(folder.path));
}

TEST_CASE("settings and recent files come back, a missing or unwritable folder does no harm") {
  const Folder folder;
  const StateFolder state(folder.path.string());
  CHECK(state.settings().theme == "paper");
  CHECK(state.settings().hints);
  state.keep({"evening", 150, false});
  CHECK(state.settings().theme == "evening");
  CHECK(state.settings().ui_scale == 150);
  CHECK_FALSE(state.settings().hints);
  const std::string other = (folder.path / "settings").string();
  state.remember(kLook);
  state.remember(other);
  state.remember(kLook);
  CHECK(state.recent() == std::vector<std::string>{kLook, other});
  for (const auto* nowhere : {"", "/proc/no/such"}) {
    const StateFolder none{nowhere};
    none.keep({"evening", 200, false});
    none.keepUnsaved("a", "b");
    none.remember(kLook);
    CHECK(none.settings().ui_scale == 100);
    CHECK(none.recent().empty());
    CHECK_FALSE(none.recover());
  }
}
