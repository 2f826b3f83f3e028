#pragma once

#include <string>
#include <string_view>

namespace jw {

/// Plain text with <, >, & and quotes escaped.
std::string htmlText(std::string_view text);

/// Trade notation such as "T_av" with its sub- and superscripts.
std::string htmlSymbol(std::string_view notation);

}  // namespace jw
