#pragma once

#include <map>
#include <optional>
#include <string>

#include "core/quantity/quantity.h"

namespace jw {

/// Where links and joints stand in the text of a robot description.
struct DescriptionLines {
  std::map<std::string, std::size_t> links;  ///< line, from 1
  std::map<std::string, std::size_t> joints;
};

/// What the library would refuse without saying where: no XML, no <robot>, names that are missing
/// or come twice, links that are not declared, joints without limits or with an axis of no length.
/// None if all that is there. `lines` gets filled as far as the text goes.
std::optional<InputError> descriptionError(const std::string& text, const std::string& fileName,
                                           DescriptionLines& lines);

}  // namespace jw
