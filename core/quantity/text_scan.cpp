#include "core/quantity/text_scan.h"

namespace jw::detail {

std::string_view trimmed(std::string_view text) {
  text = withoutLeadingSpace(text);
  auto end = text.size();
  for (std::size_t at = 0; at < text.size();) {
    const auto length = leadingSpace(text.substr(at));
    at += length > 0 ? length : 1;
    if (length == 0) end = at;
  }
  return text.substr(0, text.empty() ? 0 : end);
}

}  // namespace jw::detail
