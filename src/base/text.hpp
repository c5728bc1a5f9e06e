#pragma once
#include <cstddef>
#include <string>
#include <string_view>

namespace gapsound {

/// Bytes of the character at the front, 0 when they are no UTF-8 (RFC 3629; surrogates are let through).
[[nodiscard]] std::size_t utf8Length(std::string_view text);
[[nodiscard]] bool isUtf8(std::string_view text);
/// The text as Unicode when it was saved in the one-byte Western code (ISO 8859-1); 0x80 to 0x9f become "?".
[[nodiscard]] std::string fromLatin1(std::string_view text);
/// What of a text fits into a message: control characters become blanks, broken UTF-8 "?", and after `most`
/// bytes it is cut with "...".
[[nodiscard]] std::string oneLine(std::string_view text, std::size_t most);

}  // namespace gapsound
