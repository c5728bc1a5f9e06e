#include <imgui.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <filesystem>

#include "app/card_parts.hpp"
#include "app/cards.hpp"
#include "app/commands.hpp"
#include "io/assets.hpp"

namespace gapsound {
namespace {

namespace fs = std::filesystem;

std::vector<std::string> scenariosIn(const std::string& folder) {
  std::vector<std::string> files;
  std::error_code failed;
  for (const auto& entry : fs::directory_iterator(folder, failed)) {
    const std::string name = entry.path().filename().string();
    if (entry.path().extension() == ".json" && name.rfind("plan-", 0) != 0)
      files.push_back(entry.path().string());
  }
  std::sort(files.begin(), files.end());
  return files;
}

void list(Screen& screen, const char* word, const std::vector<std::string>& files) {
  if (files.empty()) return;
  cardWords(screen, word);
  for (const std::string& file : files) {
    const std::string name = fs::path(file).stem().string();
    ImGui::PushID(file.c_str());
    if (ImGui::Selectable(name.c_str(), file == screen.desk.document().file())) screen.desk.askOpen(file);
    screen.note("open " + name);
    ImGui::PopID();
  }
}

}  // namespace

void drawFilesCard(Screen& screen) {
  static std::string path;
  Desk& desk = screen.desk;
  cardTitle(screen, "Files");
  cardWords(screen, desk.document().file().empty() ? "not yet in a file" : desk.document().file());
  ImGui::SetNextItemWidth(ImGui::GetContentRegionAvail().x);
  const bool entered =
      ImGui::InputTextWithHint("##path", "path of a file", &path, ImGuiInputTextFlags_EnterReturnsTrue);
  screen.note("path");
  if (wordButton(screen, "open")) desk.askOpen(path);
  ImGui::SameLine(0.0F, screen.px(12.0));
  if (wordButton(screen, "save as") && !path.empty()) static_cast<void>(desk.saveAs(path));
  ImGui::SameLine(0.0F, screen.px(12.0));
  if (wordButton(screen, "save") && !desk.document().file().empty())
    static_cast<void>(desk.saveAs(desk.document().file()));
  ImGui::SameLine(0.0F, screen.px(12.0));
  if (wordButton(screen, "new")) desk.askNew();
  if (entered) desk.askOpen(path);
  cardWords(screen, "To hand out, in the folder the program was started in:");
  for (const char* name : {"clip", "strip"}) {
    if (wordButton(screen, name)) commandNamed(name).run(desk);
    ImGui::SameLine(0.0F, screen.px(12.0));
  }
  ImGui::NewLine();
  static const std::vector<std::string> shipped = scenariosIn(scenarioFolder());
  list(screen, "Recent", desk.folder().recent());
  list(screen, "Shipped looks", shipped);
}

}  // namespace gapsound
