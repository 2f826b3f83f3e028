#pragma once

#include <string>
#include <string_view>

namespace jw {

/// Plain text with <, >, & and quotes escaped.
std::string htmlText(std::string_view text);

/// A symbol such as "T_av", whose '_' starts a subscript.
std::string htmlSymbol(std::string_view symbol);

}  // namespace jw
