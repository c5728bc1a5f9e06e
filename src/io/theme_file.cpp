#include "io/theme_file.hpp"

#include <array>
#include <charconv>
#include <map>
#include <nlohmann/json.hpp>
#include <optional>

#include "base/error.hpp"
#include "io/assets.hpp"
#include "io/json_reader.hpp"

namespace gapsound {
namespace {

constexpr int kFormat = 1;
constexpr double kWidest = 40.0, kLongestDash = 100.0;  // page units

using Palette = std::map<std::string, Colour>;

std::optional<std::uint8_t> hexByte(std::string_view text) {
  std::uint8_t value = 0;
  const auto [end, failed] = std::from_chars(text.data(), text.data() + text.size(), value, 16);
  if (failed != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return value;
}

Colour colourFrom(const JsonReader& entry) {
  const std::string text = entry.asText();
  const bool shaped = (text.size() == 7 || text.size() == 9) && text[0] == '#';
  std::array<std::uint8_t, 4> parts{0, 0, 0, 255};
  for (std::size_t i = 0; shaped && 2 * i + 1 < text.size(); ++i) {
    const auto part = hexByte(std::string_view(text).substr(2 * i + 1, 2));
    if (!part) entry.refuse("#rrggbb or #rrggbbaa");
    parts[i] = *part;
  }
  if (!shaped) entry.refuse("#rrggbb or #rrggbbaa");
  return {parts[0], parts[1], parts[2], parts[3]};
}

Palette paletteFrom(JsonReader colours) {
  Palette palette;
  for (const auto& [name, entry] : colours.members()) palette[name] = colourFrom(entry);
  return palette;
}

Colour namedColour(JsonReader& style, const std::string& key, const Palette& palette) {
  const auto entry = style.maybeChild(key);
  if (!entry) return {};
  std::vector<std::string> names;
  for (const auto& [name, colour] : palette) names.push_back(name);
  return palette.at(entry->asWord(names));
}

std::vector<double> dashesFrom(JsonReader& style) {
  const auto entry = style.maybeChild("dash");
  if (!entry) return {};
  std::vector<double> lengths;
  for (const JsonReader& item : entry->items()) lengths.push_back(item.asNumber(0.5, kLongestDash));
  if (lengths.size() % 2 != 0 || lengths.size() > 8) entry->refuse("up to four pairs of lengths: on, off");
  return lengths;
}

Style styleFrom(JsonReader entry, const Palette& palette) {
  Style style;
  style.stroke = namedColour(entry, "stroke", palette);
  style.fill = namedColour(entry, "fill", palette);
  style.width = entry.maybeNumber("width", 0.0, kWidest).value_or(style.width);
  style.dash = dashesFrom(entry);
  const std::string font = entry.maybeWord("font", {"sans", "condensed"}).value_or("sans");
  style.font = font == "sans" ? FontRole::sans : FontRole::condensed;
  style.bold = entry.maybeFlag("bold").value_or(false);
  style.tabular = entry.maybeFlag("tabular").value_or(false);
  entry.finish();
  return style;
}

}  // namespace

Theme readTheme(const std::string& file) {
  const auto document = readJson(file);
  JsonReader root(file, document);
  static_cast<void>(root.whole("gapsound_theme", kFormat, kFormat));
  Theme theme;
  theme.name = root.text("name");
  const Palette palette = paletteFrom(root.child("colours"));
  JsonReader styles = root.child("styles");
  for (std::size_t i = 0; i < kStyles; ++i) {
    theme.styles[i] = styleFrom(styles.child(std::string(kStyleNames[i])), palette);
  }
  styles.finish();
  root.finish();
  return theme;
}

Theme shippedTheme(const std::string& name) {
  if (name != "paper" && name != "evening") throw InputError("--theme", "/", name, "paper, evening");
  return readTheme(assetPath("themes/" + name + ".json"));
}

}  // namespace gapsound
