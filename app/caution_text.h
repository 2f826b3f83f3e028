#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace jw {

/// The id of each; what has none (the smallest of all margins) is passed over by the cautions.
template <class Checks>
std::vector<std::string_view> idsOf(const Checks& checks) {
  std::vector<std::string_view> ids;
  for (const auto& check : checks) ids.push_back(check.id);
  return ids;
}

/// The cautions that belong beside these checks, each once, in the order of kCautions.
std::vector<std::string_view> cautionsBeside(const std::vector<std::string_view>& checks);

/// The end of a report for people: kCaution and the cautions beside these checks, in lines of at
/// most 100 columns, the further lines of each indented.
std::string cautionText(const std::vector<std::string_view>& checks);

}  // namespace jw
