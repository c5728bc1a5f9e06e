#include "base/text.hpp"

#include <algorithm>

namespace gapsound {
namespace {

unsigned byteAt(std::string_view text, std::size_t i) { return static_cast<unsigned char>(text[i]); }

std::size_t lengthNamedBy(unsigned lead) {
  if (lead < 0x80) return 1;
  if (lead >= 0xc2 && lead < 0xe0) return 2;
  if (lead >= 0xe0 && lead < 0xf0) return 3;
  return lead >= 0xf0 && lead < 0xf5 ? 4 : 0;
}

/// Longer than needed, or past the last code point.
bool isOutOfRange(unsigned lead, unsigned second) {
  return (lead == 0xe0 && second < 0xa0) || (lead == 0xf0 && second < 0x90) ||
         (lead == 0xf4 && second > 0x8f);
}

}  // namespace

std::size_t utf8Length(std::string_view text) {
  if (text.empty()) return 0;
  const std::size_t length = lengthNamedBy(byteAt(text, 0));
  if (length == 0 || length > text.size()) return 0;
  for (std::size_t i = 1; i < length; ++i)
    if ((byteAt(text, i) & 0xc0U) != 0x80U) return 0;
  return length > 1 && isOutOfRange(byteAt(text, 0), byteAt(text, 1)) ? 0 : length;
}

bool isUtf8(std::string_view text) {
  while (!text.empty()) {
    const std::size_t length = utf8Length(text);
    if (length == 0) return false;
    text.remove_prefix(length);
  }
  return true;
}

std::string fromLatin1(std::string_view text) {
  std::string unicode;
  for (const char c : text) {
    const auto code = static_cast<unsigned char>(c);
    if (code < 0x80)
      unicode += c;
    else if (code < 0xa0)
      unicode += '?';
    else
      (unicode += static_cast<char>(0xc0 | code >> 6)) += static_cast<char>(0x80 | (code & 0x3f));
  }
  return unicode;
}

std::string oneLine(std::string_view text, std::size_t most) {
  std::string line;
  while (!text.empty()) {
    const std::size_t length = utf8Length(text);
    if (line.size() + length > most) return line + "...";
    const bool control = length == 1 && (byteAt(text, 0) < 0x20 || byteAt(text, 0) == 0x7f);
    if (control)
      line += ' ';
    else if (length == 0)
      line += '?';
    else
      line += text.substr(0, length);
    text.remove_prefix(std::max<std::size_t>(length, 1));
  }
  return line;
}

}  // namespace gapsound
